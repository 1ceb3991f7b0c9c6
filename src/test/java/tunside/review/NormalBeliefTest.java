package tunside.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The linear update against closed forms: the normal mean with a normal prior, and the gain form of RODGERS-2000. */
class NormalBeliefTest {
    private static RealMatrix matrix(double... rowOfSquare) {
        int n = (int) Math.sqrt(rowOfSquare.length);
        RealMatrix matrix = new Array2DRowRealMatrix(n, n);
        for (int i = 0; i < rowOfSquare.length; i++) {
            matrix.setEntry(i / n, i % n, rowOfSquare[i]);
        }
        return matrix;
    }

    private static LinearObservation one(double slope, double departure, double variance) {
        return new LinearObservation(
                new Array2DRowRealMatrix(new double[][] {{slope}}),
                new ArrayRealVector(new double[] {departure}),
                matrix(variance));
    }

    /** n readings of a mean: it moves by n t² / (n t² + s²) of theirs, and keeps the variance t² s² / (n t² + s²). */
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 5, 100})
    void theMeanOfReadingsIsDrawnTowardsThePrior(int n) {
        double prior = 0.01;
        double noise = 0.0025;
        NormalBelief belief = NormalBelief.of(matrix(prior), Collections.nCopies(n, one(1, -0.2, noise)));
        assertThat(belief.shift().getEntry(0)).isCloseTo(-0.2 * n * prior / (n * prior + noise), within(1e-12));
        assertThat(belief.covariance().getEntry(0, 0)).isCloseTo(prior * noise / (n * prior + noise), within(1e-12));
    }

    @Test
    void withoutReadingsThePriorStays() {
        NormalBelief belief = NormalBelief.of(matrix(0.04, 0.01, 0.01, 0.09), List.of());
        assertThat(belief.shift().getNorm()).isZero();
        assertThat(belief.covariance().subtract(matrix(0.04, 0.01, 0.01, 0.09)).getNorm1())
                .isLessThan(1e-12);
    }

    /** Two levels, one reading of each of two products: what both share moves by (a + b) A / (2 A + B + s²). */
    @Test
    void whatProductsShareAndWhatEachHasAreToldApart() {
        double common = 0.012;
        double product = 0.0065;
        double noise = 0.002;
        RealMatrix prior = MatrixUtils.createRealDiagonalMatrix(new double[] {common, product, product});
        List<LinearObservation> readings = new ArrayList<>();
        double[] departures = {0.3, 0.1};
        for (int i = 0; i < 2; i++) {
            readings.add(new LinearObservation(
                    new Array2DRowRealMatrix(new double[][] {{1, i == 0 ? 1 : 0, i == 1 ? 1 : 0}}),
                    new ArrayRealVector(new double[] {departures[i]}),
                    matrix(noise)));
        }
        NormalBelief belief = NormalBelief.of(prior, readings);
        double shared = 0.4 * common / (2 * common + product + noise);
        assertThat(belief.shift().getEntry(0)).isCloseTo(shared, within(1e-12));
        assertThat(belief.shift().getEntry(1)).isCloseTo((0.3 - shared) * product / (product + noise), within(1e-12));
        assertThat(belief.shift().getEntry(2)).isCloseTo((0.1 - shared) * product / (product + noise), within(1e-12));
    }

    private record Problem(RealMatrix prior, List<LinearObservation> observations, RealMatrix slopes, RealVector all) {}

    private static Problem problem(int seed) {
        Random random = new Random(seed);
        int parameters = 4;
        RealMatrix root = new Array2DRowRealMatrix(parameters, parameters);
        for (int i = 0; i < parameters; i++) {
            for (int j = 0; j < parameters; j++) {
                root.setEntry(i, j, 0.1 * random.nextGaussian());
            }
        }
        RealMatrix prior = root.multiplyTransposed(root)
                .add(MatrixUtils.createRealIdentityMatrix(parameters).scalarMultiply(0.01));
        List<LinearObservation> observations = new ArrayList<>();
        RealMatrix slopes = new Array2DRowRealMatrix(10, parameters);
        RealVector departures = new ArrayRealVector(10);
        for (int o = 0; o < 5; o++) {
            RealMatrix own = new Array2DRowRealMatrix(2, parameters);
            RealVector departure = new ArrayRealVector(2);
            for (int r = 0; r < 2; r++) {
                for (int k = 0; k < parameters; k++) {
                    own.setEntry(r, k, random.nextGaussian());
                }
                departure.setEntry(r, 0.2 * random.nextGaussian());
                slopes.setRowVector(2 * o + r, own.getRowVector(r));
                departures.setEntry(2 * o + r, departure.getEntry(r));
            }
            observations.add(new LinearObservation(own, departure, matrix(0.004, 0.001, 0.001, 0.003)));
        }
        return new Problem(prior, observations, slopes, departures);
    }

    /** Shift S K' (K S K' + R)^-1 y and covariance S - S K' (K S K' + R)^-1 K S, which invert another matrix. */
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3})
    void theUpdateIsThatOfTheGainForm(int seed) {
        Problem problem = problem(seed);
        RealMatrix noise = new Array2DRowRealMatrix(10, 10);
        for (int o = 0; o < 5; o++) {
            noise.setSubMatrix(problem.observations().get(o).noise().getData(), 2 * o, 2 * o);
        }
        RealMatrix k = problem.slopes();
        RealMatrix s = problem.prior();
        RealMatrix gain = s.multiplyTransposed(k)
                .multiply(
                        new LUDecomposition(k.multiply(s).multiplyTransposed(k).add(noise))
                                .getSolver()
                                .getInverse());
        NormalBelief belief = NormalBelief.of(s, problem.observations());
        assertThat(belief.shift().getDistance(gain.operate(problem.all()))).isLessThan(1e-10);
        assertThat(belief.covariance()
                        .subtract(s.subtract(gain.multiply(k).multiply(s)))
                        .getNorm1())
                .isLessThan(1e-10);
    }

    /** What a counted reading would have been expected at without it, against leaving it out and updating anew. */
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3})
    void leavingOneOutIsUpdatingWithoutIt(int seed) {
        Problem problem = problem(seed);
        NormalBelief all = NormalBelief.of(problem.prior(), problem.observations());
        for (LinearObservation left : problem.observations()) {
            List<LinearObservation> others = new ArrayList<>(problem.observations());
            others.remove(left);
            NormalBelief without = NormalBelief.of(problem.prior(), others);
            Departure expected = without.ahead(left);
            Departure apart = all.apart(left);
            assertThat(apart.residual().getDistance(expected.residual())).isLessThan(1e-9);
            assertThat(apart.covariance().subtract(expected.covariance()).getNorm1())
                    .isLessThan(1e-9);
            double ratio = new LUDecomposition(without.covariance()).getDeterminant()
                    / new LUDecomposition(all.covariance()).getDeterminant();
            assertThat(all.bits(left)).isCloseTo(0.5 * Math.log(ratio) / Math.log(2), within(1e-9));
            assertThat(without.covarianceAfter(left.information())
                            .subtract(all.covariance())
                            .getNorm1())
                    .isLessThan(1e-10);
        }
    }

    /** A reading as sure as the prior halves the variance: half a bit. Three times as sure: one bit. */
    @ParameterizedTest
    @CsvSource({"0.01, 0.5", "0.00333333333333333, 1", "1e9, 0"})
    void aReadingBringsHalfTheLogarithmOfWhatItNarrowsTo(double noise, double bits) {
        LinearObservation reading = one(1, 0.1, noise);
        assertThat(NormalBelief.of(matrix(0.01), List.of(reading)).bits(reading))
                .isCloseTo(bits, within(1e-9));
    }

    @Test
    void aReadingAheadIsAsUnsureAsTheParametersAndItsNoise() {
        NormalBelief belief = NormalBelief.of(matrix(0.01), List.of(one(1, 0.1, 0.01)));
        Departure ahead = belief.ahead(one(2, 0.3, 0.002));
        assertThat(ahead.residual().getEntry(0)).isCloseTo(0.3 - 2 * 0.05, within(1e-12));
        assertThat(ahead.covariance().getEntry(0, 0)).isCloseTo(0.002 + 4 * 0.005, within(1e-12));
        assertThat(NormalBelief.carried(new Array2DRowRealMatrix(new double[][] {{2}, {3}}), belief.covariance())
                        .getEntry(0, 1))
                .isCloseTo(6 * 0.005, within(1e-12));
    }

    /** By hand: sd 0.2 and 0.1 with correlation 0.5 leave the second 0.1 sqrt(0.75) beside the first. */
    @Test
    void eachReadingIsJudgedGivenThoseBeforeIt() {
        Departure departure =
                new Departure(new ArrayRealVector(new double[] {0.3, -0.1}), matrix(0.04, 0.01, 0.01, 0.01));
        double[] studentised = departure.studentised();
        assertThat(studentised[0]).isCloseTo(1.5, within(1e-12));
        assertThat(studentised[1]).isCloseTo((-0.1 - 0.25 * 0.3) / (0.1 * Math.sqrt(0.75)), within(1e-12));
        assertThat(departure.farthest()).isEqualTo(studentised[1]);
        assertThat(new Departure(new ArrayRealVector(new double[] {0.5, 0.1}), matrix(0.04, 0.01, 0.01, 0.01))
                        .farthest())
                .isCloseTo(2.5, within(1e-12));
    }
}

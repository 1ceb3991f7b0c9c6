package tunside.electrode.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.stat.regression.OLSMultipleLinearRegression;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ApproachTest {
    private static final double LEAST = 0.001;

    private static double[] times(int n, double step) {
        double[] seconds = new double[n];
        Arrays.setAll(seconds, i -> i * step);
        return seconds;
    }

    private static double[] curve(double[] seconds, double end, double start, double timeConstant) {
        return Arrays.stream(seconds)
                .map(t -> end + start * Math.exp(-t / timeConstant))
                .toArray();
    }

    private static Approach fit(double[] seconds, double[] ph) {
        Approach approach = Approach.fit(seconds, ph, LEAST);
        assertThat(approach).isNotNull();
        return approach;
    }

    @ParameterizedTest(name = "{0} readings, time constant {1} of the series, start {2}")
    @CsvSource({
        "8, 0.15, 0.5",
        "8, 0.8, -0.5",
        "20, 0.05, 0.3",
        "20, 0.3, 0.01",
        "60, 0.02, -0.8",
        "60, 0.6, 0.4",
        "299, 0.1, 0.4",
        "302, 0.1, -0.4",
        "2000, 0.25, 0.4"
    })
    void anExactCurveIsFoundWhateverItsTimeConstant(int n, double share, double start) {
        double[] seconds = times(n, 5);
        double timeConstant = share * seconds[n - 1];
        Approach approach = fit(seconds, curve(seconds, 5.4, start, timeConstant));
        assertThat(approach.endPh()).isCloseTo(5.4, within(1e-5));
        assertThat(approach.startPh()).isCloseTo(start, within(1e-5));
        assertThat(approach.timeConstantS()).isCloseTo(timeConstant, within(1e-3 * timeConstant));
        assertThat(approach.noisePh()).as("no less than the least").isEqualTo(LEAST);
        assertThat(approach.counted()).isEqualTo(n);
    }

    @Test
    void theCurveHasMadeAllButAnEthOfItsWayAfterOneTimeConstant() {
        Approach approach = new Approach(5.4, 0.5, 25, 0.001, 0.001, new double[] {1, 0, 0.5});
        assertThat(approach.at(0)).isCloseTo(5.9, within(1e-12));
        assertThat(approach.at(25)).isCloseTo(5.4 + 0.5 / Math.E, within(1e-12));
        assertThat(approach.residual(25, 5.6)).isCloseTo(0.2 - 0.5 / Math.E, within(1e-12));
        assertThat(approach.counted()).isEqualTo(2);
    }

    /** Of a straight-line problem it is the noise times the root of the first entry of the inverse normal matrix. */
    @Test
    void theUncertaintyOfTheEndIsThatOfLeastSquares() {
        double[] seconds = times(20, 5);
        double timeConstant = 25;
        double start = 0.5;
        Approach approach = fit(seconds, curve(seconds, 5.4, start, timeConstant));
        double[][] slopes = new double[seconds.length][];
        for (int i = 0; i < slopes.length; i++) {
            double left = Math.exp(-seconds[i] / timeConstant);
            slopes[i] = new double[] {1, left, start * left * seconds[i] / timeConstant};
        }
        RealMatrix jacobian = new Array2DRowRealMatrix(slopes);
        double variance =
                MatrixUtils.inverse(jacobian.transpose().multiply(jacobian)).getEntry(0, 0);
        assertThat(approach.endUncertainty()).isCloseTo(LEAST * Math.sqrt(variance), within(1e-6));
    }

    /** Where readings scatter, each has Tukey's weight for its residual, and the noise is theirs with three degrees spent. */
    @Test
    void everyReadingHasTheWeightOfItsResidual() {
        double[] seconds = times(40, 5);
        double[] ph = curve(seconds, 5.4, 0.5, 25);
        Random random = new Random(3);
        for (int i = 0; i < ph.length; i++) {
            ph[i] += 0.01 * random.nextGaussian();
        }
        ph[10] += 0.5;
        ph[30] -= 0.5;
        Approach approach = fit(seconds, ph);
        double[] residuals = new double[ph.length];
        double squares = 0;
        for (int i = 0; i < ph.length; i++) {
            residuals[i] = approach.residual(seconds[i], ph[i]);
            squares += approach.weights()[i] > 0 ? residuals[i] * residuals[i] : 0;
        }
        double scale = Approach.scale(residuals, approach.weights());
        for (int i = 0; i < ph.length; i++) {
            double u = residuals[i] / (4.685 * scale);
            double weight = Math.abs(u) < 1 ? Math.pow(1 - u * u, 2) : 0;
            assertThat(approach.weights()[i]).as("reading %d", i).isCloseTo(weight, within(0.01));
        }
        assertThat(approach.weights()[10]).isZero();
        assertThat(approach.weights()[30]).isZero();
        assertThat(approach.counted()).isEqualTo(38);
        assertThat(approach.noisePh()).isCloseTo(Math.sqrt(squares / 35), within(1e-9));
    }

    /** The same by a regression of the numerics library, for every third of 650 readings as for all of a few. */
    @ParameterizedTest(name = "{0} readings, time constant {1} of the series, one in {2}")
    @CsvSource({"5, 0.3, 1", "12, 0.04, 1", "40, 0.5, 1", "40, 2, 1", "300, 0.1, 1", "301, 0.2, 2", "650, 0.2, 3"})
    void theFitStartsFromTheBestOfSixteenTimeConstants(int n, double share, int oneIn) {
        double[] seconds = times(n, 5);
        double[] ph = curve(seconds, 5.4, 0.3, share * seconds[n - 1]);
        double[] weights = new double[n];
        Random random = new Random(n);
        for (int i = 0; i < n; i++) {
            ph[i] += 0.02 * random.nextGaussian();
            weights[i] = i % 4 == 1 ? 0.25 : 1;
        }
        double[] best = {};
        double least = Double.POSITIVE_INFINITY;
        for (int k = 0; k < 16; k++) {
            double timeConstant = seconds[n - 1] * Math.pow(10, -2 + k / 6.0);
            int used = (n + oneIn - 1) / oneIn;
            double[] y = new double[used];
            double[][] x = new double[used][];
            for (int j = 0; j < used; j++) {
                double root = Math.sqrt(weights[j * oneIn]);
                y[j] = root * ph[j * oneIn];
                x[j] = new double[] {root, root * Math.exp(-seconds[j * oneIn] / timeConstant)};
            }
            OLSMultipleLinearRegression line = new OLSMultipleLinearRegression();
            line.setNoIntercept(true);
            line.newSampleData(y, x);
            double rest = line.calculateResidualSumOfSquares();
            if (rest < least) {
                least = rest;
                double[] ends = line.estimateRegressionParameters();
                best = new double[] {ends[0], ends[1], Math.log(timeConstant)};
            }
        }
        assertThat(Approach.scan(seconds, ph, weights)).containsExactly(best, within(1e-9));
    }

    private static double[] screened(double... ph) {
        return Approach.screened(ph, LEAST);
    }

    @Test
    void aReadingApartFromBothItsNeighboursStartsWithoutAWeight() {
        double far = 4.7 * LEAST;
        double near = 4.6 * LEAST;
        assertThat(screened(5, 5, 5, 5 + far, 5, 5, 5)).containsExactly(1, 1, 1, 0, 1, 1, 1);
        assertThat(screened(5, 5 - far, 5, 5, 5, 5 + far, 5)).containsExactly(1, 0, 1, 1, 1, 0, 1);
        assertThat(screened(5, 5, 5, 5 + near, 5, 5, 5)).containsOnly(1);
        assertThat(screened(5, 5, 5, 5 + far, 5 + far, 5, 5)).as("two alike").containsOnly(1);
        assertThat(screened(5, 5, 5, 5, 5 + far, 5 + far, 5 + far)).as("a step").containsOnly(1);
        assertThat(screened(5, 5, 5, 5, 5 + far, 5 + 2 * far, 5 + 2 * far))
                .as("on the way")
                .containsOnly(1);
        assertThat(screened(5 + far, 5, 5, 5, 5, 5, 5 + far))
                .as("first and last have one neighbour")
                .containsOnly(1);
    }

    /** Of a zigzag of 0.02 each reading lies 0.02 or nothing from the median of the five around it. */
    @Test
    void whatIsApartIsMeasuredByTheScatter() {
        double[] zigzag = new double[20];
        for (int i = 0; i < zigzag.length; i++) {
            zigzag[i] = 5 + (i % 3 == 0 ? 0.02 : i % 3 == 1 ? -0.02 : 0);
        }
        double[] little = zigzag.clone();
        little[9] += 0.05;
        double[] much = zigzag.clone();
        much[9] += 0.2;
        assertThat(Approach.screened(little, LEAST)).containsOnly(1);
        assertThat(Approach.screened(much, LEAST)[9]).isZero();
        assertThat(Approach.screened(much, LEAST)).contains(1);
    }

    /** By hand: 1.4826 times the middle size, times root of n over n less 3, or 2 where too few are left. */
    @Test
    void theScaleIsTheMedianSizeFreedForWhatWasFitted() {
        double[] all = {1, 1, 1, 1, 0};
        assertThat(Approach.scale(new double[] {1, -2, 3, -4, 100}, all)).isCloseTo(1.4826 * 2.5 * 2, within(1e-12));
        assertThat(Approach.scale(new double[] {1, -2, 3, 100, 100}, new double[] {1, 1, 1, 0, 0}))
                .isCloseTo(1.4826 * 2 * 2, within(1e-12));
        assertThat(Approach.scale(new double[] {1, 5, 2, 4, 3}, new double[] {1, 1, 1, 1, 1}))
                .isCloseTo(1.4826 * 3 * Math.sqrt(2.5), within(1e-12));
        assertThat(Approach.scale(new double[] {1}, new double[] {0})).isZero();
    }

    @Test
    void theMedianIsTheMiddleOrBetweenTheMiddleTwo() {
        assertThat(Approach.median(new double[] {3, 1, 2})).isEqualTo(2);
        assertThat(Approach.median(new double[] {4, 1, 3, 2})).isEqualTo(2.5);
        assertThat(Approach.median(new double[] {7})).isEqualTo(7);
        assertThat(Approach.median(new double[0])).isZero();
        double[] left = {2, 1};
        Approach.median(left);
        assertThat(left).as("not sorted in place").containsExactly(2, 1);
    }
}

package tunside.dosing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class BellsTest {
    private static final int NODES = 27;
    private static final double STEP = 12.0 / 26;

    private static double place(int i) {
        return (i - NODES / 2) * STEP;
    }

    private static Bells standardNormal() {
        double[] densities = new double[NODES];
        for (int i = 0; i < NODES; i++) {
            densities[i] = 7 * Math.exp(-place(i) * place(i) / 2);
        }
        return new Bells(densities);
    }

    @Test
    void theSumOfBellsHasTheMassTheMeanAndTheWidthOfTheDensity() {
        Bells bells = standardNormal();
        double sum = 0;
        double square = 0;
        double[] places = new double[NODES];
        for (int i = 0; i < NODES; i++) {
            places[i] = place(i);
            sum += bells.weight(i);
            square += bells.weight(i) * (place(i) * place(i) + Math.pow(Bells.WIDTH * STEP, 2));
        }
        assertThat(sum).isCloseTo(1, within(1e-12));
        assertThat(bells.mean(i -> places[i])).isCloseTo(0, within(1e-12));
        assertThat(square).isCloseTo(1, within(1e-6));
    }

    /** A quantity that is the place itself, known at each node to a deviation: from far sharper than a step to far wider. */
    @ParameterizedTest
    @ValueSource(doubles = {1e-6, 0.01, 0.1, 0.3, 1, 5})
    void aQuantityAlongTheGridIsConvolved(double deviation) {
        Bells bells = standardNormal();
        double all = Math.hypot(1, deviation);
        for (double value = -3 * all; value <= 3 * all; value += 0.173) {
            Distribution.Point point = bells.below(deviations(value, deviation), slopes(deviation));
            assertThat(point.below()).isCloseTo(NormalIntegral.below(value / all), within(1e-4));
            assertThat(point.density() * all).isCloseTo(NormalIntegral.density(value / all), within(1e-3));
        }
    }

    private static double[] deviations(double value, double deviation) {
        double[] deviations = new double[NODES];
        for (int i = 0; i < NODES; i++) {
            deviations[i] = (value - place(i)) / deviation;
        }
        return deviations;
    }

    private static double[] slopes(double deviation) {
        double[] slopes = new double[NODES];
        for (int i = 0; i < NODES; i++) {
            slopes[i] = 1 / deviation;
        }
        return slopes;
    }

    @Test
    void whatIsTheSameAtEveryNodeIsNotBlurred() {
        double[] level = new double[NODES];
        double[] slopes = new double[NODES];
        for (int i = 0; i < NODES; i++) {
            level[i] = 1.3;
            slopes[i] = 2;
        }
        Distribution.Point point = standardNormal().below(level, slopes);
        assertThat(point.below()).isCloseTo(NormalIntegral.below(1.3), within(1e-9));
        assertThat(point.density()).isCloseTo(2 * NormalIntegral.density(1.3), within(1e-9));
    }

    /** The density is what the probability changes by, also where the spread over a bell changes with the value. */
    @Test
    void theDensityIsTheSlopeOfTheProbability() {
        Bells bells = standardNormal();
        for (double value = -1; value <= 2; value += 0.31) {
            double rise = (below(bells, value + 1e-4).below()
                            - below(bells, value - 1e-4).below())
                    / 2e-4;
            assertThat(below(bells, value).density()).isCloseTo(rise, within(1e-3));
        }
    }

    private static Distribution.Point below(Bells bells, double value) {
        double[] deviations = new double[NODES];
        double[] slopes = new double[NODES];
        for (int i = 0; i < NODES; i++) {
            double perValue = Math.exp(-0.28 * place(i));
            deviations[i] = (value * perValue - 0.7) * (1 + value * value);
            slopes[i] = perValue * (1 + value * value) + (value * perValue - 0.7) * 2 * value;
        }
        return bells.below(deviations, slopes);
    }
}

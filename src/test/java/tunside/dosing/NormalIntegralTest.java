package tunside.dosing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.hipparchus.distribution.continuous.NormalDistribution;
import org.junit.jupiter.api.Test;

class NormalIntegralTest {
    @Test
    void itIsTheNormalDistributionEverywhere() {
        NormalDistribution normal = new NormalDistribution();
        for (double z = -7.9987; z < 8; z += 0.0131) {
            assertThat(NormalIntegral.below(z)).isCloseTo(normal.cumulativeProbability(z), within(1e-10));
        }
    }

    @Test
    void theDensityAndTheQuantileBelongToIt() {
        NormalDistribution normal = new NormalDistribution();
        for (double z = -7.9987; z < 8; z += 0.0131) {
            assertThat(NormalIntegral.density(z)).isCloseTo(normal.density(z), within(1e-5));
        }
        assertThat(NormalIntegral.density(8)).isZero();
        assertThat(NormalIntegral.density(-8)).isZero();
    }

    @Test
    void aQuantileIsThatOfTheDistributionInTheTableAndBeyondIt() {
        NormalDistribution normal = new NormalDistribution();
        for (double probability = 1e-12; probability < 1e-3; probability *= 1.7) {
            assertQuantile(normal, probability);
            assertQuantile(normal, 1 - probability);
        }
        for (int k = 1; k < 100_000; k += 7) {
            assertQuantile(normal, k / 100_000.0);
        }
        for (double edge : new double[] {1e-3, Math.nextUp(1e-3), 0.5, Math.nextDown(0.999), 0.999}) {
            assertQuantile(normal, edge);
        }
    }

    private static void assertQuantile(NormalDistribution normal, double probability) {
        assertThat(NormalIntegral.quantile(probability))
                .as("%s", probability)
                .isCloseTo(normal.inverseCumulativeProbability(probability), within(1e-7));
    }

    @Test
    void farOutItIsNoneAndAll() {
        assertThat(NormalIntegral.below(-8)).isZero();
        assertThat(NormalIntegral.below(-1e9)).isZero();
        assertThat(NormalIntegral.below(8)).isEqualTo(1);
        assertThat(NormalIntegral.below(1e300)).isEqualTo(1);
        assertThat(NormalIntegral.below(0)).isEqualTo(0.5);
        assertThat(NormalIntegral.below(Double.NaN)).isZero();
    }
}

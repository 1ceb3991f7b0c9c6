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
        for (double z = -3.5; z < 3.5; z += 0.1) {
            assertThat(NormalIntegral.quantile(NormalIntegral.below(z))).isCloseTo(z, within(1e-6));
        }
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

package tunside.dosing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class QuantilesTest {
    private static Distribution.Point normal(double value, double mean, double deviation) {
        double z = (value - mean) / deviation;
        return new Distribution.Point(NormalIntegral.below(z), NormalIntegral.density(z) / deviation);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.0001, 0.01, 0.05, 0.3, 0.5, 0.8, 0.95, 0.9999})
    void aNormalDistributionIsFoundInTwoEvaluations(double probability) {
        int[] asked = {0};
        Quantiles quantiles = new Quantiles(
                value -> {
                    asked[0]++;
                    return normal(value, 5, 0.1);
                },
                0,
                10,
                5.02);
        asked[0] = 0;
        assertThat(quantiles.at(probability)).isCloseTo(5 + 0.1 * NormalIntegral.quantile(probability), within(1e-8));
        assertThat(asked[0]).isLessThanOrEqualTo(2);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.001, 0.05, 0.5, 0.95, 0.999})
    void aVerySkewOneIsFoundToo(double probability) {
        int[] asked = {0};
        Distribution skew = value -> {
            asked[0]++;
            double z = value <= 0 ? -9 : Math.log(value) / 0.7;
            return new Distribution.Point(
                    NormalIntegral.below(z), value <= 0 ? 0 : NormalIntegral.density(z) / 0.7 / value);
        };
        double found = new Quantiles(skew, 0, 1e6, 1.2).at(probability);
        assertThat(found / Math.exp(0.7 * NormalIntegral.quantile(probability))).isCloseTo(1, within(5e-5));
        assertThat(asked[0]).isLessThanOrEqualTo(12);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.1, 0.4, 0.6, 0.9})
    void twoHeapsFarApartAreFoundByHalving(double probability) {
        Distribution heaps = value -> {
            Distribution.Point low = normal(value, 3, 0.01);
            Distribution.Point high = normal(value, 9, 0.01);
            return new Distribution.Point((low.below() + high.below()) / 2, (low.density() + high.density()) / 2);
        };
        double found = new Quantiles(heaps, 0, 10, 6).at(probability);
        double within = 2 * probability - (probability < 0.5 ? 0 : 1);
        double middle = probability < 0.5 ? 3 : 9;
        assertThat(found).isCloseTo(middle + 0.01 * NormalIntegral.quantile(within), within(2e-3));
    }

    @Test
    void whatLiesBeyondAnEndIsTheEnd() {
        Quantiles low = new Quantiles(value -> normal(value, -5, 1), 0, 10, -5);
        Quantiles high = new Quantiles(value -> normal(value, 15, 1), 0, 10, 15);
        assertThat(low.at(0.05)).isZero();
        assertThat(low.at(0.95)).isZero();
        assertThat(high.at(0.05)).isEqualTo(10);
        assertThat(high.at(0.95)).isEqualTo(10);
        Quantiles straddling = new Quantiles(value -> normal(value, 0.5, 1), 0, 10, 0.5);
        assertThat(straddling.at(0.05)).isZero();
        assertThat(straddling.at(0.95)).isCloseTo(0.5 + 1.6448536, within(1e-6));
    }
}

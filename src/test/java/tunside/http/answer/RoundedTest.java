package tunside.http.answer;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.SplittableRandom;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;

class RoundedTest {
    private static final SplittableRandom RANDOM = new SplittableRandom(11);

    /** Values of every size, ties, neighbours of ties and of powers of ten. */
    private static double[] values() {
        DoubleStream anything = DoubleStream.generate(
                        () -> (RANDOM.nextDouble() - 0.5) * Math.pow(10, RANDOM.nextInt(-12, 14)))
                .limit(200_000);
        DoubleStream ties = DoubleStream.generate(() -> RANDOM.nextInt(-100_000, 100_000) / 2000.0)
                .limit(50_000);
        DoubleStream powers = DoubleStream.iterate(1e-9, power -> power < 1e12, power -> power * 10)
                .flatMap(power -> DoubleStream.of(power, Math.nextUp(power), Math.nextDown(power), -power));
        return DoubleStream.concat(
                        DoubleStream.concat(anything, powers),
                        ties.flatMap(tie -> DoubleStream.of(tie, Math.nextUp(tie), Math.nextDown(tie), 0, -0.0)))
                .toArray();
    }

    @Test
    void decimals_are_those_of_decimal_arithmetic_to_the_last_bit() {
        for (double value : values()) {
            for (int decimals = 0; decimals <= 4; decimals++) {
                double exact = BigDecimal.valueOf(value)
                                .setScale(decimals, RoundingMode.HALF_EVEN)
                                .doubleValue()
                        + 0.0;
                assertThat(Double.compare(Rounded.decimals(value, decimals), exact))
                        .as("%s to %d decimals", value, decimals)
                        .isZero();
            }
        }
    }

    @Test
    void significant_digits_are_those_of_decimal_arithmetic_to_the_last_bit() {
        for (double value : values()) {
            for (int digits = 1; digits <= 4; digits++) {
                double exact = BigDecimal.valueOf(value)
                                .round(new MathContext(digits, RoundingMode.HALF_EVEN))
                                .doubleValue()
                        + 0.0;
                assertThat(Double.compare(Rounded.significant(value, digits), exact))
                        .as("%s to %d digits", value, digits)
                        .isZero();
            }
        }
    }
}

package tunside.http.answer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ShortDecimalTest {
    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2, 3, 4, 5, 6})
    void aRoundedNumberIsWrittenAsJavaWritesIt(int decimals) {
        Random random = new Random(decimals);
        for (int i = 0; i < 20_000; i++) {
            long digits = (long) Math.pow(10, 1 + 6 * random.nextDouble());
            double value =
                    BigDecimal.valueOf(random.nextLong() % digits, decimals).doubleValue();
            String text = text(value);
            if (Math.abs(value) >= 1e-3 && Math.abs(value) < 1e7) {
                assertEquals(Double.toString(value), text);
            } else {
                assertEquals("", text, () -> "of " + value);
            }
        }
    }

    @Test
    void anyNumberIsWrittenAsJavaWritesItOrNotAtAll() {
        Random random = new Random(7);
        int written = 0;
        for (int i = 0; i < 200_000; i++) {
            double decimal = random.nextInt(2_000_000) / 1000.0;
            double value = random.nextBoolean() ? decimal : Math.nextUp(decimal);
            String text = text(value);
            if (!text.isEmpty()) {
                written++;
                assertEquals(Double.toString(value), text);
            }
        }
        assertTrue(written > 1000, "written: " + written);
    }

    @ParameterizedTest
    @ValueSource(
            doubles = {0.001, 0.0010000000000000002, 9999999, 9999999.999999, 0.3, 0.1 + 0.2, -0.001, -1234567.654321})
    void theEdgesAreWrittenAsJavaWritesThemOrNotAtAll(double value) {
        String text = text(value);
        assertTrue(text.isEmpty() || text.equals(Double.toString(value)), text);
    }

    @ParameterizedTest
    @ValueSource(
            doubles = {0, -0.0, 1e7, 9.99e-4, 0.1 + 0.2, Math.PI, Double.NaN, Double.POSITIVE_INFINITY, Double.MIN_VALUE
            })
    void whatIsNoShortDecimalIsLeftToOthers(double value) {
        assertEquals("", text(value));
    }

    private static String text(double value) {
        char[] text = new char[ShortDecimal.LONGEST];
        int start = ShortDecimal.write(value, text);
        return new String(text, start, text.length - start);
    }
}

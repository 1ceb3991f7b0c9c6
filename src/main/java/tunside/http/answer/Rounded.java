package tunside.http.answer;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Numbers as an answer shows them. Rounding happens here, once, and only in mappers. */
public final class Rounded {
    private Rounded() {}

    /** To a number of decimals, half to even; never minus zero. */
    public static double decimals(double value, int decimals) {
        return BigDecimal.valueOf(value)
                        .setScale(decimals, RoundingMode.HALF_EVEN)
                        .doubleValue()
                + 0.0;
    }

    /** To a number of significant digits, half to even. */
    public static double significant(double value, int digits) {
        return BigDecimal.valueOf(value)
                        .round(new MathContext(digits, RoundingMode.HALF_EVEN))
                        .doubleValue()
                + 0.0;
    }

    /** Without a needless exponent or trailing zeros, the same in every locale. */
    public static String text(double value) {
        BigDecimal number = BigDecimal.valueOf(value).stripTrailingZeros();
        return number.scale() < 0 ? number.setScale(0, RoundingMode.UNNECESSARY).toString() : number.toPlainString();
    }
}

package tunside.http.answer;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Numbers as an answer shows them. Rounding happens here, once, and only in mappers. */
public final class Rounded {
    /** Powers of ten that a double holds exactly. */
    private static final double[] POWERS = new double[23];

    /** Up to here a product with a power of ten is off by less than {@link #NEAR_A_TIE}. */
    private static final double LARGEST_SCALED = 1e9;

    private static final double NEAR_A_TIE = 1e-6;
    private static final double LOG10_OF_2 = Math.log10(2);

    static {
        for (int power = 0; power < POWERS.length; power++) {
            POWERS[power] = Double.parseDouble("1e" + power);
        }
    }

    private Rounded() {}

    /** To a number of decimals, half to even; never minus zero. */
    public static double decimals(double value, int decimals) {
        if (decimals >= 0 && decimals < POWERS.length) {
            double scaled = value * POWERS[decimals];
            double whole = Math.rint(scaled);
            boolean clear = Math.abs(Math.abs(scaled - whole) - 0.5) > NEAR_A_TIE;
            if (clear && Math.abs(scaled) < LARGEST_SCALED) {
                // two exact doubles: their quotient is the double next to the decimal, as BigDecimal gives it
                return whole / POWERS[decimals] + 0.0;
            }
        }
        return BigDecimal.valueOf(value)
                        .setScale(decimals, RoundingMode.HALF_EVEN)
                        .doubleValue()
                + 0.0;
    }

    /** To a number of significant digits, half to even. */
    public static double significant(double value, int digits) {
        if (value == 0) {
            return 0;
        }
        int decimals = digits - 1 - exponent(Math.abs(value));
        if (decimals >= 0 && decimals < POWERS.length) {
            return decimals(value, decimals);
        }
        return BigDecimal.valueOf(value)
                        .round(new MathContext(digits, RoundingMode.HALF_EVEN))
                        .doubleValue()
                + 0.0;
    }

    /** That of ten in a positive number; from the one of two, which is there for the taking, it is at most one more. */
    private static int exponent(double value) {
        int least = (int) Math.floor(Math.getExponent(value) * LOG10_OF_2);
        if (Math.abs(least) >= POWERS.length - 1) {
            return (int) Math.floor(Math.log10(value));
        }
        double next = least < 0 ? 1 / POWERS[-least - 1] : POWERS[least + 1];
        return value < next ? least : least + 1;
    }

    /** Without a needless exponent or trailing zeros, the same in every locale. */
    public static String text(double value) {
        char[] text = new char[ShortDecimal.LONGEST];
        int start = ShortDecimal.write(value, text);
        String plain =
                start < text.length ? new String(text, start, text.length - start) : Double.toString(value + 0.0);
        if (plain.indexOf('E') < 0) {
            return plain.endsWith(".0") ? plain.substring(0, plain.length() - 2) : plain;
        }
        BigDecimal number = BigDecimal.valueOf(value).stripTrailingZeros();
        return number.scale() < 0 ? number.setScale(0, RoundingMode.UNNECESSARY).toString() : number.toPlainString();
    }
}

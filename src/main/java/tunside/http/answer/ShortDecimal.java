package tunside.http.answer;

/**
 * The text of a number, the same as {@link Double#toString}'s and faster where it is a short decimal, as the rounded numbers of an
 * answer are. A decimal of up to 15 digits that has the double for its nearest is the shortest that has, so it is enough to find
 * one.
 */
public final class ShortDecimal {
    /** Room that every text has enough of. */
    public static final int LONGEST = 16;

    private static final int MOST_DECIMALS = 6;

    /** Below it, and from {@link #BELOW} on, the text has an exponent. */
    private static final double LEAST = 1e-3;

    private static final double BELOW = 1e7;

    private ShortDecimal() {}

    /**
     * Writes a number to the end of a text.
     *
     * @return where it starts; the length of the text if it is no short decimal, and nothing was written
     */
    public static int write(double value, char[] text) {
        double magnitude = Math.abs(value);
        if (magnitude >= LEAST && magnitude < BELOW) {
            double power = 1;
            for (int decimals = 0; decimals <= MOST_DECIMALS; decimals++, power *= 10) {
                double scaled = Math.rint(magnitude * power);
                if (scaled / power == magnitude) {
                    return write((long) scaled, decimals, value < 0, text);
                }
            }
        }
        return text.length;
    }

    private static int write(long scaled, int decimals, boolean negative, char[] text) {
        int start = text.length;
        long rest = scaled;
        if (decimals == 0) {
            text[--start] = '0';
        }
        for (int decimal = 0; decimal < decimals; decimal++, rest /= 10) {
            text[--start] = (char) ('0' + rest % 10);
        }
        text[--start] = '.';
        do {
            text[--start] = (char) ('0' + rest % 10);
            rest /= 10;
        } while (rest > 0);
        if (negative) {
            text[--start] = '-';
        }
        return start;
    }
}

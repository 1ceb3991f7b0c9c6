package tunside.quantity;

/**
 * A hardness: calcium plus magnesium.
 *
 * @param meqPerL milliequivalents per litre, finite, not negative
 */
public record Hardness(double meqPerL) {
    public Hardness {
        if (!(meqPerL >= 0 && meqPerL < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "hardness (%s mEq/L) must be finite and not negative".formatted(meqPerL));
        }
    }

    /** States {@code value} in {@code unit}. */
    public static Hardness of(double value, EquivalentUnit unit) {
        return new Hardness(unit.toBase(value));
    }
}

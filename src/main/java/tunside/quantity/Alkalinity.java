package tunside.quantity;

/**
 * An alkalinity.
 *
 * @param meqPerL milliequivalents per litre, finite; negative means free mineral acid
 */
public record Alkalinity(double meqPerL) {
    public Alkalinity {
        if (!(Math.abs(meqPerL) < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("alkalinity (%s mEq/L) must be finite".formatted(meqPerL));
        }
    }

    /** States {@code value} in {@code unit}. */
    public static Alkalinity of(double value, EquivalentUnit unit) {
        return new Alkalinity(unit.toBase(value));
    }
}

package tunside.quantity;

/**
 * A colour.
 *
 * @param ebc European Brewery Convention units, finite, not negative
 */
public record Colour(double ebc) {
    public Colour {
        if (!(ebc >= 0 && ebc < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("colour (%s EBC) must be finite and not negative".formatted(ebc));
        }
    }

    /** States {@code value} in {@code unit}. */
    public static Colour of(double value, ColourUnit unit) {
        return new Colour(unit.toBase(value));
    }
}

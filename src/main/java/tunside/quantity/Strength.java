package tunside.quantity;

/**
 * The strength of an acid or base as labelled.
 *
 * @param value finite, above 0; at most 100 in %w/w
 * @param unit what the value counts; {@code eq/L} counts every proton that the formula can give
 */
public record Strength(double value, StrengthUnit unit) {
    public Strength {
        if (!(value > 0 && value < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "strength (%s %s) must be finite and above 0".formatted(value, unit.symbol()));
        }
        if (unit == StrengthUnit.PERCENT_W_W && value > 100) {
            throw new IllegalArgumentException("strength (%s %%w/w) must be at most 100".formatted(value));
        }
    }

    /** States {@code percent} by mass. */
    public static Strength percent(double percent) {
        return new Strength(percent, StrengthUnit.PERCENT_W_W);
    }
}

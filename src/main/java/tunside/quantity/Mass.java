package tunside.quantity;

/**
 * A mass.
 *
 * @param kilograms finite, not negative
 */
public record Mass(double kilograms) {
    public Mass {
        if (!(kilograms >= 0 && kilograms < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("mass (%s kg) must be finite and not negative".formatted(kilograms));
        }
    }

    /** States {@code value} in {@code unit}. */
    public static Mass of(double value, MassUnit unit) {
        return new Mass(unit.toBase(value));
    }

    /** In grams. */
    public double grams() {
        return 1000 * kilograms;
    }
}

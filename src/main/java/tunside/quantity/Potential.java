package tunside.quantity;

/**
 * An electric potential.
 *
 * @param millivolts finite
 */
public record Potential(double millivolts) {
    public Potential {
        if (!(Math.abs(millivolts) < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("potential (%s mV) must be finite".formatted(millivolts));
        }
    }

    /** States {@code value} in {@code unit}. */
    public static Potential of(double value, PotentialUnit unit) {
        return new Potential(unit.toBase(value));
    }
}

package tunside.quantity;

/**
 * An electrical conductivity at 25 degC.
 *
 * @param microsiemensPerCm finite, not negative
 */
public record Conductivity(double microsiemensPerCm) {
    public Conductivity {
        if (!(microsiemensPerCm >= 0 && microsiemensPerCm < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "conductivity (%s uS/cm) must be finite and not negative".formatted(microsiemensPerCm));
        }
    }

    /** States {@code value} in {@code unit}. */
    public static Conductivity of(double value, ConductivityUnit unit) {
        return new Conductivity(unit.toBase(value));
    }
}

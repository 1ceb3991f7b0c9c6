package tunside.quantity;

/**
 * A volume.
 *
 * @param litres finite, not negative
 */
public record Volume(double litres) {
    public Volume {
        if (!(litres >= 0 && litres < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("volume (%s L) must be finite and not negative".formatted(litres));
        }
    }

    /** States {@code value} in {@code unit}. */
    public static Volume of(double value, VolumeUnit unit) {
        return new Volume(unit.toBase(value));
    }

    /** In millilitres. */
    public double millilitres() {
        return 1000 * litres;
    }
}

package tunside.quantity;

/**
 * A temperature.
 *
 * @param celsius degrees Celsius (ITS-90), finite, at or above absolute zero
 */
public record Temperature(double celsius) {
    public Temperature {
        if (!(celsius >= -273.15 && celsius < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "temperature (%s degC) must be finite and at or above -273.15 degC".formatted(celsius));
        }
    }

    /** States {@code value} in {@code unit}. */
    public static Temperature of(double value, TemperatureUnit unit) {
        return new Temperature(unit.toBase(value));
    }

    /** In kelvin. */
    public double kelvin() {
        return celsius + 273.15;
    }
}

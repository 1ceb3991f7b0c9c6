package tunside.quantity;

/**
 * A span of time.
 *
 * @param seconds finite, not negative
 */
public record TimeSpan(double seconds) {
    public TimeSpan {
        if (!(seconds >= 0 && seconds < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("time (%s s) must be finite and not negative".formatted(seconds));
        }
    }

    /** States {@code value} in {@code unit}. */
    public static TimeSpan of(double value, TimeUnit unit) {
        return new TimeSpan(unit.toBase(value));
    }

    /** In minutes. */
    public double minutes() {
        return seconds / 60;
    }
}

package tunside.mash;

/**
 * A value and how far it may be off.
 *
 * @param value finite
 * @param standardUncertainty one standard deviation, finite, not negative
 */
public record Estimate(double value, double standardUncertainty) {
    public Estimate {
        if (!(Math.abs(value) < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("value (%s) must be finite".formatted(value));
        }
        if (!(standardUncertainty >= 0 && standardUncertainty < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "standard uncertainty (%s) must be finite and not negative".formatted(standardUncertainty));
        }
    }

    /** A value that is not in doubt. */
    public static Estimate exactly(double value) {
        return new Estimate(value, 0);
    }

    /** A value with a relative standard uncertainty, such as 0.05. */
    public static Estimate relative(double value, double relative) {
        return new Estimate(value, Math.abs(value) * relative);
    }
}

package tunside.dosing;

/**
 * What is known of a liquid's buffering before any acid went in: a log-normal distribution.
 *
 * @param median buffering that factor 1 of the curve stands for, above 0
 * @param unit of the median, such as {@code mEq/(kg pH)}
 * @param logStandardDeviation standard deviation of its natural logarithm, 0.001 to 1
 * @param source id of the publication
 */
public record BufferingPrior(double median, String unit, double logStandardDeviation, String source) {
    public BufferingPrior {
        if (!(median > 0 && median < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("median buffering (%s %s) must be above 0".formatted(median, unit));
        }
        if (!(logStandardDeviation >= 0.001 && logStandardDeviation <= 1)) {
            throw new IllegalArgumentException(
                    "standard deviation of the logarithm (%s) must be from 0.001 to 1".formatted(logStandardDeviation));
        }
    }

    /**
     * The same, less sure by an error that acts like one of the buffering: an acid 3 % stronger than its label looks
     * like a liquid that buffers 3 % less.
     */
    BufferingPrior widened(double relativeUncertainty) {
        return new BufferingPrior(
                median, unit, Math.min(1, Math.hypot(logStandardDeviation, relativeUncertainty)), source);
    }
}

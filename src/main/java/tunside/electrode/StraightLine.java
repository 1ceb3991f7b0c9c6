package tunside.electrode;

/**
 * A fitted straight line {@code y = intercept + slope x}.
 *
 * @param intercept y at x = 0
 * @param slope per unit of x
 * @param interceptVariance squared standard uncertainty of the intercept
 * @param slopeVariance squared standard uncertainty of the slope
 * @param covariance of both
 * @param chiSquared sum of squared weighted residuals; for an unweighted fit the plain sum of squares
 * @param degreesOfFreedom points less two
 */
public record StraightLine(
        double intercept,
        double slope,
        double interceptVariance,
        double slopeVariance,
        double covariance,
        double chiSquared,
        int degreesOfFreedom) {

    /**
     * An x with its standard uncertainty.
     *
     * @param value where the line reaches y
     * @param standardUncertainty of it
     */
    public record ReadBack(double value, double standardUncertainty) {}

    /** The line's y. */
    public double at(double x) {
        return intercept + slope * x;
    }

    /** Standard uncertainty of {@link #at}. */
    public double standardUncertaintyAt(double x) {
        return Math.sqrt(Math.max(0, varianceAt(x)));
    }

    /**
     * The x of a new y (ISO-28037-2010, clause 11): {@code u^2(x) = [u^2(y) + u^2(a) + x^2 u^2(b) + 2 x cov(a, b)] /
     * b^2}.
     *
     * @param y a new value, independent of the points of the fit
     * @param standardUncertainty of y
     * @throws ArithmeticException if the line is level
     */
    public ReadBack readBack(double y, double standardUncertainty) {
        if (slope == 0) {
            throw new ArithmeticException("a level line has no x for a y");
        }
        double x = (y - intercept) / slope;
        return new ReadBack(
                x, Math.sqrt(standardUncertainty * standardUncertainty + Math.max(0, varianceAt(x))) / Math.abs(slope));
    }

    /** The same line with all variances multiplied: for points that scatter more than their uncertainties say. */
    public StraightLine widened(double factor) {
        return new StraightLine(
                intercept,
                slope,
                factor * interceptVariance,
                factor * slopeVariance,
                factor * covariance,
                chiSquared,
                degreesOfFreedom);
    }

    private double varianceAt(double x) {
        return interceptVariance + x * x * slopeVariance + 2 * x * covariance;
    }
}

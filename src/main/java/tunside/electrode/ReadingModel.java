package tunside.electrode;

/**
 * How well a picture of the cups and the electrode explains the readings: the probability density of the potentials, with
 * slope and offset free within what is usual for that picture (GUM-2008 variances, normal throughout).
 *
 * <p>Potential {@code E = offset - s k (pH - 7)}; {@code s} and the offset are normal, so the potentials are jointly
 * normal with a covariance of a diagonal and two outer products, which is inverted in closed form.
 */
final class ReadingModel {
    private final double[] potentialsMv;
    private final double[] weights;
    private final double slopeMean;
    private final double slopeSd;
    private final double offsetSd;
    private final double logNorm;

    /**
     * @param potentialsMv as read
     * @param noiseMv standard uncertainty of each, positive
     * @param slopeMean fraction of the ideal slope
     * @param slopeSd its standard deviation
     * @param offsetSd of the offset, mV
     */
    ReadingModel(double[] potentialsMv, double[] noiseMv, double slopeMean, double slopeSd, double offsetSd) {
        this.potentialsMv = potentialsMv.clone();
        this.weights = new double[noiseMv.length];
        this.slopeMean = slopeMean;
        this.slopeSd = slopeSd;
        this.offsetSd = offsetSd;
        double norm = -0.5 * noiseMv.length * Math.log(2 * Math.PI);
        for (int i = 0; i < noiseMv.length; i++) {
            weights[i] = 1 / (noiseMv[i] * noiseMv[i]);
            norm -= Math.log(noiseMv[i]);
        }
        this.logNorm = norm;
    }

    /**
     * Logarithm of the density of the potentials; minus infinity where an ideal potential is not a number.
     *
     * @param idealMv {@code -k (pH - 7)} of each reading, by point of a grid: what an ideal electrode would give; one
     *     point only where it does not change
     * @param point of the grid
     */
    double logDensity(double[][] idealMv, int point) {
        double squares = 0;
        double a11 = 1;
        double a12 = 0;
        double a22 = 1;
        double b1 = 0;
        double b2 = 0;
        for (int i = 0; i < weights.length; i++) {
            double ideal = idealMv[i].length == 1 ? idealMv[i][0] : idealMv[i][point];
            double residual = potentialsMv[i] - slopeMean * ideal;
            double bySlope = slopeSd * ideal;
            a11 += weights[i] * bySlope * bySlope;
            a12 += weights[i] * bySlope * offsetSd;
            a22 += weights[i] * offsetSd * offsetSd;
            b1 += weights[i] * bySlope * residual;
            b2 += weights[i] * offsetSd * residual;
            squares += weights[i] * residual * residual;
        }
        double determinant = a11 * a22 - a12 * a12;
        double explained = (a22 * b1 * b1 - 2 * a12 * b1 * b2 + a11 * b2 * b2) / determinant;
        double logDensity = logNorm - 0.5 * Math.log(determinant) + 0.5 * (explained - squares);
        return Double.isNaN(logDensity) ? Double.NEGATIVE_INFINITY : logDensity;
    }

    /** Logarithm of the density of a settling time's logarithm about its median. */
    static double logSettling(double seconds, double medianSeconds, double logSd) {
        double z = Math.log(Math.max(seconds, 1) / medianSeconds) / logSd;
        return -0.5 * z * z - Math.log(logSd) - 0.5 * Math.log(2 * Math.PI);
    }
}

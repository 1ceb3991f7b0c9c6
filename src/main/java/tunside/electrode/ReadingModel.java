package tunside.electrode;

/**
 * How well a picture of the cups and the electrode explains the readings: the probability density of the potentials, with
 * slope and offset free within what is usual for that picture (GUM-2008 variances, normal throughout).
 *
 * <p>Potential {@code E = offset - s k (pH - 7)}; {@code s} and the offset are normal, so the potentials are jointly
 * normal with a covariance of a diagonal and two outer products, which is inverted in closed form.
 */
final class ReadingModel {
    private ReadingModel() {}

    /**
     * Logarithm of the density of the potentials.
     *
     * @param potentialsMv as read
     * @param idealMv {@code -k (pH - 7)} of each, what an ideal electrode would give
     * @param noiseMv standard uncertainty of each, positive
     * @param slopeMean fraction of the ideal slope
     * @param slopeSd its standard deviation
     * @param offsetSd of the offset, mV
     */
    static double logDensity(
            double[] potentialsMv,
            double[] idealMv,
            double[] noiseMv,
            double slopeMean,
            double slopeSd,
            double offsetSd) {
        double logDensity = -0.5 * potentialsMv.length * Math.log(2 * Math.PI);
        double a11 = 1;
        double a12 = 0;
        double a22 = 1;
        double b1 = 0;
        double b2 = 0;
        for (int i = 0; i < potentialsMv.length; i++) {
            double residual = potentialsMv[i] - slopeMean * idealMv[i];
            double weight = 1 / (noiseMv[i] * noiseMv[i]);
            double bySlope = slopeSd * idealMv[i];
            a11 += weight * bySlope * bySlope;
            a12 += weight * bySlope * offsetSd;
            a22 += weight * offsetSd * offsetSd;
            b1 += weight * bySlope * residual;
            b2 += weight * offsetSd * residual;
            logDensity -= Math.log(noiseMv[i]) + 0.5 * weight * residual * residual;
        }
        double determinant = a11 * a22 - a12 * a12;
        double explained = (a22 * b1 * b1 - 2 * a12 * b1 * b2 + a11 * b2 * b2) / determinant;
        return logDensity - 0.5 * Math.log(determinant) + 0.5 * explained;
    }

    /** Logarithm of the density of a settling time's logarithm about its median. */
    static double logSettling(double seconds, double medianSeconds, double logSd) {
        double z = Math.log(Math.max(seconds, 1) / medianSeconds) / logSd;
        return -0.5 * z * z - Math.log(logSd) - 0.5 * Math.log(2 * Math.PI);
    }
}

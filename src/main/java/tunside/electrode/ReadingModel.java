package tunside.electrode;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * How well a picture of the cups and the electrode explains the readings: the probability density of the potentials, with
 * slope and offset free within what is usual for that picture (GUM-2008 variances, normal throughout).
 *
 * <p>Potential {@code E = offset - s k (pH - 7)}; {@code s} and the offset are normal, so the potentials are jointly
 * normal with a covariance of a diagonal and two outer products, which is inverted in closed form. Five sums over the readings
 * are all that it takes, so a reading that stays the same is added up once for a whole grid.
 */
final class ReadingModel {
    private static final double NEGLIGIBLE_LOG = 40; // nothing in the sum even with the largest prior

    private final double[] potentialsMv;
    private final double[] weights;
    private final double slopeMean;
    private final double slopeSd;
    private final double offsetSd;
    private final double logNorm;

    /**
     * How a grid's points share the probability.
     *
     * @param log logarithm of the density of the potentials, the grid's parameter averaged over its prior; minus infinity
     *     where no point is possible
     * @param weights of the points, up to a factor
     */
    record Evidence(double log, double[] weights) {}

    /**
     * Sums over the readings, by point of a grid; plain loops, which the virtual machine computes several points at a time. One is
     * enough for all the evidence that is asked for in turn.
     */
    static final class Sums {
        private final double[] ideals;
        private final double[] idealSquares;
        private final double[] products;
        private final double[] residuals;
        private final double[] residualSquares;

        /** @param points of the largest grid */
        Sums(int points) {
            ideals = new double[points];
            idealSquares = new double[points];
            products = new double[points];
            residuals = new double[points];
            residualSquares = new double[points];
        }

        private void clear(int points) {
            Arrays.fill(ideals, 0, points, 0);
            Arrays.fill(idealSquares, 0, points, 0);
            Arrays.fill(products, 0, points, 0);
            Arrays.fill(residuals, 0, points, 0);
            Arrays.fill(residualSquares, 0, points, 0);
        }

        private void add(double[] idealMv, double potentialMv, double slope, double weight) {
            for (int point = 0; point < idealMv.length; point++) {
                double ideal = idealMv[point];
                double residual = potentialMv - slope * ideal;
                ideals[point] += weight * ideal;
                idealSquares[point] += weight * ideal * ideal;
                products[point] += weight * ideal * residual;
                residuals[point] += weight * residual;
                residualSquares[point] += weight * residual * residual;
            }
        }
    }

    /**
     * The model of some readings.
     *
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
     * The evidence of the potentials for a grid of pictures.
     *
     * @param idealMv {@code -k (pH - 7)} of each reading: what an ideal electrode would give
     * @param changedMv the same of the readings that change along the grid, by point; null for those that do not
     * @param sums to work with, for a grid as large or larger
     */
    Evidence evidence(double[] idealMv, double[] @Nullable [] changedMv, ParameterGrid grid, Sums sums) {
        Sums same = new Sums(1); // at every point
        sums.clear(grid.size());
        double sumOfWeights = 0;
        for (int i = 0; i < weights.length; i++) {
            sumOfWeights += weights[i];
            double[] changed = changedMv[i];
            if (changed == null) {
                same.add(new double[] {idealMv[i]}, potentialsMv[i], slopeMean, weights[i]);
            } else {
                sums.add(changed, potentialsMv[i], slopeMean, weights[i]);
            }
        }
        double a22 = 1 + offsetSd * offsetSd * sumOfWeights;
        double[] exponents = new double[grid.size()];
        double[] determinants = new double[grid.size()];
        for (int point = 0; point < exponents.length; point++) {
            double a11 = 1 + slopeSd * slopeSd * (same.idealSquares[0] + sums.idealSquares[point]);
            double a12 = slopeSd * offsetSd * (same.ideals[0] + sums.ideals[point]);
            double b1 = slopeSd * (same.products[0] + sums.products[point]);
            double b2 = offsetSd * (same.residuals[0] + sums.residuals[point]);
            double determinant = a11 * a22 - a12 * a12;
            double explained = (a22 * b1 * b1 - 2 * a12 * b1 * b2 + a11 * b2 * b2) / determinant;
            exponents[point] = 0.5 * (explained - same.residualSquares[0] - sums.residualSquares[point]);
            determinants[point] = determinant;
        }
        return sum(grid, exponents, determinants);
    }

    /** The largest exponent is taken out, so that nothing overflows; what is no number has no weight. */
    private Evidence sum(ParameterGrid grid, double[] exponents, double[] determinants) {
        double largest = Double.NEGATIVE_INFINITY;
        for (double exponent : exponents) {
            largest = exponent > largest ? exponent : largest;
        }
        double[] shares = new double[exponents.length];
        double sum = 0;
        for (int point = 0; point < shares.length; point++) {
            double log = exponents[point] - largest;
            if (log > -NEGLIGIBLE_LOG) {
                shares[point] = grid.prior(point) * Math.exp(log) / Math.sqrt(determinants[point]);
                sum += shares[point];
            }
        }
        return new Evidence(logNorm + largest + Math.log(sum), shares);
    }

    /** Logarithm of the density of a settling time's logarithm about its median. */
    static double logSettling(double seconds, double logMedian, double logSd) {
        double z = (Math.log(Math.max(seconds, 1)) - logMedian) / logSd;
        return -0.5 * z * z - Math.log(logSd) - 0.5 * Math.log(2 * Math.PI);
    }
}

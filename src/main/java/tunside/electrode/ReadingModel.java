package tunside.electrode;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * How well a picture of the cups and the electrode explains the readings: the probability density of the potentials, with
 * slope and offset free within what is usual for that picture (GUM-2008 variances, normal throughout).
 *
 * <p>Potential {@code E = offset - s k (pH - 7)}; {@code s} and the offset are normal, so the potentials are jointly
 * normal with a covariance of a diagonal and two outer products, which is inverted in closed form. Three sums over the readings
 * are all that changes with the picture, so a reading that stays the same is added up once for a whole grid.
 */
final class ReadingModel {
    private static final double NEGLIGIBLE_LOG = 40; // nothing in the sum even with the largest prior

    /** Fall of the exponent from its largest to the next point: 0.7 deviations a step, for which a trapezoid is off by 1e-4. */
    private static final double STEEP = 1;

    private final double[] potentialsMv;
    private final double[] weights;
    private final double slopeMean;
    private final double slopeSd;
    private final double offsetSd;
    private final double logNorm;
    private final double sumOfWeights;
    private final double sumOfPotentials; // weighted, as the next
    private final double sumOfPotentialSquares;

    /**
     * Where the evidence for a grid is computed: plain loops over its points, of which the virtual machine takes several at a time.
     * One is enough for all the evidence that is asked for in turn.
     */
    static final class Workspace {
        private final Sums same = new Sums(1); // over the readings that stay the same, at every point
        private final double[] sameIdealMv = new double[1];
        private final Sums changed;
        private final double[] exponents;
        private final double[] determinants;
        private final double[] shares;

        /** @param points of the largest grid */
        Workspace(int points) {
            changed = new Sums(points);
            exponents = new double[points];
            determinants = new double[points];
            shares = new double[points];
        }

        /** How the points of the last grid share the probability, up to a factor. */
        double[] shares(ParameterGrid grid) {
            return Arrays.copyOf(shares, grid.size());
        }
    }

    /** Weighted sums over readings, by point of a grid. */
    private static final class Sums {
        private final double[] ideals;
        private final double[] idealSquares;
        private final double[] products; // of potential and ideal

        Sums(int points) {
            ideals = new double[points];
            idealSquares = new double[points];
            products = new double[points];
        }

        void clear(int points) {
            Arrays.fill(ideals, 0, points, 0);
            Arrays.fill(idealSquares, 0, points, 0);
            Arrays.fill(products, 0, points, 0);
        }

        void add(double[] idealMv, double potentialMv, double weight) {
            for (int point = 0; point < idealMv.length; point++) {
                double weighted = weight * idealMv[point];
                ideals[point] += weighted;
                idealSquares[point] += weighted * idealMv[point];
                products[point] += weighted * potentialMv;
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
        double weight = 0;
        double potentials = 0;
        double potentialSquares = 0;
        for (int i = 0; i < noiseMv.length; i++) {
            weights[i] = 1 / (noiseMv[i] * noiseMv[i]);
            norm -= Math.log(noiseMv[i]);
            weight += weights[i];
            potentials += weights[i] * potentialsMv[i];
            potentialSquares += weights[i] * potentialsMv[i] * potentialsMv[i];
        }
        this.logNorm = norm;
        this.sumOfWeights = weight;
        this.sumOfPotentials = potentials;
        this.sumOfPotentialSquares = potentialSquares;
    }

    /**
     * The density of the potentials for a grid of pictures, its parameter averaged over its prior.
     *
     * @param log its logarithm; minus infinity where no point is possible
     * @param logBetween logarithm of how much of it may lie unseen between the points: where the best of them stands out, what the
     *     parabola through it and its neighbours rises to; where a table ends, half of its last point
     */
    record Evidence(double log, double logBetween) {}

    /**
     * The evidence of the potentials for a grid of pictures.
     *
     * @param idealMv {@code -k (pH - 7)} of each reading: what an ideal electrode would give
     * @param changedMv the same of the readings that change along the grid, by point; null for those that do not
     * @param space to work in, for a grid as large or larger; afterwards it has the shares of the points
     */
    Evidence evidence(double[] idealMv, double[] @Nullable [] changedMv, ParameterGrid grid, Workspace space) {
        Sums same = space.same;
        Sums changed = space.changed;
        same.clear(1);
        changed.clear(grid.size());
        for (int i = 0; i < weights.length; i++) {
            double[] changedIdealMv = changedMv[i];
            if (changedIdealMv == null) {
                space.sameIdealMv[0] = idealMv[i];
                same.add(space.sameIdealMv, potentialsMv[i], weights[i]);
            } else {
                changed.add(changedIdealMv, potentialsMv[i], weights[i]);
            }
        }
        double a22 = 1 + offsetSd * offsetSd * sumOfWeights;
        for (int point = 0; point < grid.size(); point++) {
            double ideals = same.ideals[0] + changed.ideals[point];
            double idealSquares = same.idealSquares[0] + changed.idealSquares[point];
            double products = same.products[0] + changed.products[point];
            double residualSquares = sumOfPotentialSquares - slopeMean * (2 * products - slopeMean * idealSquares);
            double a11 = 1 + slopeSd * slopeSd * idealSquares;
            double a12 = slopeSd * offsetSd * ideals;
            double b1 = slopeSd * (products - slopeMean * idealSquares);
            double b2 = offsetSd * (sumOfPotentials - slopeMean * ideals);
            double determinant = a11 * a22 - a12 * a12;
            double explained = (a22 * b1 * b1 - 2 * a12 * b1 * b2 + a11 * b2 * b2) / determinant;
            space.exponents[point] = 0.5 * (explained - residualSquares);
            space.determinants[point] = determinant;
        }
        int best = best(grid, space);
        double sum = share(grid, space, space.exponents[best]);
        if (!(sum > 0)) {
            return new Evidence(Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY);
        }
        double log = logNorm + space.exponents[best] + Math.log(sum);
        return new Evidence(log, log + unsure(grid, space, best, sum));
    }

    private static int best(ParameterGrid grid, Workspace space) {
        int best = 0;
        for (int point = 1; point < grid.size(); point++) {
            if (space.exponents[point] > space.exponents[best] || Double.isNaN(space.exponents[best])) {
                best = point;
            }
        }
        return best;
    }

    /** Shares the probability out and returns all of it, both without the largest exponent; what is no number has no weight. */
    private static double share(ParameterGrid grid, Workspace space, double largest) {
        double sum = 0;
        for (int point = 0; point < grid.size(); point++) {
            double log = space.exponents[point] - largest;
            double share = log > -NEGLIGIBLE_LOG
                    ? grid.prior(point) * Math.exp(log) / Math.sqrt(space.determinants[point])
                    : 0;
            space.shares[point] = share;
            sum += share;
        }
        return sum;
    }

    /** Logarithm of how much more or less than the sum over the points there may be, relative to it. */
    private static double unsure(ParameterGrid grid, Workspace space, int best, double sum) {
        if (grid.size() < 3) {
            return Double.NEGATIVE_INFINITY;
        }
        double[] exponents = space.exponents;
        int middle = Math.max(1, Math.min(grid.size() - 2, best));
        double before = exponents[middle] - exponents[middle - 1];
        double after = exponents[middle] - exponents[middle + 1];
        double bend = before + after;
        if (bend > 2 * STEEP) {
            double place = Math.max(-1, Math.min(1, (before - after) / (2 * bend)));
            return exponents[middle] - exponents[best] + place * ((before - after) - place * bend) / 2;
        }
        return Math.log(cut(grid, space) / 2 / sum);
    }

    /** Share of the points where the probability ends abruptly, as at the end of a table: a trapezoid is unsure of half of it. */
    private static double cut(ParameterGrid grid, Workspace space) {
        int first = 0;
        int last = grid.size() - 1;
        while (first < last && Double.isNaN(space.exponents[first])) {
            first++;
        }
        while (last > first && Double.isNaN(space.exponents[last])) {
            last--;
        }
        return (first > 0 ? space.shares[first] : 0) + (last < grid.size() - 1 ? space.shares[last] : 0);
    }

    /** Logarithm of the density of a settling time's logarithm about its median. */
    static double logSettling(double seconds, double logMedian, double logSd) {
        double z = (Math.log(Math.max(seconds, 1)) - logMedian) / logSd;
        return -0.5 * z * z - Math.log(logSd) - 0.5 * Math.log(2 * Math.PI);
    }
}

package tunside.electrode.reading;

import java.util.Arrays;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresBuilder;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresOptimizer.Optimum;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresProblem;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LevenbergMarquardtOptimizer;
import org.hipparchus.util.Pair;
import org.jspecify.annotations.Nullable;
import tunside.chemistry.Solver;

/**
 * An exponential approach to a settled value, {@code pH(t) = end + start exp(-(t - t0) / tau)}, fitted by least squares
 * (Levenberg-Marquardt of the numerics library) with weights that a far reading loses: Tukey's biweight about the residuals'
 * median absolute deviation, iterated.
 *
 * @param endPh value that it is heading for
 * @param startPh what was missing at the first reading, signed
 * @param timeConstantS of the approach, s
 * @param endUncertainty standard uncertainty of the end from the scatter of the readings, pH
 * @param noisePh robust standard deviation of one reading
 * @param weights of the readings, 0 for an outlier
 */
record Approach(
        double endPh, double startPh, double timeConstantS, double endUncertainty, double noisePh, double[] weights) {
    private static final int PARAMETERS = 3;
    private static final int ROUNDS = 6;
    private static final int GRID = 16;
    private static final int MOST_EVALUATIONS = 100;
    private static final int MOST_SCANNED = 300;
    private static final double SAME_WEIGHTS = 1e-3;
    private static final double SINGULAR = 1e-14;
    private static final double LARGEST_LOGARITHM = 30;
    private static final LevenbergMarquardtOptimizer LEAST_SQUARES =
            new LevenbergMarquardtOptimizer().withCostRelativeTolerance(1e-9).withParameterRelativeTolerance(1e-8);
    private static final double NORMAL_MAD = 1.4826;
    private static final double TUKEY = 4.685;

    /** What the curve says at a time, s after the first reading. */
    double at(double seconds) {
        return endPh + startPh * Math.exp(-seconds / timeConstantS);
    }

    /** Residual of a reading. */
    double residual(double seconds, double ph) {
        return ph - at(seconds);
    }

    /**
     * Fits the curve.
     *
     * @param seconds after the first reading, rising from 0, at least four
     * @param ph of the readings
     * @param leastNoise below this the scatter is not believed, pH
     * @return null where no such curve can be found
     */
    static @Nullable Approach fit(double[] seconds, double[] ph, double leastNoise) {
        double[] weights = screened(ph, leastNoise);
        double[] point = scan(seconds, ph, weights);
        try {
            for (int round = 1; ; round++) {
                Optimum optimum = LEAST_SQUARES.optimize(problem(seconds, ph, weights, point));
                Solver.SETTLING.solved(optimum.getIterations());
                point = optimum.getPoint().toArray();
                double timeConstant = timeConstant(point[2]);
                double[] residuals = new double[ph.length];
                for (int i = 0; i < ph.length; i++) {
                    residuals[i] = ph[i] - point[0] - point[1] * Math.exp(-seconds[i] / timeConstant);
                }
                double[] next = biweights(residuals, Math.max(leastNoise, scale(residuals, weights)));
                if (round == ROUNDS || alike(weights, next)) {
                    double noise = Math.max(leastNoise, deviation(residuals, weights));
                    double uncertainty =
                            Math.sqrt(optimum.getCovariances(SINGULAR).getEntry(0, 0)) * noise;
                    return new Approach(point[0], point[1], timeConstant, uncertainty, noise, weights);
                }
                weights = next;
            }
        } catch (MathRuntimeException e) {
            return null; // no convergence, or a curve whose end the readings do not determine
        }
    }

    private static boolean alike(double[] weights, double[] next) {
        double most = 0;
        for (int i = 0; i < weights.length; i++) {
            most = Math.max(most, Math.abs(weights[i] - next[i]));
        }
        return most < SAME_WEIGHTS;
    }

    private static double timeConstant(double logarithm) {
        return Math.exp(Math.min(LARGEST_LOGARITHM, logarithm));
    }

    /** How many readings count. */
    int counted() {
        return (int) Arrays.stream(weights).filter(weight -> weight > 0).count();
    }

    /** The roots of the weights stand in target and model: a matrix of weights would cost more than the fit. */
    private static LeastSquaresProblem problem(
            double[] seconds, double[] ph, double[] weights, double @Nullable [] start) {
        double[] roots = new double[ph.length];
        double[] target = new double[ph.length];
        for (int i = 0; i < ph.length; i++) {
            roots[i] = Math.sqrt(weights[i]);
            target[i] = roots[i] * ph[i];
        }
        return new LeastSquaresBuilder()
                .model(point -> model(seconds, roots, point))
                .target(target)
                .start(start)
                .maxEvaluations(MOST_EVALUATIONS)
                .maxIterations(MOST_EVALUATIONS)
                .build();
    }

    private static Pair<RealVector, RealMatrix> model(double[] seconds, double[] roots, RealVector point) {
        double start = point.getEntry(1);
        double timeConstant = timeConstant(point.getEntry(2));
        double[] values = new double[seconds.length];
        double[][] slopes = new double[seconds.length][];
        for (int i = 0; i < seconds.length; i++) {
            double left = roots[i] * Math.exp(-seconds[i] / timeConstant);
            values[i] = roots[i] * point.getEntry(0) + start * left;
            slopes[i] = new double[] {roots[i], left, start * left * seconds[i] / timeConstant};
        }
        return new Pair<>(new ArrayRealVector(values, false), new Array2DRowRealMatrix(slopes, false));
    }

    /** The best of a few time constants, each with its straight-line fit, to start from. */
    static double @Nullable [] scan(double[] seconds, double[] ph, double[] weights) {
        double span = seconds[seconds.length - 1];
        int stride = 1 + (ph.length - 1) / MOST_SCANNED;
        double[] best = null;
        double least = Double.POSITIVE_INFINITY;
        for (int k = 0; k < GRID; k++) {
            double timeConstant = span * Math.pow(10, -2 + 2.5 * k / (GRID - 1));
            double sw = 0;
            double sx = 0;
            double sy = 0;
            double sxx = 0;
            double sxy = 0;
            double syy = 0;
            for (int i = 0; i < ph.length; i += stride) {
                double x = Math.exp(-seconds[i] / timeConstant);
                double y = ph[i] - ph[0];
                sw += weights[i];
                sx += weights[i] * x;
                sy += weights[i] * y;
                sxx += weights[i] * x * x;
                sxy += weights[i] * x * y;
                syy += weights[i] * y * y;
            }
            double spread = sxx - sx * sx / sw;
            double slope = spread > 1e-12 ? (sxy - sx * sy / sw) / spread : 0;
            double rest = syy - sy * sy / sw - slope * (sxy - sx * sy / sw);
            if (rest < least) {
                least = rest;
                best = new double[] {ph[0] + (sy - slope * sx) / sw, slope, Math.log(timeConstant)};
            }
        }
        return best;
    }

    /** Weights before anything is fitted: a reading far from the median of its neighbours starts without one. */
    static double[] screened(double[] ph, double leastNoise) {
        double[] residuals = new double[ph.length];
        for (int i = 0; i < ph.length; i++) {
            double[] near = Arrays.copyOfRange(ph, Math.max(0, i - 2), Math.min(ph.length, i + 3));
            residuals[i] = ph[i] - median(near);
        }
        double[] all = new double[ph.length];
        Arrays.fill(all, 1);
        double noise = Math.max(leastNoise, scale(residuals, all));
        for (int i = 1; i < ph.length - 1; i++) {
            boolean apart = Math.abs(ph[i] - ph[i - 1]) > TUKEY * noise && Math.abs(ph[i] - ph[i + 1]) > TUKEY * noise;
            boolean sameSide = (ph[i] - ph[i - 1]) * (ph[i] - ph[i + 1]) > 0;
            all[i] = apart && sameSide ? 0 : 1;
        }
        return all;
    }

    private static double[] biweights(double[] residuals, double noise) {
        double[] weights = new double[residuals.length];
        for (int i = 0; i < residuals.length; i++) {
            double u = residuals[i] / (TUKEY * noise);
            double w = Math.abs(u) < 1 ? 1 - u * u : 0;
            weights[i] = w * w;
        }
        return weights;
    }

    /** Standard deviation from the median absolute residual, freed for what was fitted. */
    static double scale(double[] residuals, double[] weights) {
        double[] sizes = new double[residuals.length];
        int n = 0;
        for (int i = 0; i < residuals.length; i++) {
            if (weights[i] > 0) {
                sizes[n++] = Math.abs(residuals[i]);
            }
        }
        double free = n > PARAMETERS ? Math.sqrt(n / (double) (n - PARAMETERS)) : 2;
        return NORMAL_MAD * median(Arrays.copyOf(sizes, n)) * free;
    }

    /** Standard deviation of the residuals that count. */
    private static double deviation(double[] residuals, double[] weights) {
        double sum = 0;
        int n = 0;
        for (int i = 0; i < residuals.length; i++) {
            if (weights[i] > 0) {
                sum += residuals[i] * residuals[i];
                n++;
            }
        }
        return n > PARAMETERS ? Math.sqrt(sum / (n - PARAMETERS)) : Double.POSITIVE_INFINITY;
    }

    static double median(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        int n = sorted.length;
        return n == 0 ? 0 : n % 2 == 1 ? sorted[n / 2] : (sorted[n / 2 - 1] + sorted[n / 2]) / 2;
    }
}

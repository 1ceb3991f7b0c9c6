package tunside.electrode;

import java.util.Arrays;
import tunside.chemistry.Solver;

/** Straight lines through points, after ISO-28037-2010. Every method needs two points with different x, or more. */
public final class StraightLineFit {
    private static final int MOST_ITERATIONS = 100;
    private static final double TOLERANCE = 1e-14;

    private StraightLineFit() {}

    /** Equal weights, variances from the scatter about the line; zero variances for two points. */
    public static StraightLine unweighted(double[] x, double[] y) {
        double[] one = new double[x.length];
        Arrays.fill(one, 1);
        StraightLine line = weighted(x, y, one);
        return line.degreesOfFreedom() == 0
                ? line.widened(0)
                : line.widened(line.chiSquared() / line.degreesOfFreedom());
    }

    /**
     * Uncertainty in y only (clause 6).
     *
     * @param uY standard uncertainties, positive
     */
    public static StraightLine weighted(double[] x, double[] y, double[] uY) {
        return bothUncertain(x, new double[x.length], y, uY);
    }

    /**
     * Uncertainty in x and y, all independent (clause 7): the line that minimises the sum of squared weighted distances,
     * found by iterating the weights {@code 1 / (u^2(y) + b^2 u^2(x))} as YORK-2004 does; variances at the adjusted points.
     *
     * <p>Tolerance 1e-14 of the slope; at most 100 iterations, each linear in the number of points.
     *
     * @param uX standard uncertainties, not negative
     * @param uY standard uncertainties, not negative; no point may have both zero
     * @throws IllegalArgumentException for fewer than two points, arrays of different lengths, or one x only
     */
    public static StraightLine bothUncertain(double[] x, double[] uX, double[] y, double[] uY) {
        int n = x.length;
        if (n < 2 || uX.length != n || y.length != n || uY.length != n) {
            throw new IllegalArgumentException("a line needs two points or more, each with its uncertainties");
        }
        boolean different = false;
        for (double each : x) {
            different |= each != x[0];
        }
        if (!different) {
            throw new IllegalArgumentException("a line needs two different x");
        }
        double[] equal = new double[n];
        Arrays.fill(equal, 1);
        double slope = slope(x, y, equal);
        boolean done = false;
        int improvements = 0;
        for (; !done && improvements < MOST_ITERATIONS; improvements++) {
            double next = improved(slope, x, uX, y, uY);
            done = Math.abs(next - slope) <= TOLERANCE * Math.abs(next);
            slope = next;
        }
        Solver.CALIBRATION.solved(improvements);
        return line(slope, x, uX, y, uY);
    }

    /**
     * Uncertainty in x and y, that in x carried to y by the slope (clause 6 with {@code u^2 = u^2(y) + b^2 u^2(x)}),
     * iterated until the slope stays. For x that is far surer than it is spread this agrees with {@link #bothUncertain}
     * to a small part of the uncertainties, and for equal uncertainties it is the ordinary line.
     *
     * <p>Arguments, tolerance and errors as {@link #bothUncertain}.
     */
    public static StraightLine effectivelyWeighted(double[] x, double[] uX, double[] y, double[] uY) {
        StraightLine line = unweighted(x, y);
        for (int i = 0; i < MOST_ITERATIONS; i++) {
            double[] uncertainties = new double[x.length];
            for (int j = 0; j < x.length; j++) {
                uncertainties[j] = Math.hypot(uY[j], line.slope() * uX[j]);
            }
            StraightLine next = weighted(x, y, uncertainties);
            boolean done = Math.abs(next.slope() - line.slope()) <= TOLERANCE * Math.abs(next.slope());
            line = next;
            if (done) {
                break;
            }
        }
        return line;
    }

    private static double[] weights(double slope, double[] uX, double[] uY) {
        double[] weights = new double[uX.length];
        for (int i = 0; i < weights.length; i++) {
            weights[i] = 1 / (uY[i] * uY[i] + slope * slope * uX[i] * uX[i]);
        }
        return weights;
    }

    private static double mean(double[] values, double[] weights) {
        double sum = 0;
        double total = 0;
        for (int i = 0; i < values.length; i++) {
            sum += weights[i] * values[i];
            total += weights[i];
        }
        return sum / total;
    }

    private static double slope(double[] x, double[] y, double[] weights) {
        double meanX = mean(x, weights);
        double meanY = mean(y, weights);
        double xy = 0;
        double xx = 0;
        for (int i = 0; i < x.length; i++) {
            xy += weights[i] * (x[i] - meanX) * (y[i] - meanY);
            xx += weights[i] * (x[i] - meanX) * (x[i] - meanX);
        }
        return xy / xx;
    }

    /** One step: the adjusted distance of each x from the mean carries the regression. */
    private static double improved(double slope, double[] x, double[] uX, double[] y, double[] uY) {
        double[] weights = weights(slope, uX, uY);
        double meanX = mean(x, weights);
        double meanY = mean(y, weights);
        double above = 0;
        double below = 0;
        for (int i = 0; i < x.length; i++) {
            double u = x[i] - meanX;
            double v = y[i] - meanY;
            double adjusted = weights[i] * (u * uY[i] * uY[i] + slope * v * uX[i] * uX[i]);
            above += weights[i] * adjusted * v;
            below += weights[i] * adjusted * u;
        }
        return above / below;
    }

    private static StraightLine line(double slope, double[] x, double[] uX, double[] y, double[] uY) {
        double[] weights = weights(slope, uX, uY);
        double meanX = mean(x, weights);
        double intercept = mean(y, weights) - slope * meanX;
        double[] adjusted = new double[x.length];
        double chiSquared = 0;
        double total = 0;
        for (int i = 0; i < x.length; i++) {
            double residual = y[i] - intercept - slope * x[i];
            chiSquared += weights[i] * residual * residual;
            adjusted[i] = x[i] + weights[i] * slope * uX[i] * uX[i] * residual;
            total += weights[i];
        }
        double centre = mean(adjusted, weights);
        double spread = 0;
        for (int i = 0; i < x.length; i++) {
            spread += weights[i] * (adjusted[i] - centre) * (adjusted[i] - centre);
        }
        double slopeVariance = 1 / spread;
        return new StraightLine(
                intercept,
                slope,
                1 / total + centre * centre * slopeVariance,
                slopeVariance,
                -centre * slopeVariance,
                chiSquared,
                x.length - 2);
    }
}

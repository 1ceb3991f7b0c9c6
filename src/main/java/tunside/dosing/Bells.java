package tunside.dosing;

import java.util.function.IntToDoubleFunction;

/**
 * A density on an even grid as a sum of bells, one a node, each 0.6 steps wide: so wide that they make one smooth curve, to a
 * thousandth of its height. A few nodes do what many without width would: the error falls with the sixth power of the step.
 */
final class Bells {
    /** Standard deviation of a bell, in steps. */
    static final double WIDTH = 0.6;

    /** A bell's deviation over the way from one neighbour to the other, which is two steps. */
    private static final double SPREAD = WIDTH / 2;

    /** Weight of both neighbours in the mean of a parabola through the three over a bell. */
    private static final double MEAN_BESIDE = WIDTH * WIDTH / 2;

    /** By how much densities are sharpened, in second and in fourth differences, so that the sum of bells is as wide as they. */
    private static final double SHARPER = WIDTH * WIDTH / 2;

    private static final double SHARPER_STILL = WIDTH * WIDTH / 24 + Math.pow(WIDTH, 4) / 8;

    private final double[] weights;

    /**
     * The bells of a density.
     *
     * @param densities at the nodes, up to a factor; negligible at both ends
     */
    Bells(double[] densities) {
        double sum = 0;
        for (double density : densities) {
            sum += density;
        }
        double[] second = differences(densities);
        double[] fourth = differences(second);
        this.weights = new double[densities.length];
        for (int i = 0; i < weights.length; i++) {
            weights[i] = (densities[i] - SHARPER * second[i] + SHARPER_STILL * fourth[i]) / sum;
        }
    }

    private static double[] differences(double[] values) {
        double[] differences = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            differences[i] = values[before(i)] - 2 * values[i] + values[after(i, values)];
        }
        return differences;
    }

    private static int before(int i) {
        return Math.max(0, i - 1);
    }

    private static int after(int i, double[] values) {
        return Math.min(values.length - 1, i + 1);
    }

    /** Probability of a bell, below 0 by a little where its neighbours' reach too far; the sum of all is 1. */
    double weight(int i) {
        return weights[i];
    }

    /** Mean of something that is known at the nodes. */
    double mean(IntToDoubleFunction values) {
        double mean = 0;
        for (int i = 0; i < weights.length; i++) {
            mean += weights[i] * values.applyAsDouble(i);
        }
        return mean;
    }

    /**
     * Probability that a quantity lies below a value, where at each node it is normal. Over a bell the deviations are taken for
     * a parabola; what they make of the normal distribution is known by its first three moments (Edgeworth's first term).
     *
     * @param deviations of the value from the quantity's mean at each node, in its standard deviations
     * @param slopes what these change by per unit of the value
     */
    Distribution.Point below(double[] deviations, double[] slopes) {
        double below = 0;
        double density = 0;
        int last = weights.length - 1;
        double before = deviations[0];
        double here = before;
        double slopeBefore = slopes[0];
        double slope = slopeBefore;
        for (int i = 0; i <= last; i++) {
            double after = deviations[Math.min(i + 1, last)];
            double slopeAfter = slopes[Math.min(i + 1, last)];
            double spread = SPREAD * (after - before);
            double bend = MEAN_BESIDE * (before - 2 * here + after);
            double perDeviation = 1 / Math.sqrt(1 + spread * spread);
            double skew = spread * spread * bend * perDeviation * perDeviation * perDeviation;
            double z = (here + bend) * perDeviation;
            double normal = NormalIntegral.density(z);
            below += weights[i] * (NormalIntegral.below(z) + skew * (z * z - 1) * normal);
            density += weights[i]
                    * normal
                    * (1 + skew * z * (3 - z * z))
                    * perDeviation
                    * (slope
                            + MEAN_BESIDE * (slopeBefore - 2 * slope + slopeAfter)
                            - z * perDeviation * spread * SPREAD * (slopeAfter - slopeBefore));
            before = here;
            here = after;
            slopeBefore = slope;
            slope = slopeAfter;
        }
        return new Distribution.Point(below, density);
    }
}

package tunside.dosing;

import java.util.Arrays;
import java.util.function.IntToDoubleFunction;

/**
 * A density on an even grid as a sum of bells, one a node, each 0.63 steps wide: so wide that they make one smooth curve, to a
 * thousandth of its height. A few nodes do what many without width would: so smooth a density is known between them.
 *
 * <p>For one thread at a time.
 */
final class Bells {
    /** Standard deviation of a bell, in steps. */
    static final double WIDTH = 0.63;

    /** A bell's deviation over the way from one neighbour to the other, which is two steps. */
    private static final double SPREAD = WIDTH / 2;

    /** Weight of both neighbours in the mean of a parabola through the three over a bell. */
    private static final double MEAN_BESIDE = WIDTH * WIDTH / 2;

    /**
     * By how much densities are sharpened, in second to eighth differences, so that the sum of bells is as wide as they. A bell of
     * width w dampens a wave of t radians a step by exp(-w^2 t^2 / 2), and its second difference is -4 sin^2(t / 2) of it: the
     * coefficients are those of exp(w^2 t^2 / 2) as a power series in that.
     */
    private static final double[] SHARPER = {
        -MEAN_BESIDE,
        MEAN_BESIDE / 12 + Math.pow(MEAN_BESIDE, 2) / 2,
        -MEAN_BESIDE / 90 - Math.pow(MEAN_BESIDE, 2) / 12 - Math.pow(MEAN_BESIDE, 3) / 6,
        MEAN_BESIDE / 560
                + Math.pow(MEAN_BESIDE, 2) * 7 / 480
                + Math.pow(MEAN_BESIDE, 3) / 24
                + Math.pow(MEAN_BESIDE, 4) / 24
    };

    /** What is less at either end is added to the bell beside it. */
    private static final double NEGLIGIBLE = 3e-8;

    private final double[] weights;
    private final int first; // bell that is not negligible
    private final int last;
    private final double[] scores; // of the last probability, as the next
    private final double[] skews;
    private final double[] perUnit;

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
        this.weights = new double[densities.length];
        this.scores = new double[densities.length];
        this.skews = new double[densities.length];
        this.perUnit = new double[densities.length];
        for (int i = 0; i < weights.length; i++) {
            weights[i] = densities[i] / sum;
        }
        double[] differences = weights;
        for (double sharper : SHARPER) {
            differences = differences(differences);
            for (int i = 0; i < weights.length; i++) {
                weights[i] += sharper * differences[i];
            }
        }
        int low = 0;
        int high = weights.length - 1;
        while (low < high && Math.abs(weights[low]) < NEGLIGIBLE) {
            weights[++low] += weights[low - 1];
        }
        while (high > low && Math.abs(weights[high]) < NEGLIGIBLE) {
            weights[--high] += weights[high + 1];
        }
        this.first = low;
        this.last = high;
        Arrays.fill(weights, 0, first, 0);
        Arrays.fill(weights, last + 1, weights.length, 0);
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
     * a parabola; what they make of the normal distribution is known by its first three moments (Edgeworth's first term), the third
     * where the parabola bends little.
     *
     * @param deviations of the value from the quantity's mean at each node, in its standard deviations
     * @param slopes what these change by per unit of the value
     */
    Distribution.Point below(double[] deviations, double[] slopes) {
        blur(deviations, slopes);
        double below = 0;
        double density = 0;
        for (int i = first; i <= last; i++) {
            double z = scores[i];
            double normal = NormalIntegral.density(z);
            below += weights[i] * (NormalIntegral.below(z) + skews[i] * (z * z - 1) * normal);
            density += weights[i] * normal * (1 + skews[i] * z * (3 - z * z)) * perUnit[i];
        }
        return new Distribution.Point(below, density);
    }

    /** What a deviation and its slope become over a bell. Apart from the sums, since the machine overlaps the turns of a short loop. */
    private void blur(double[] deviations, double[] slopes) {
        for (int i = first; i <= last; i++) {
            int before = before(i);
            int after = after(i, deviations);
            double spread = SPREAD * (deviations[after] - deviations[before]);
            double bend = MEAN_BESIDE * (deviations[before] - 2 * deviations[i] + deviations[after]);
            double perDeviation = 1 / Math.sqrt(1 + spread * spread + 2 * bend * bend);
            double z = (deviations[i] + bend) * perDeviation;
            scores[i] = z;
            skews[i] = spread * spread * bend * perDeviation * perDeviation * perDeviation;
            double spreadSlope = SPREAD * (slopes[after] - slopes[before]);
            double bendSlope = MEAN_BESIDE * (slopes[before] - 2 * slopes[i] + slopes[after]);
            perUnit[i] = perDeviation
                    * (slopes[i] + bendSlope - z * perDeviation * (spread * spreadSlope + 2 * bend * bendSlope));
        }
    }
}

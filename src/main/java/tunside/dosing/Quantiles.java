package tunside.dosing;

import tunside.chemistry.Solver;

/**
 * Quantiles of a distribution that is not far from normal. Halley's method, bent as a normal distribution bends it, halving what
 * encloses the quantile where that leads outside; three evaluations as a rule.
 */
final class Quantiles {
    private static final int MOST_EVALUATIONS = 200;
    private static final double NEAR = 1e-3; // of a deviation: from so near the last step comes within 1e-8
    private static final double LEAST_BEND = 0.5;
    private static final double MOST_BEND = 2;

    private final Distribution distribution;
    private final double lowest;
    private final double highest;
    private final double middle;
    private final double deviation;

    /**
     * @param lowest what a quantile below it is taken for
     * @param highest what one above it is taken for, finite
     * @param near about the median
     */
    Quantiles(Distribution distribution, double lowest, double highest, double near) {
        this.distribution = distribution;
        this.lowest = lowest;
        this.highest = highest;
        double inside = inside(near);
        Distribution.Point point = distribution.at(inside);
        boolean steep = point.density() * (highest - lowest) > 1;
        this.deviation = steep ? NormalIntegral.density(0) / point.density() : highest - lowest;
        this.middle = steep ? inside - (point.below() - 0.5) / point.density() : inside;
    }

    private double inside(double value) {
        return Math.max(lowest, Math.min(highest, value));
    }

    /** The normal distribution's quantile; half way to an end that this lies beyond. */
    private double first(double probability) {
        double normal = middle + NormalIntegral.quantile(probability) * deviation;
        double inside = inside(normal);
        return inside == normal ? normal : (inside(middle) + inside) / 2;
    }

    /** The quantity is below this with a probability, 0 to 1 exclusive. */
    double at(double probability) {
        double low = lowest;
        double high = highest;
        boolean lowestTried = false;
        boolean highestTried = false;
        double value = first(probability);
        for (int i = 0; i < MOST_EVALUATIONS; i++) {
            Distribution.Point point = distribution.at(value);
            double beyond = point.below() - probability;
            if ((value == lowest && beyond >= 0) || (value == highest && beyond <= 0)) {
                return counted(value, i + 1);
            }
            lowestTried |= value == lowest;
            highestTried |= value == highest;
            if (beyond > 0) {
                high = value;
            } else {
                low = value;
            }
            double newton = beyond / point.density();
            double bend = 1 + newton * (value - middle) / (2 * deviation * deviation);
            double step = newton / Math.max(LEAST_BEND, Math.min(MOST_BEND, bend));
            if (Math.abs(step) <= NEAR * deviation) {
                return counted(inside(value - step), i + 1);
            }
            value -= step;
            if (value <= low && !lowestTried) {
                value = lowest;
            } else if (value >= high && !highestTried) {
                value = highest;
            } else if (!(value > low && value < high)) {
                value = (low + high) / 2;
            }
        }
        return counted(value, MOST_EVALUATIONS);
    }

    private static double counted(double quantile, int evaluations) {
        Solver.DOSE.solved(evaluations);
        return quantile;
    }
}

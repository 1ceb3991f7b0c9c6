package tunside.dosing;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tunside.chemistry.Solver;

/**
 * Quantiles of a distribution that is not far from normal. Against its normal score a value runs almost straight; between the
 * points that are known it is taken for the cubic through the two nearest and their slopes. A point is evaluated only where
 * none is near yet, so the quantiles of one distribution cost one or two evaluations each. Where the cubic leads outside, what
 * encloses the quantile is halved.
 *
 * <p>For one thread at a time.
 */
final class Quantiles {
    private static final int MOST_EVALUATIONS = 200;
    private static final int USUAL_EVALUATIONS = 10; // beyond these every second one halves
    private static final double NEAR = 0.03; // in scores: from so near the cubic comes within 1e-5 of a deviation
    private static final double VERY_NEAR = 1e-3; // where there is no smooth cubic
    private static final double LOW_5_PERCENT = NormalIntegral.quantile(0.05);
    private static final double LEAST_BEND = 0.5;
    private static final double MOST_BEND = 2;

    private final Distribution distribution;
    private final double lowest;
    private final double highest;
    private final List<Known> known = new ArrayList<>();

    /**
     * A value that was evaluated.
     *
     * @param score that a normal distribution has at its probability
     * @param perScore what the value changes by per unit of that
     */
    private record Known(double value, double score, double perScore) {
        double distance(double other) {
            return Math.abs(score - other);
        }

        /** Way to a score along the tangent. */
        double straight(double to) {
            return (to - score) * perScore;
        }

        /** Way to a score along the cubic that has another point's value and slope too. */
        double bent(double to, Known other) {
            double whole = other.score - score;
            double u = (to - score) / whole;
            double rise = other.value - value;
            double start = perScore * whole;
            double end = other.perScore * whole;
            return u * (start + u * (3 * rise - 2 * start - end + u * (start + end - 2 * rise)));
        }
    }

    /**
     * @param lowest what a quantile below it is taken for
     * @param highest what one above it is taken for, finite
     * @param near about the median
     */
    Quantiles(Distribution distribution, double lowest, double highest, double near) {
        this.distribution = distribution;
        this.lowest = lowest;
        this.highest = highest;
        below(inside(near));
    }

    private double inside(double value) {
        return Math.max(lowest, Math.min(highest, value));
    }

    /** Probability of a smaller value; keeps the point if a quantile can be found from it. */
    double below(double value) {
        Distribution.Point point = distribution.at(value);
        if (point.below() > 0 && point.below() < 1) {
            double score = NormalIntegral.quantile(point.below());
            double perScore = NormalIntegral.density(score) / point.density();
            if (perScore > 0 && perScore < highest - lowest) {
                known.add(new Known(value, score, perScore));
            }
        }
        return point.below();
    }

    /** The quantity is below this with a probability, 0 to 1 exclusive. */
    double at(double probability) {
        double score = score(probability);
        double low = lowest;
        double high = highest;
        for (Known each : known) {
            low = each.score <= score ? Math.max(low, each.value) : low;
            high = each.score > score ? Math.min(high, each.value) : high;
        }
        boolean lowestTried = false;
        boolean highestTried = false;
        for (int i = 0; i < MOST_EVALUATIONS; i++) {
            double value = (low + high) / 2;
            Known nearest = nearest(score, null);
            if (nearest != null && (i < USUAL_EVALUATIONS || i % 2 == 0)) {
                Known second = nearest(score, nearest);
                double straight = nearest.straight(score);
                double bent = second == null ? Double.NaN : nearest.bent(score, second);
                boolean smooth = bent / straight > LEAST_BEND && bent / straight < MOST_BEND;
                value = nearest.value + (smooth ? bent : straight);
                if (nearest.distance(score) <= (smooth ? NEAR : VERY_NEAR)) {
                    return counted(inside(value), i);
                }
            }
            if (value <= low && !lowestTried) {
                value = lowest;
            } else if (value >= high && !highestTried) {
                value = highest;
            } else if (!(value > low && value < high)) {
                value = (low + high) / 2;
            }
            double beyond = below(value) - probability;
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
        }
        return counted((low + high) / 2, MOST_EVALUATIONS);
    }

    /** Of the normal distribution; the usual ones are known. */
    private static double score(double probability) {
        if (probability == 0.5) {
            return 0;
        }
        if (probability == 0.05) {
            return LOW_5_PERCENT;
        }
        return probability == 0.95 ? -LOW_5_PERCENT : NormalIntegral.quantile(probability);
    }

    /** The known point whose score is nearest, but for another one. */
    private @Nullable Known nearest(double score, @Nullable Known but) {
        Known nearest = null;
        for (Known each : known) {
            if (!each.equals(but) && (nearest == null || each.distance(score) < nearest.distance(score))) {
                nearest = each;
            }
        }
        return nearest;
    }

    private static double counted(double quantile, int evaluations) {
        Solver.DOSE.solved(evaluations);
        return quantile;
    }
}

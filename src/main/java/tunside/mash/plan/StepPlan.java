package tunside.mash.plan;

import org.jspecify.annotations.Nullable;

/**
 * A plan in whole steps.
 *
 * @param steps of each supply
 * @param amounts the same in its measure
 * @param score of it; absent (null) where the plan is not allowed
 */
record StepPlan(int[] steps, double[] amounts, @Nullable PlanScore score) {
    /** Amounts are kept to this fraction of their measure, so that 3 steps of 0.1 are 0.3. */
    private static final double PER_UNIT = 1e9;

    /** Nothing added. */
    static StepPlan none(PlanSpace space) {
        return of(space, new int[space.size()]);
    }

    /** Steps with their score. */
    static StepPlan of(PlanSpace space, int[] steps) {
        double[] amounts = new double[steps.length];
        for (int i = 0; i < steps.length; i++) {
            amounts[i] = tidy(steps[i] * space.question().supplies().get(i).step());
        }
        return new StepPlan(steps, amounts, space.allows(amounts) ? space.score(amounts) : null);
    }

    /** The same amounts with one changed. */
    static double[] with(double[] amounts, int index, double amount) {
        double[] changed = amounts.clone();
        changed[index] = tidy(amount);
        return changed;
    }

    private static double tidy(double amount) {
        return Math.rint(amount * PER_UNIT) / PER_UNIT;
    }

    /** Its score in one number; infinite where it is not allowed. */
    double total() {
        return score == null ? Double.POSITIVE_INFINITY : score.total();
    }

    /** The first unless the second is better. */
    static StepPlan better(StepPlan first, StepPlan second) {
        return second.total() < first.total() ? second : first;
    }
}

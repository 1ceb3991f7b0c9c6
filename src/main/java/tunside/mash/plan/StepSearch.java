package tunside.mash.plan;

import java.util.ArrayList;
import java.util.List;

/**
 * From a plan of any amounts to the best one of whole steps around it, on the non-linear balance: all ways to round, then
 * every move of one or two additions by a few steps, with the amount that sets the pH solved anew after each, for as long
 * as one improves the score.
 */
final class StepSearch {
    private static final int MOST_ROUNDINGS = 64;
    private static final int MOST_ROUNDS = 200;
    private static final int[] MOVES = {1, -1, 2, -2, 5, -5, 13, -13};
    private static final double BETTER = 1e-9;

    private final PlanSpace space;
    private final List<Integer> used;
    private final int setter;

    private StepSearch(PlanSpace space, List<Integer> used, int setter) {
        this.space = space;
        this.used = used;
        this.setter = setter;
    }

    /**
     * Searches.
     *
     * @param amounts to start from
     * @param used which supplies may be used
     * @param setter which of them sets the pH, or -1
     */
    static StepPlan from(PlanSpace space, double[] amounts, List<Integer> used, int setter) {
        return new StepSearch(space, used, setter).search(amounts);
    }

    private StepPlan search(double[] amounts) {
        StepPlan best = StepPlan.none(space);
        int roundings = Math.min(MOST_ROUNDINGS, 1 << Math.min(used.size(), 30));
        for (int mask = 0; mask < roundings; mask++) {
            int[] steps = new int[space.size()];
            for (int k = 0; k < used.size(); k++) {
                int i = used.get(k);
                double exact = amounts[i] / step(i);
                boolean up = (mask >> Math.min(k, 5) & 1) == 1;
                steps[i] = within(i, (long) (up ? Math.ceil(exact - 1e-9) : Math.floor(exact + 1e-9)));
            }
            best = better(best, steps);
        }
        return descend(best);
    }

    private StepPlan descend(StepPlan start) {
        StepPlan best = start;
        for (int round = 0; round < MOST_ROUNDS; round++) {
            StepPlan next = best;
            for (int i : used) {
                for (int move : MOVES) {
                    next = better(next, moved(best, i, move, i, 0));
                    for (int j : used) {
                        next = exchanged(next, best, i, move, j);
                        if (j > i) {
                            next = better(next, moved(best, i, move, j, 1));
                            next = better(next, moved(best, i, move, j, -1));
                        }
                    }
                }
                next = better(next, moved(best, i, -best.steps()[i], i, 0));
            }
            if (!(next.total() < best.total() - BETTER)) {
                return best;
            }
            best = next;
        }
        return best;
    }

    private int[] moved(StepPlan plan, int i, int move, int j, int other) {
        int[] steps = plan.steps().clone();
        steps[i] = within(i, (long) steps[i] + move);
        if (j != i) {
            steps[j] = within(j, (long) steps[j] + other);
        }
        return steps;
    }

    /** The better of two: the second with one supply moved, and another that brings lactate up to its limit again. */
    private StepPlan exchanged(StepPlan better, StepPlan plan, int i, int move, int j) {
        double perStep = space.lactate().perUnit()[j] * step(j);
        if (i == j || perStep == 0 || space.lactate().perUnit()[i] == 0) {
            return better;
        }
        int[] steps = moved(plan, i, move, i, 0);
        steps[j] = 0;
        double[] without = StepPlan.of(space, steps).amounts();
        steps[j] = within(j, (long) Math.floor(space.lactate().slack(without) / -perStep + 1e-9));
        return StepPlan.better(better, StepPlan.of(space, steps));
    }

    /** The better of a plan, these steps, and these steps with the pH set anew. */
    private StepPlan better(StepPlan best, int[] steps) {
        StepPlan better = StepPlan.better(best, StepPlan.of(space, steps));
        if (setter < 0) {
            return better;
        }
        for (int set : settings(steps)) {
            int[] changed = steps.clone();
            changed[setter] = set;
            better = StepPlan.better(better, StepPlan.of(space, changed));
        }
        return better;
    }

    /** Steps of the setter on both sides of the target. */
    private List<Integer> settings(int[] steps) {
        double ph = space.question().aim().targetPh();
        double rest = space.protons().baseMeq(ph);
        for (int i : used) {
            if (i != setter) {
                double amount = steps[i] * step(i);
                rest += amount * space.protons().meqPerUnit(i, amount, ph);
            }
        }
        double amount = -rest / space.protons().meqPerUnit(setter, space.most()[setter], ph);
        amount = -rest / space.protons().meqPerUnit(setter, Math.max(0, amount), ph);
        double exact = Math.max(-1, Math.min(1e9, amount / step(setter)));
        List<Integer> settings = new ArrayList<>();
        settings.add(within(setter, (long) Math.floor(exact)));
        settings.add(within(setter, (long) Math.ceil(exact)));
        return settings;
    }

    private double step(int i) {
        return space.question().supplies().get(i).step();
    }

    private int within(int i, long steps) {
        return (int) Math.max(0, Math.min(space.mostSteps(i), steps));
    }
}

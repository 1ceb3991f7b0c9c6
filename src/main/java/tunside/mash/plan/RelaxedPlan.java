package tunside.mash.plan;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.optim.MaxIter;
import org.hipparchus.optim.PointValuePair;
import org.hipparchus.optim.linear.LinearConstraint;
import org.hipparchus.optim.linear.LinearConstraintSet;
import org.hipparchus.optim.linear.LinearObjectiveFunction;
import org.hipparchus.optim.linear.NonNegativeConstraint;
import org.hipparchus.optim.linear.PivotSelectionRule;
import org.hipparchus.optim.linear.Relationship;
import org.hipparchus.optim.linear.SimplexSolver;
import org.hipparchus.optim.nonlinear.scalar.GoalType;

/**
 * The best plan where amounts need not be whole steps and an addition counts only by the share of its limit that is used: a
 * linear programme, whose value is below that of any plan of whole steps but for the curvature of the balance between the
 * target and the ends of its range.
 *
 * @param amounts of every supply, in its measure
 * @param value of the objective
 * @param beyond how far pH and ions lie outside their ranges, as in {@link PlanScore}
 */
record RelaxedPlan(double[] amounts, double value, double beyond) {
    /** Where the square of the distance from the target is held by its tangents, in half widths of the range. */
    private static final double[] TANGENTS = {-1, -0.6, -0.3, -0.1, 0.1, 0.3, 0.6, 1};

    private static final double EPSILON = 1e-8;
    private static final int MOST_ITERATIONS = 2000;

    /**
     * Solves it.
     *
     * @param space whose plans
     * @param allowed which supplies may be used
     * @param counted which of them count as one addition whatever their amount
     */
    static RelaxedPlan of(PlanSpace space, boolean[] allowed, boolean[] counted) {
        return new Programme(space, allowed, counted, 1).solve();
    }

    /** The same where only the ranges count: the least that pH and ions must lie outside. */
    static RelaxedPlan nearest(PlanSpace space, boolean[] allowed) {
        return new Programme(space, allowed, new boolean[allowed.length], 0).solve();
    }

    /** Builds the rows; supplies in shares of their limits, then one violation a soft row, then the distance. */
    private static final class Programme {
        private final PlanSpace space;
        private final List<Integer> used = new ArrayList<>();
        private final List<LinearConstraint> rows = new ArrayList<>();
        private final boolean[] counted;
        private final double smallness;
        private final int columns;
        private final int soft;
        private final double forced;

        Programme(PlanSpace space, boolean[] allowed, boolean[] counted, double smallness) {
            this.space = space;
            this.counted = counted;
            this.smallness = smallness;
            double count = 0;
            for (int i = 0; i < allowed.length; i++) {
                if (allowed[i] && space.most()[i] > 0) {
                    used.add(i);
                    count += counted[i] ? 1 : 0;
                }
            }
            forced = count;
            soft = space.wants().size() + 2;
            columns = used.size() + soft + 1;
        }

        RelaxedPlan solve() {
            for (int k = 0; k < used.size(); k++) {
                double[] row = new double[columns];
                row[k] = 1;
                rows.add(new LinearConstraint(row, Relationship.LEQ, 1));
            }
            for (int i = 0; i < space.wants().size(); i++) {
                PlanRow want = space.wants().get(i);
                soft(i, want.perUnit(), want.slack());
            }
            PlanRow lactate = space.lactate();
            rows.add(new LinearConstraint(shares(lactate.perUnit()), Relationship.GEQ, -lactate.slack()));
            PhAim aim = space.question().aim();
            acidity(space.wants().size(), aim.lowPh(), 1 / space.buffering()[0]);
            acidity(space.wants().size() + 1, aim.highPh(), -1 / space.buffering()[2]);
            if (smallness > 0) {
                tangents(aim);
            }
            PointValuePair best = new SimplexSolver(EPSILON)
                    .optimize(
                            new MaxIter(MOST_ITERATIONS),
                            new LinearObjectiveFunction(objective(), smallness * forced),
                            new LinearConstraintSet(rows),
                            GoalType.MINIMIZE,
                            new NonNegativeConstraint(true),
                            PivotSelectionRule.BLAND);
            double[] point = best.getPointRef();
            double[] amounts = new double[space.size()];
            for (int k = 0; k < used.size(); k++) {
                int i = used.get(k);
                amounts[i] = Math.max(0, Math.min(1, point[k])) * space.most()[i];
            }
            double beyond = 0;
            for (int k = used.size(); k < used.size() + soft; k++) {
                beyond += Math.max(0, point[k]);
            }
            return new RelaxedPlan(amounts, best.getValue(), beyond);
        }

        private double[] shares(double[] perUnit) {
            double[] row = new double[columns];
            for (int k = 0; k < used.size(); k++) {
                int i = used.get(k);
                row[k] = perUnit[i] * space.most()[i];
            }
            return row;
        }

        private void soft(int index, double[] perUnit, double slack) {
            double[] row = shares(perUnit);
            row[used.size() + index] = 1;
            rows.add(new LinearConstraint(row, Relationship.GEQ, -slack));
        }

        private double[] meqPerUnit(double ph, double scale) {
            double[] perUnit = new double[space.size()];
            for (int i : used) {
                perUnit[i] = scale * space.protons().meqPerUnit(i, space.most()[i], ph);
            }
            return perUnit;
        }

        /** At the low end protons must still be taken up, at the high end none: in pH by the buffering there. */
        private void acidity(int index, double ph, double scale) {
            soft(index, meqPerUnit(ph, scale), scale * space.protons().baseMeq(ph));
        }

        private void tangents(PhAim aim) {
            double target = aim.targetPh();
            double scale = 1 / (space.buffering()[1] * aim.halfWidth());
            double[] off = shares(meqPerUnit(target, scale));
            double offNow = scale * space.protons().baseMeq(target);
            for (double at : TANGENTS) {
                double[] row = new double[columns];
                double slope = 2 * PlanScore.OFF_WEIGHT * at;
                for (int k = 0; k < used.size(); k++) {
                    row[k] = -slope * off[k];
                }
                row[columns - 1] = 1;
                rows.add(new LinearConstraint(row, Relationship.GEQ, slope * offNow - PlanScore.OFF_WEIGHT * at * at));
            }
        }

        private double[] objective() {
            double[] row = new double[columns];
            for (int k = 0; k < used.size(); k++) {
                int i = used.get(k);
                row[k] = smallness * (space.weights()[i] * space.most()[i] + (counted[i] ? 0 : 1));
            }
            for (int k = used.size(); k < used.size() + soft; k++) {
                row[k] = PlanScore.BEYOND_WEIGHT;
            }
            row[columns - 1] = smallness;
            return row;
        }
    }
}

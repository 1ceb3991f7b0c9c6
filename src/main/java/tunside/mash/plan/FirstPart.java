package tunside.mash.plan;

import java.util.Optional;
import tunside.mash.MashPrediction;

/**
 * The part of a plan's acid or base that may go in before anything is measured: the most of it, in whole steps, that leaves
 * the probability of passing the far end of the range at or below one in twenty. What the buffering does to the rest is
 * then learnt from the first reading.
 *
 * @param supply the acid or base
 * @param amount of it, in its measure; 0 where not even a step is safe
 * @param ph where the mash lands with it
 */
public record FirstPart(PlanSupply supply, double amount, double ph) {
    /** Probability of passing the far end that is taken. */
    public static final double RISK = 0.05;

    /** That of a plan; empty where one malt, several or nothing sets the pH: malt cannot go in by parts. */
    public static Optional<FirstPart> of(MashPlan plan) {
        if (plan.setters().size() != 1 || plan.setters().get(0) instanceof PlanSupply.OfMalt) {
            return Optional.empty();
        }
        PlanSupply supply = plan.setters().get(0);
        double[] amounts =
                plan.question().supplies().stream().mapToDouble(plan::amountOf).toArray();
        int index = plan.question().supplies().indexOf(supply);
        int safe = -1;
        int unsafe = (int) Math.round(plan.amountOf(supply) / supply.step()) + 1;
        MashPlan reached = plan;
        while (unsafe - safe > 1) {
            int middle = (safe + unsafe) / 2;
            MashPlan part = plan.withAmounts(StepPlan.with(amounts, index, middle * supply.step()));
            double risk = supply.role() == PlanSupply.Role.ACID ? part.probabilityBelow() : part.probabilityAbove();
            if (risk <= RISK) {
                safe = middle;
                reached = part;
            } else {
                unsafe = middle;
            }
        }
        if (safe < 0) {
            double[] none = StepPlan.with(amounts, index, 0);
            return Optional.of(new FirstPart(
                    supply, 0, MashPrediction.of(plan.question().with(none)).ph()));
        }
        return Optional.of(new FirstPart(
                supply, reached.amountOf(supply), reached.prediction().ph()));
    }
}

package tunside.dosing;

import java.util.ArrayList;
import java.util.List;

/**
 * The next addition and those after it.
 *
 * <p>A stage is the largest amount that keeps the probability of ending below the range at or under the accepted risk, and
 * no more than what is needed to bring the median to the target, rounded down to the step of the syringe. Once the mean
 * lies in the range nothing more is added.
 */
public final class DosePlan {
    private static final int MOST_STAGES = 6;
    private static final double TAIL = 0.05;
    private static final double ROUNDING = 1e-9;

    private DosePlan() {}

    /**
     * Plans from what is known now.
     *
     * @param belief what is known
     * @param target where to go
     * @param stepMillimoles smallest step of the syringe or scales, mmol of acid that acts, above 0
     * @param largestMillimoles most that may be added from now on
     * @param readingUncertainty of the readings to come
     */
    public static DoseOutcome of(
            Belief belief,
            DoseTarget target,
            double stepMillimoles,
            double largestMillimoles,
            double readingUncertainty) {
        double ph = belief.ph();
        if (ph < target.lowPh() - ROUNDING) {
            return new DoseOutcome.RaiseInstead(ph);
        }
        if (ph <= target.highPh() + ROUNDING) {
            return new DoseOutcome.NoneNeeded(ph);
        }
        double total = belief.acidFor(target.ph(), 0.5, largestMillimoles);
        if (total >= largestMillimoles) {
            double reached = belief.afterAcid(largestMillimoles).ph();
            if (reached > target.highPh()) {
                return new DoseOutcome.OutOfReach(largestMillimoles, reached);
            }
        }
        return new DoseOutcome.Dose(
                total,
                belief.acidFor(target.ph(), TAIL, largestMillimoles),
                belief.acidFor(target.ph(), 1 - TAIL, largestMillimoles),
                stages(belief, target, stepMillimoles, total, readingUncertainty));
    }

    private static List<DoseStage> stages(
            Belief now, DoseTarget target, double step, double total, double readingUncertainty) {
        List<DoseStage> stages = new ArrayList<>();
        Belief belief = now;
        while (stages.size() < MOST_STAGES && belief.ph() > target.highPh()) {
            double amount = next(belief, target, step, 2 * total);
            if (amount == 0) {
                break;
            }
            Belief after = belief.afterAcid(amount);
            stages.add(new DoseStage(
                    amount,
                    after.ph(),
                    after.quantile(TAIL),
                    after.quantile(1 - TAIL),
                    after.probabilityBelow(target.lowPh())));
            belief = after.after(new DoseEvent.Reading(after.ph(), readingUncertainty));
        }
        return stages;
    }

    /** The next stage, mmol, a whole number of steps; 0 where not even one step is allowed. */
    static double next(Belief belief, DoseTarget target, double step, double most) {
        double toTarget = belief.acidFor(target.ph(), 0.5, most);
        double safe = belief.acidFor(target.lowPh(), target.acceptedRisk(), most);
        return step * Math.floor(Math.min(toTarget, safe) / step + ROUNDING);
    }
}

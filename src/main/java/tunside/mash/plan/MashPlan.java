package tunside.mash.plan;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.special.Erf;
import tunside.mash.Mash;
import tunside.mash.MashPrediction;

/**
 * A plan and where it lands.
 *
 * @param question that it answers
 * @param additions in the order of the supplies, in whole steps
 * @param mash with them in it
 * @param prediction of that mash
 * @param score of the plan, from the prediction's pH
 */
public record MashPlan(
        PlanQuestion question, List<PlannedAmount> additions, Mash mash, MashPrediction prediction, PlanScore score) {
    public MashPlan {
        additions = List.copyOf(additions);
    }

    static MashPlan of(PlanSpace space, StepPlan plan) {
        PlanQuestion question = space.question();
        Mash mash = question.with(plan.amounts());
        MashPrediction prediction = MashPrediction.of(mash);
        return new MashPlan(
                question,
                additions(question, plan.amounts()),
                mash,
                prediction,
                space.score(plan.amounts(), prediction.ph()));
    }

    private static List<PlannedAmount> additions(PlanQuestion question, double[] amounts) {
        List<PlannedAmount> additions = new ArrayList<>();
        for (int i = 0; i < amounts.length; i++) {
            if (amounts[i] > 0) {
                additions.add(new PlannedAmount(question.supplies().get(i), amounts[i]));
            }
        }
        return additions;
    }

    /** A part of this plan, with this plan's score. */
    MashPlan withAmounts(double[] amounts) {
        Mash part = question.with(amounts);
        return new MashPlan(question, additions(question, amounts), part, MashPrediction.of(part), score);
    }

    /**
     * No plan at all.
     *
     * @param before the mash as it is, predicted
     */
    public static MashPlan asItIs(PlanQuestion question, MashPrediction before) {
        PhAim aim = question.aim();
        double off = Math.abs(before.ph() - aim.targetPh()) / aim.halfWidth();
        return new MashPlan(
                question, List.of(), question.mash(), before, new PlanScore(aim.beyond(before.ph()), 0, off, 0, 0));
    }

    /** Probability that the mash lands at or below a pH. */
    private double probabilityUpTo(double ph) {
        double deviation = prediction.standardUncertainty();
        if (deviation == 0) {
            return prediction.ph() <= ph ? 1 : 0;
        }
        return Erf.erfc((prediction.ph() - ph) / deviation / Math.sqrt(2)) / 2;
    }

    /** Probability that the mash lands below the range. */
    public double probabilityBelow() {
        return probabilityUpTo(question.aim().lowPh());
    }

    /** Probability that it lands above. */
    public double probabilityAbove() {
        return 1 - probabilityUpTo(question.aim().highPh());
    }

    /** Probability that it lands in the range. */
    public double probabilityInRange() {
        return Math.max(0, 1 - probabilityBelow() - probabilityAbove());
    }

    /** How much of a supply it uses, 0 where none. */
    public double amountOf(PlanSupply supply) {
        for (PlannedAmount addition : additions) {
            if (addition.supply().equals(supply)) {
                return addition.amount();
            }
        }
        return 0;
    }

    /** The supply that sets the pH, by name; empty where there is none. */
    public List<PlanSupply> setters() {
        return additions.stream()
                .map(PlannedAmount::supply)
                .filter(supply -> supply.role() == PlanSupply.Role.ACID || supply.role() == PlanSupply.Role.BASE)
                .toList();
    }

    /** What of an ion or anion is in the liquor, mg/L. */
    public double mgPerL(String symbol) {
        return prediction.ions().stream()
                .filter(ion -> ion.symbol().equals(symbol))
                .mapToDouble(ion -> ion.mgPerL())
                .sum();
    }
}

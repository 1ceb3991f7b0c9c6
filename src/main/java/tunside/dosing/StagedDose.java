package tunside.dosing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A dose, to be added in stages with a reading after each.
 *
 * @param reagent what to add
 * @param totalGrams that brings the median to the target
 * @param low90Grams lower end of the 90 % interval of what is really needed
 * @param high90Grams upper end
 * @param stages the first is to be added now; the later ones hold if each reading comes as expected. Empty where nothing may
 *     be added now
 */
public record StagedDose(
        Reagent reagent, double totalGrams, double low90Grams, double high90Grams, List<DoseStage> stages) {
    private static final int MOST_STAGES = 8;

    public StagedDose {
        stages = List.copyOf(stages);
    }

    /** The amount to add now: none where it is less than a step, or withheld. */
    public Optional<DoseStage> now() {
        return stages.isEmpty() ? Optional.empty() : Optional.of(stages.get(0));
    }

    /** The same with nothing to add now. */
    StagedDose withheld() {
        return new StagedDose(reagent, totalGrams, low90Grams, high90Grams, List.of());
    }

    /**
     * The dose that brings the liquid to its target.
     *
     * @param needed to bring it there
     * @param totalGrams its median, finite
     */
    static StagedDose of(
            DoseQuestion question, Knowledge knowledge, Supply supply, GramsNeeded needed, double totalGrams) {
        return new StagedDose(
                supply.reagent(),
                totalGrams,
                needed.grams(0.05),
                needed.grams(0.95),
                stages(question, knowledge, supply, totalGrams));
    }

    /**
     * The next addition: the largest that keeps the probability of passing the far limit at or below the accepted risk, but
     * not more than what brings the median to the target; rounded down to a step.
     */
    private static double nextGrams(DoseAim aim, Knowledge knowledge, Supply supply, double toTarget) {
        double toRisk = knowledge.gramsFor(supply.reagent(), farLimit(aim, supply.reagent()), aim.acceptedRisk());
        return supply.roundedDown(Math.min(supply.mostGrams(), Math.min(toTarget, toRisk)));
    }

    private static List<DoseStage> stages(
            DoseQuestion question, Knowledge knowledge, Supply supply, double totalGrams) {
        List<DoseStage> stages = new ArrayList<>();
        Knowledge known = knowledge;
        double toTarget = totalGrams;
        double left = supply.mostGrams();
        while (stages.size() < MOST_STAGES) {
            Supply rest = new Supply(supply.reagent(), supply.stepGrams(), Math.max(0, left));
            double grams = nextGrams(question.aim(), known, rest, toTarget);
            if (grams <= 0) {
                break;
            }
            DoseStage stage = stage(question.aim(), known, supply.reagent(), grams);
            stages.add(stage);
            left -= grams;
            if (question.aim().contains(stage.expectedPh())) {
                break;
            }
            PhReading expected =
                    new PhReading(stage.expectedPh(), question.lastReading().standardUncertainty());
            known = known.after(new PastAddition(supply.reagent(), grams, Optional.of(expected)));
            toTarget = known.gramsFor(supply.reagent(), question.aim().targetPh(), 0.5);
        }
        return stages;
    }

    private static DoseStage stage(DoseAim aim, Knowledge knowledge, Reagent reagent, double grams) {
        Quantiles ph = knowledge.ph(reagent, grams);
        double below = ph.below(farLimit(aim, reagent)); // first: a point from which quantiles are found
        return new DoseStage(grams, ph.at(0.5), ph.at(0.05), ph.at(0.95), reagent.acid() ? below : 1 - below);
    }

    /** The end of the range that the reagent leads to, and past which it must not. */
    private static double farLimit(DoseAim aim, Reagent reagent) {
        return reagent.acid() ? aim.lowPh() : aim.highPh();
    }
}

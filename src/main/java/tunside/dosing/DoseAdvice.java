package tunside.dosing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tunside.finding.Finding;
import tunside.finding.Outcome;
import tunside.quantity.Interval90;

/**
 * The answer to a {@link DoseQuestion}.
 *
 * @param outcome what to do
 * @param learning what the history taught
 * @param currentPh median of the true pH now
 * @param low90Ph lower end of its 90 % interval
 * @param high90Ph upper end
 * @param probabilityInRange that the true pH lies in the range now
 * @param findings checks of the history and of the dose; pointers are relative to the request
 */
public record DoseAdvice(
        DoseOutcome outcome,
        BufferLearning learning,
        double currentPh,
        double low90Ph,
        double high90Ph,
        double probabilityInRange,
        List<Finding> findings) {
    /** Share of all liquids of this kind that need less acid than the limit. */
    private static final double EXPLAINED = 0.995;

    public DoseAdvice {
        findings = List.copyOf(findings);
    }

    /**
     * Computes the dose.
     *
     * <p>Acid is dosed only where both the latest reading and what is known of the pH lie above the range, base only where
     * both lie below it. A first reading stands alone: then the two are the same.
     *
     * @param inputs checks of what the question was made from; where one of them says stop, nothing is to be added now
     */
    public static DoseAdvice of(DoseQuestion question, List<Finding> inputs) {
        BufferLearning learning = question.learn();
        Knowledge now = learning.now();
        Quantiles ph = now.ph();
        double median = ph.at(0.5);
        double last = question.endsWithReading() ? question.lastReading().ph() : median;
        DoseAim aim = question.aim();
        List<Finding> findings = new ArrayList<>(inputs);
        history(learning, findings);
        DoseOutcome outcome = new DoseOutcome.NoneNeeded();
        if (last > aim.highPh() && median > aim.highPh() && question.acid().isPresent()) {
            outcome = reach(question, learning, question.acid().orElseThrow(), findings);
        } else if (last < aim.lowPh() && median < aim.lowPh()) {
            outcome = reach(question, learning, question.base(), findings);
        }
        return new DoseAdvice(
                outcome,
                learning,
                median,
                ph.at(0.05),
                ph.at(0.95),
                now.probabilityBelow(aim.highPh()) - now.probabilityBelow(aim.lowPh()),
                findings);
    }

    /** Whether a check says stop: then nothing is to be added now. */
    public boolean stopped() {
        return stopped(findings);
    }

    private static boolean stopped(List<Finding> findings) {
        for (Finding finding : findings) {
            if (finding.outcome() == Outcome.STOP) {
                return true;
            }
        }
        return false;
    }

    /** Standard uncertainty of the true pH now: that of a normal distribution with this 90 % interval. */
    public double standardUncertainty() {
        return (high90Ph - low90Ph) / (2 * Interval90.HALF_WIDTH);
    }

    /** Whether the latest entry of the history is a reading that the model cannot explain: it should be taken again first. */
    public boolean lastReadingContradicts(int entries) {
        List<BufferLearning.Comparison> comparisons = learning.comparisons();
        if (comparisons.isEmpty()) {
            return false;
        }
        BufferLearning.Comparison last = comparisons.get(comparisons.size() - 1);
        return last.fit() != BufferLearning.Fit.AS_EXPECTED && last.index() == entries - 1;
    }

    /** The dose of the outcome, acid or base, if there is one. */
    public Optional<StagedDose> staged() {
        if (outcome instanceof DoseOutcome.Dose dose) {
            return Optional.of(dose.staged());
        }
        if (outcome instanceof DoseOutcome.RaiseInstead raise) {
            return Optional.of(raise.staged());
        }
        return Optional.empty();
    }

    private static DoseOutcome reach(
            DoseQuestion question, BufferLearning learning, Supply supply, List<Finding> findings) {
        Knowledge now = learning.now();
        Reagent reagent = supply.reagent();
        GramsNeeded needed = now.needed(reagent, question.aim().targetPh());
        double total = needed.grams(0.5);
        if (total > supply.mostGrams()) {
            findings.add(Finding.of("dose.reach", Outcome.STOP, "/targetPh").about(reagent.name()));
            return new DoseOutcome.OutOfReach(
                    reagent, supply.mostGrams(), now.quantile(0.5, reagent, supply.mostGrams()));
        }
        findings.add(Finding.of("dose.reach", Outcome.PASS, "/targetPh").about(reagent.name()));
        StagedDose staged = StagedDose.of(question, now, supply, needed, total);
        explained(question, learning, supply, staged, findings);
        if (!stopped(findings)) {
            step(supply, staged, findings);
        } else {
            staged = staged.withheld();
        }
        return reagent.acid() ? new DoseOutcome.Dose(staged) : new DoseOutcome.RaiseInstead(staged);
    }

    /**
     * Checks that all that went in and is to go in now is not more than 99.5 % of all liquids of this kind need to come from the
     * first reading to the target.
     */
    private static void explained(
            DoseQuestion question, BufferLearning learning, Supply supply, StagedDose staged, List<Finding> findings) {
        double target = question.aim().targetPh();
        Reagent reagent = supply.reagent();
        double before = learning.now().givenMeq(target) / reagent.meqPerGram(target);
        if (!(before > 0)) {
            return;
        }
        double all = before + staged.now().map(DoseStage::grams).orElse(0.0);
        double most = learning.before().gramsFor(reagent, target, EXPLAINED);
        boolean explained = all <= most;
        findings.add(Finding.of("dose.liquid-explains", explained ? Outcome.PASS : Outcome.STOP, "/history", all, most)
                .about(reagent.name()));
    }

    private static void step(Supply supply, StagedDose staged, List<Finding> findings) {
        boolean measurable = staged.now().isPresent();
        findings.add(Finding.of(
                        "dose.smallest-step",
                        measurable ? Outcome.PASS : Outcome.CAUTION,
                        "",
                        supply.stepGrams(),
                        staged.totalGrams())
                .about(supply.reagent().name()));
    }

    private static void history(BufferLearning learning, List<Finding> findings) {
        for (BufferLearning.Comparison comparison : learning.comparisons()) {
            findings.add(Finding.of(
                    code(comparison),
                    comparison.fit() == BufferLearning.Fit.AS_EXPECTED ? Outcome.PASS : Outcome.CAUTION,
                    "/history/" + comparison.index(),
                    comparison.readPh(),
                    comparison.expectedPh()));
        }
    }

    private static String code(BufferLearning.Comparison comparison) {
        boolean falling = comparison.falling();
        return switch (comparison.fit()) {
            case AS_EXPECTED -> "dose.reading-as-expected";
            case WRONG_WAY -> falling ? "dose.reading-rose" : "dose.reading-fell";
            case TOO_FAR -> falling ? "dose.reading-fell-too-far" : "dose.reading-rose-too-far";
            case TOO_LITTLE -> falling ? "dose.reading-fell-too-little" : "dose.reading-rose-too-little";
        };
    }
}

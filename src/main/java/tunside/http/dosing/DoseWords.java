package tunside.http.dosing;

import java.util.OptionalDouble;
import tunside.chemistry.AcidProduct;
import tunside.chemistry.NeatAcidLimits;
import tunside.dosing.DoseAdvice;
import tunside.dosing.DoseOutcome;
import tunside.dosing.DoseStage;
import tunside.dosing.StagedDose;
import tunside.http.answer.Rounded;

/** One sentence that says what to do. */
final class DoseWords {
    private DoseWords() {}

    static String of(AcidDoseReading reading, DoseAdvice advice) {
        if (advice.outcome() instanceof DoseOutcome.NoneNeeded) {
            return reading.question().aim().contains(advice.currentPh())
                    ? "The pH is in the range. Add nothing."
                    : "The readings do not agree that the pH is outside the range. Add nothing; stir, wait and measure again.";
        }
        if (advice.outcome() instanceof DoseOutcome.OutOfReach out) {
            return "The target cannot be reached: with the most that may be added the pH would be %s. Add nothing; check the input."
                    .formatted(Rounded.text(Rounded.decimals(out.phAtLargest(), 2)));
        }
        StagedDose staged = advice.staged().orElseThrow();
        if (staged.now().isEmpty()) {
            return advice.stopped()
                    ? "Add nothing now: a check says stop. Read the checks."
                    : "Not even one step of your syringe or scales is safe to add. Dilute the acid or use a finer syringe.";
        }
        DoseStage stage = staged.now().get();
        OptionalDouble millilitres = staged.reagent().millilitres(stage.grams());
        String amount =
                millilitres.isPresent() ? shown(millilitres.getAsDouble()) + " mL" : shown(stage.grams()) + " g";
        String dilute = staged.reagent().acid()
                        && reading.bought().filter(NeatAcidLimits::reachedBy).isPresent()
                ? "Dilute the acid first, acid into water. "
                : "";
        String again =
                advice.lastReadingContradicts(reading.question().history().size())
                        ? "The last reading contradicts what went in: stir, wait, measure again and send that reading first. If it stands: "
                        : "";
        String what = staged.reagent().acid()
                ? product(reading.dosed().orElseThrow())
                : reading.base().salt().name();
        return again + dilute + "Add " + amount + " of " + what
                + " now. Stir well, wait, cool a sample, measure, and ask again with what you read.";
    }

    private static String product(AcidProduct product) {
        return product.acid().name() + ", " + Rounded.text(Rounded.decimals(product.massPercent(), 1)) + " %w/w,";
    }

    private static String shown(double amount) {
        return Rounded.text(Rounded.significant(amount, 3));
    }
}

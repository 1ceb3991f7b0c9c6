package tunside.http.sheet;

import java.util.ArrayList;
import java.util.List;
import tunside.http.answer.Rounded;
import tunside.http.mash.MashPredictionRequest;
import tunside.http.mash.MashPredictionResponse;
import tunside.http.mash.MashPredictionResponse.MashPredictionResult;
import tunside.http.sheet.BrewDaySheet.Fact;
import tunside.http.sheet.BrewDaySheet.Ingredient;
import tunside.http.sheet.BrewDaySheet.Step;
import tunside.mash.PhRange;
import tunside.mash.PhRanges;

/** A predicted mash on paper. */
final class MashPredictionSheet {
    private MashPredictionSheet() {}

    static BrewDaySheet of(MashPredictionRequest question, MashPredictionResponse answer) {
        MashPredictionResult result = answer.result();
        PhRange range = PhRanges.acceptedMash();
        String expected = "%s (90 %%: %s to %s)"
                .formatted(
                        Rounded.text(result.ph()),
                        Rounded.text(result.interval90().low()),
                        Rounded.text(result.interval90().high()));
        List<Ingredient> ingredients = new ArrayList<>();
        List<Ingredient> liquor = SheetParts.liquor(question.liquor());
        if (question.additions() != null) {
            question.additions().forEach(addition -> ingredients.add(SheetParts.addition(addition)));
        }
        question.grist().forEach(malt -> ingredients.add(SheetParts.malt(malt)));
        List<Fact> facts = List.of(
                new Fact("Predicted pH", expected),
                new Fact(
                        "Accepted range",
                        "%s to %s"
                                .formatted(
                                        Rounded.text(range.lowPh().orElseThrow()),
                                        Rounded.text(range.highPh().orElseThrow()))),
                new Fact("Grist", SheetParts.amount(result.gristMass(), null)),
                new Fact("Liquor to grist", Rounded.text(result.liquorRatioLPerKg()) + " L/kg"),
                new Fact(
                        "Acid for 0.1 less pH",
                        Rounded.text(Rounded.significant(result.bufferCapacityMeqPerPh() / 10, 3)) + " mEq"));
        List<Step> steps = List.of(
                new Step(false, "Electrode read in two buffers", "", ""),
                new Step(false, "Mashed in with all that is ticked above", "", ""),
                new Step(false, "First sample, cooled to 20 to 25 °C and read", expected, ""),
                new Step(false, "Second sample, the same way", expected, ""));
        return new SheetDraft(
                        "Mash predicted at pH " + Rounded.text(result.ph()),
                        "Measure before you correct: ask for a dose with the pH you read. Surer next time: "
                                + result.limitedBy().advice(),
                        liquor,
                        "Grist and additions",
                        ingredients,
                        facts,
                        steps,
                        SheetParts.electrode(question.calibration(), null, null),
                        answer.checks(),
                        answer.safety(),
                        answer.basis())
                .fitted();
    }
}

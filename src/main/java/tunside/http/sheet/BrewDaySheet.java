package tunside.http.sheet;

import java.util.List;
import tunside.http.answer.Basis;
import tunside.http.answer.Check;
import tunside.http.answer.SafetyAdvice;

/**
 * One page for a clipboard beside the mash tun.
 *
 * @param title what to do or to expect
 * @param lead the numbers behind it
 * @param warnings checks that say caution or stop
 * @param liquor waters, each to be ticked
 * @param ingredients what else goes together
 * @param moreIngredients what did not fit, in words; empty where all did
 * @param facts what was given and predicted
 * @param steps in order
 * @param blankSteps empty rows for what follows
 * @param electrode what is known of it
 * @param safety notes for the margin
 * @param moreSafety how many did not fit, in words; empty where all did
 * @param origin model and version
 */
public record BrewDaySheet(
        String title,
        String lead,
        List<String> warnings,
        List<Ingredient> liquor,
        List<Ingredient> ingredients,
        String moreIngredients,
        List<Fact> facts,
        List<Step> steps,
        List<Integer> blankSteps,
        List<Fact> electrode,
        List<Note> safety,
        String moreSafety,
        String origin) {

    /**
     * A sheet that fits its page.
     *
     * @param ingredients all of them
     * @param most of them that the sheet holds
     * @param checks of the answer
     * @param notes its safety notes
     */
    static BrewDaySheet of(
            String title,
            String lead,
            List<Ingredient> liquor,
            List<Ingredient> ingredients,
            int most,
            List<Fact> facts,
            List<Step> steps,
            List<Fact> electrode,
            List<Check> checks,
            List<SafetyAdvice> notes,
            Basis basis) {
        List<String> warnings = SheetParts.warnings(checks);
        return new BrewDaySheet(
                title,
                lead,
                warnings,
                liquor,
                SheetParts.first(ingredients, most),
                SheetParts.more(ingredients, most),
                facts,
                steps,
                SheetParts.blankRows(
                        warnings.size(), liquor.size(), Math.min(most, ingredients.size()), facts.size(), steps.size()),
                electrode,
                SheetParts.safety(notes),
                SheetParts.moreSafety(notes),
                SheetParts.origin(basis));
    }

    /** Something that goes in. */
    public record Ingredient(String name, String amount) {}

    /** Something known. */
    public record Fact(String name, String value) {}

    /**
     * Something to do.
     *
     * @param done whether it was done when the sheet was made
     * @param what to do
     * @param expected pH with its interval, or empty
     * @param read pH as read, or empty for a field to fill in
     */
    public record Step(boolean done, String what, String expected, String read) {}

    /**
     * A safety note.
     *
     * @param about what it is about, empty where that is as in the note before
     */
    public record Note(String about, String message) {}
}

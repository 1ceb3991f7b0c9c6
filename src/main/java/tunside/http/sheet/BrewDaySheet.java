package tunside.http.sheet;

import java.util.List;

/**
 * One page for a clipboard beside the mash tun. {@link SheetDraft} makes one of a length that fits its page.
 *
 * @param tight whether it is written smaller, since it holds much
 * @param title what to do or to expect
 * @param lead the numbers behind it
 * @param warnings checks that say caution or stop
 * @param liquor waters and what is done to them, each to be ticked
 * @param liquorColumns in which these stand: 1 or 2
 * @param ingredientsTitle what the ingredients go into
 * @param ingredients what goes together, without the liquor
 * @param facts what was given and predicted
 * @param steps in order
 * @param blankSteps empty rows for what follows
 * @param electrode what is known of it
 * @param safety notes for the margin
 * @param moreSafety how many did not fit, in words; empty where all did
 * @param origin model and version
 */
public record BrewDaySheet(
        boolean tight,
        String title,
        String lead,
        List<Warning> warnings,
        List<Ingredient> liquor,
        int liquorColumns,
        String ingredientsTitle,
        List<Ingredient> ingredients,
        List<Fact> facts,
        List<Step> steps,
        List<Integer> blankSteps,
        List<Fact> electrode,
        List<Note> safety,
        String moreSafety,
        String origin) {

    /**
     * Something that goes in or is done.
     *
     * @param box whether there is a box to tick
     */
    public record Ingredient(boolean box, String name, String amount) {
        Ingredient(String name, String amount) {
            this(true, name, amount);
        }
    }

    /**
     * A check that is not passed.
     *
     * @param outcome Caution or STOP, with its full stop
     */
    public record Warning(String outcome, String message) {}

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

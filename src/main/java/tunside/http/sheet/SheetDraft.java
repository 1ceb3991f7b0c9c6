package tunside.http.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import tunside.http.answer.Basis;
import tunside.http.answer.Check;
import tunside.http.answer.SafetyAdvice;
import tunside.http.sheet.BrewDaySheet.Fact;
import tunside.http.sheet.BrewDaySheet.Ingredient;
import tunside.http.sheet.BrewDaySheet.Note;
import tunside.http.sheet.BrewDaySheet.Step;
import tunside.http.sheet.BrewDaySheet.Warning;

/**
 * All that could stand on a sheet, and the cut to what one page holds. The measures are those of the template's style.
 *
 * @param title what to do or to expect
 * @param lead the numbers behind it
 * @param liquor waters and treatments
 * @param ingredientsTitle what the ingredients go into
 * @param ingredients what goes together, without the liquor
 * @param facts what was given and predicted
 * @param steps in order
 * @param electrode what is known of it
 * @param checks of the answer
 * @param safety notes of the answer
 * @param basis of the answer
 */
record SheetDraft(
        String title,
        String lead,
        List<Ingredient> liquor,
        String ingredientsTitle,
        List<Ingredient> ingredients,
        List<Fact> facts,
        List<Step> steps,
        List<Fact> electrode,
        List<Check> checks,
        List<SafetyAdvice> safety,
        Basis basis) {
    /** US Letter without its margins, the line of origin and a little slack. */
    private static final double PAGE = 279.4 - 16 - 6 - 3;

    private static final double MAIN = 131;
    private static final double COLUMN = 63;
    private static final double MARGIN = 52.6;
    private static final double BOX = 5.3;
    private static final double BOX_HEIGHT = 3.8;
    private static final double GAP = 1.5;
    private static final double MOST_AMOUNT = 0.6;
    private static final double MARGIN_HEAD = 12;
    private static final double SPACING = 1.25;
    private static final double FIELDS_FOR_NAMES = 7;
    private static final double TABLE_HEAD = 5.2;
    private static final double ROW = 9.2;
    private static final double WHAT = 52.6;
    private static final double EXPECTED = 23.8;
    private static final int MOST_BLANK = 7;
    private static final int MOST_IN_ONE_COLUMN = 3;
    private static final List<String> ALWAYS =
            List.of("acid.into-water", "chemical.first-aid", "sample.hot", "defer.label-and-codes");

    /**
     * Sizes of the template's two styles.
     *
     * @param text in points, as is warning
     * @param gap around an item in mm
     */
    private record Style(boolean tight, double text, double warning, double gap, double heading, double field) {
        static final Style ROOMY = new Style(false, 9.2, 9, 1.6, 8, 6);
        static final Style TIGHT = new Style(true, 8.2, 8, 0.8, 7, 5.4);
    }

    /** The sheet: roomy where all fits so. */
    BrewDaySheet fitted() {
        BrewDaySheet roomy = fitted(Style.ROOMY);
        boolean all = roomy.liquor().equals(liquor) && roomy.ingredients().equals(ingredients);
        return all ? roomy : fitted(Style.TIGHT);
    }

    private BrewDaySheet fitted(Style style) {
        List<Warning> warnings = SheetParts.warnings(checks);
        int liquorColumns = liquor.size() > MOST_IN_ONE_COLUMN ? 2 : 1;
        PageRoom room = new PageRoom(PAGE);
        room.take(FIELDS_FOR_NAMES);
        room.take(PageRoom.height(title, 16, true, 1.15, MAIN) + 1);
        room.take(PageRoom.height(lead, style.text, false, SPACING, MAIN) + 1);
        warnings.forEach(warning -> room.take(height(warning, style)));
        room.take((3 + (liquor.isEmpty() ? 0 : 1) + (ingredients.isEmpty() ? 0 : 1)) * style.heading);
        room.take(TABLE_HEAD);
        steps.forEach(step -> room.take(height(step, style)));
        room.take(PageRoom.height(
                facts.stream()
                        .mapToDouble(fact -> beside(fact.name(), fact.value(), COLUMN, style))
                        .toArray(),
                2));
        room.take(Math.ceil(electrode.size() / 2.0) * style.field);
        List<Ingredient> waters = cut(liquor, liquorColumns, style, room);
        List<Ingredient> others = cut(ingredients, 2, style, room);
        List<Note> notes = margin();
        return new BrewDaySheet(
                style.tight,
                title,
                lead,
                warnings,
                waters,
                liquorColumns,
                ingredientsTitle,
                others,
                facts,
                steps,
                IntStream.range(0, Math.min(MOST_BLANK, room.count(ROW)))
                        .boxed()
                        .toList(),
                electrode,
                notes,
                notes.size() == safety.size()
                        ? ""
                        : "%s more notes in the answer as JSON.".formatted(safety.size() - notes.size()),
                "Tunside %s, model %s".formatted(basis.version(), basis.model()));
    }

    private static List<Ingredient> cut(List<Ingredient> all, int columns, Style style, PageRoom room) {
        List<Ingredient> first = room.first(all, columns, one -> height(one, columns, style));
        if (first.size() == all.size()) {
            return all;
        }
        // the last of them makes room for the words
        List<Ingredient> cut = new ArrayList<>(first.subList(0, Math.max(0, first.size() - 1)));
        cut.add(new Ingredient(false, "and %s more, as in the question".formatted(all.size() - cut.size()), ""));
        return cut;
    }

    /** Name and amount beside each other, each broken where it must be. */
    private static double beside(String name, String amount, double width, Style style) {
        double right = Math.min(PageRoom.width(amount, style.text, false) + GAP, MOST_AMOUNT * width);
        double left = PageRoom.height(name, style.text, false, SPACING, width - right);
        return Math.max(left, PageRoom.height(amount, style.text, false, SPACING, right)) + style.gap;
    }

    private static double height(Ingredient ingredient, int columns, Style style) {
        double height = beside(ingredient.name(), ingredient.amount(), (columns == 1 ? MAIN : COLUMN) - BOX, style);
        return Math.max(height, BOX_HEIGHT + style.gap);
    }

    private static double height(Warning warning, Style style) {
        return PageRoom.height(warning.outcome() + " " + warning.message(), style.warning, false, 1.2, MAIN - 4)
                + 2.4 * style.gap;
    }

    private static double height(Step step, Style style) {
        double what = PageRoom.height(step.what(), style.text, false, SPACING, WHAT);
        double expected = PageRoom.height(step.expected(), 8.5, false, SPACING, EXPECTED);
        return Math.max(step.done() ? BOX_HEIGHT + 2 : ROW, Math.max(what, expected) + 1.6);
    }

    /** The notes that fit the margin, in their order; the order of dilution, first aid and the deferral always. */
    private List<Note> margin() {
        PageRoom room = new PageRoom(PAGE - MARGIN_HEAD);
        safety.stream().filter(SheetDraft::always).forEach(note -> room.take(height(note)));
        List<Note> notes = new ArrayList<>();
        String about = "";
        for (SafetyAdvice note : safety) {
            if (always(note) || room.fits(height(note))) {
                notes.add(new Note(note.appliesTo().equals(about) ? "" : note.appliesTo() + ":", note.message()));
                about = note.appliesTo();
            }
        }
        return notes;
    }

    private static boolean always(SafetyAdvice note) {
        return ALWAYS.contains(note.code());
    }

    private static double height(SafetyAdvice note) {
        return PageRoom.height(note.appliesTo() + ": " + note.message(), 7.3, false, 1.22, MARGIN) + 1.1;
    }
}

package tunside.review;

import java.util.List;
import java.util.Locale;
import tunside.reference.Row;
import tunside.reference.Table;

/**
 * A kind of slip that may lie behind an odd brew, from {@code review-slips.csv}.
 *
 * @param id such as {@code malt-mass}
 * @param input id of the inputs that it touches; empty for a slip of reading
 * @param scale how it acts
 * @param touches what it acts on
 * @param spread standard deviation of the shift, or of the logarithm of the factor
 * @param weight how common it is before any reading
 * @param unit of the value that it changes
 * @param message in words, with the places {subject}, {stated} and {needed}
 */
public record Slip(
        String id,
        String input,
        Scale scale,
        Touches touches,
        double spread,
        double weight,
        String unit,
        String message) {
    private static final List<Slip> ALL =
            Table.read("review-slips.csv").rows().stream().map(Slip::of).toList();

    /** How a slip acts. */
    enum Scale {
        /** Shifts readings. */
        PH,
        /** Adds to an input. */
        ADD,
        /** Multiplies an input. */
        TIMES
    }

    /** What a slip acts on. */
    enum Touches {
        /** All readings, or all inputs together. */
        ALL,
        /** One reading after a dose, or the inputs of one subject. */
        EACH,
        /** The first reading alone. */
        FIRST
    }

    /** All, in the table's order. */
    static List<Slip> all() {
        return ALL;
    }

    private static Slip of(Row row) {
        return new Slip(
                row.text("slip"),
                row.optionalText("input"),
                Scale.valueOf(row.text("scale").toUpperCase(Locale.ROOT)),
                Touches.valueOf(row.text("touches").toUpperCase(Locale.ROOT)),
                row.number("spread", 1e-3, 100),
                row.number("weight", 1e-6, 1),
                row.text("unit"),
                row.text("message"));
    }
}

package tunside.reference;

import java.util.Map;
import java.util.OptionalDouble;

/**
 * One row of a reference table.
 *
 * @param file the table's file name
 * @param line where the row stands, counted from 1
 * @param cells cell text by column name
 */
public record Row(String file, long line, Map<String, String> cells) {
    public Row {
        cells = Map.copyOf(cells);
    }

    /** The text of a cell that must not be blank. */
    public String text(String column) {
        String text = optionalText(column);
        if (text.isEmpty()) {
            throw fault("column '%s' is blank".formatted(column));
        }
        return text;
    }

    /** The text of a cell, empty where blank. The column itself must exist. */
    public String optionalText(String column) {
        String text = cells.get(column);
        if (text == null) {
            throw fault("there is no column '%s'".formatted(column));
        }
        return text.strip();
    }

    /** A finite number that must be there. */
    public double number(String column) {
        String text = text(column);
        try {
            double value = Double.parseDouble(text);
            if (Double.isFinite(value)) {
                return value;
            }
        } catch (NumberFormatException e) {
            // reported below, together with NaN and infinity
        }
        throw fault("column '%s' must be a finite number but is '%s'".formatted(column, text));
    }

    /** A finite number between two bounds, both included. */
    public double number(String column, double low, double high) {
        double value = number(column);
        if (!(value >= low && value <= high)) {
            throw fault("column '%s' must be from %s to %s but is %s".formatted(column, low, high, value));
        }
        return value;
    }

    /** A number, or empty where the cell is blank. */
    public OptionalDouble optionalNumber(String column) {
        return optionalText(column).isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(number(column));
    }

    /** The id of the publication that the row's values come from. */
    public String source() {
        return text("source");
    }

    /** A fault of this row, for a table that knows more about its values. */
    public BrokenTableException fault(String message) {
        return new BrokenTableException(file, line, message);
    }
}

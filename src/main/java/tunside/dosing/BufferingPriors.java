package tunside.dosing;

import java.util.LinkedHashMap;
import java.util.Map;
import tunside.reference.Row;
import tunside.reference.Table;

/** How buffering is distributed before anything is measured, from {@code buffering-priors.csv}. */
final class BufferingPriors {
    private static final Map<String, Row> ROWS = load();

    private BufferingPriors() {}

    /** Median, in the unit that {@link #unit} names. */
    static double median(String quantity) {
        return ROWS.get(quantity).number("median");
    }

    /** Standard deviation of the natural logarithm. */
    static double logStandardDeviation(String quantity) {
        return ROWS.get(quantity).number("log_standard_deviation", 0.001, 1);
    }

    /** Id of the publication. */
    static String source(String quantity) {
        return ROWS.get(quantity).source();
    }

    private static Map<String, Row> load() {
        Map<String, Row> rows = new LinkedHashMap<>();
        for (Row row : Table.read("buffering-priors.csv").rows()) {
            rows.put(row.text("quantity"), row);
        }
        return rows;
    }
}

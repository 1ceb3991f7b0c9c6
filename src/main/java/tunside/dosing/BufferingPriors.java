package tunside.dosing;

import static java.util.Objects.requireNonNull;

import java.util.LinkedHashMap;
import java.util.Map;
import tunside.reference.Row;
import tunside.reference.Table;

/** How buffering is distributed before anything is measured, from {@code buffering-priors.csv}. */
final class BufferingPriors {
    private static final Map<String, Row> ROWS = load();

    private BufferingPriors() {}

    /** Median, in the unit of its row. */
    static double median(String quantity) {
        return row(quantity).number("median");
    }

    /** Standard deviation of the natural logarithm. */
    static double logStandardDeviation(String quantity) {
        return row(quantity).number("log_standard_deviation", 0.001, 1);
    }

    /** Id of the publication. */
    static String source(String quantity) {
        return row(quantity).source();
    }

    private static Row row(String quantity) {
        return requireNonNull(ROWS.get(quantity));
    }

    private static Map<String, Row> load() {
        Map<String, Row> rows = new LinkedHashMap<>();
        for (Row row : Table.read("buffering-priors.csv").rows()) {
            rows.put(row.text("quantity"), row);
        }
        return rows;
    }
}

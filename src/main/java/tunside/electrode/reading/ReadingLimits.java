package tunside.electrode.reading;

import java.util.LinkedHashMap;
import java.util.Map;
import tunside.reference.Row;
import tunside.reference.Table;

/** The conventions of {@code reading-model.csv}. */
final class ReadingLimits {
    private static final Map<String, Double> ALL = load();

    private ReadingLimits() {}

    /** The value with this name, in the unit of its row. */
    static double of(String name) {
        Double value = ALL.get(name);
        if (value == null) {
            throw new IllegalStateException("reading-model.csv has no " + name);
        }
        return value;
    }

    private static Map<String, Double> load() {
        Map<String, Double> values = new LinkedHashMap<>();
        for (Row row : Table.read("reading-model.csv").rows()) {
            if (values.put(row.text("quantity"), row.number("value")) != null) {
                throw row.fault("'%s' stands twice".formatted(row.text("quantity")));
            }
        }
        return values;
    }
}

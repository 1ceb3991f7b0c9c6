package tunside.electrode;

import java.util.LinkedHashMap;
import java.util.Map;
import tunside.reference.Row;
import tunside.reference.Table;

/** The limits of {@code electrode-limits.csv} and the assumptions of {@code buffer-preparation.csv}. */
final class ElectrodeLimits {
    private static final Map<String, Double> LIMITS = load("electrode-limits.csv", "limit");
    private static final Map<String, Double> PREPARATION = load("buffer-preparation.csv", "quantity");

    private ElectrodeLimits() {}

    /** The limit with this name, in the unit of its row. */
    static double of(String name) {
        return known(LIMITS, name);
    }

    /** The assumption about a buffer's preparation with this name, in the unit of its row. */
    static double preparation(String name) {
        return known(PREPARATION, name);
    }

    private static double known(Map<String, Double> values, String name) {
        Double value = values.get(name);
        if (value == null) {
            throw new IllegalStateException("there is no limit " + name);
        }
        return value;
    }

    private static Map<String, Double> load(String file, String key) {
        Map<String, Double> values = new LinkedHashMap<>();
        for (Row row : Table.read(file).rows()) {
            if (values.put(row.text(key), row.number("value")) != null) {
                throw row.fault("'%s' stands twice".formatted(row.text(key)));
            }
        }
        return values;
    }
}

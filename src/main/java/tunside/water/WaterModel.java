package tunside.water;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import tunside.reference.Row;
import tunside.reference.Table;

/** What the reading of a report and its treatment take for granted, from {@code water-model.csv}. */
public final class WaterModel {
    private static final Map<String, Double> VALUES = load();

    private WaterModel() {}

    /** pH taken where a report names none. */
    public static double assumedPh() {
        return value("assumed-ph");
    }

    /** End point taken where an alkalinity names none. */
    public static double assumedEndPointPh() {
        return value("assumed-end-point");
    }

    /** How far a titration goes on for the second end point of the low-alkalinity formula, pH. */
    public static double secondEndPointStepPh() {
        return value("second-end-point-step");
    }

    /** Share of the ions that reverse osmosis commonly leaves. */
    public static double reverseOsmosisShare() {
        return value("reverse-osmosis-share");
    }

    /** Factor from a conductivity at 20 degC to one at 25 degC. */
    public static double conductivityAt20To25() {
        return value("conductivity-at-20-to-25");
    }

    static double value(String parameter) {
        Double value = VALUES.get(parameter);
        if (value == null) {
            throw new IllegalArgumentException("water-model.csv has no '%s'".formatted(parameter));
        }
        return value;
    }

    private static Map<String, Double> load() {
        Map<String, Double> values = new LinkedHashMap<>();
        for (Row row : Table.read("water-model.csv").rows()) {
            if (values.put(row.text("parameter"), row.number("value", 0, 100)) != null) {
                throw row.fault("parameter '%s' stands twice".formatted(row.text("parameter")));
            }
        }
        return Collections.unmodifiableMap(values);
    }
}

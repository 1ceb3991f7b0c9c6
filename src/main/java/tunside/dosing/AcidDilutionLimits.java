package tunside.dosing;

import java.util.LinkedHashMap;
import java.util.Map;
import tunside.reference.Row;
import tunside.reference.Table;

/** Limits and usual uncertainties of making a weaker acid, from {@code acid-dilution-limits.csv}. */
public final class AcidDilutionLimits {
    private static final Map<String, Double> ALL = load();

    private AcidDilutionLimits() {}

    /** Relative standard uncertainty of a label, where the caller knows none. */
    public static double usualLabelShare() {
        return of("label_relative");
    }

    /** Temperature that a mixture may reach, degC, where the caller names none. */
    public static double usualWarmLimitCelsius() {
        return of("warm_limit_celsius");
    }

    /** Water that is cold enough to pour acid into, degC. */
    public static double coldWaterCelsius() {
        return of("cold_water_celsius");
    }

    /** Temperature to which a mixture cools before the next stage, degC. */
    public static double cooledToCelsius() {
        return of("cooled_to_celsius");
    }

    static double of(String quantity) {
        Double value = ALL.get(quantity);
        if (value == null) {
            throw new IllegalArgumentException("acid-dilution-limits.csv has no '%s'".formatted(quantity));
        }
        return value;
    }

    private static Map<String, Double> load() {
        Map<String, Double> limits = new LinkedHashMap<>();
        for (Row row : Table.read("acid-dilution-limits.csv").rows()) {
            if (limits.put(row.text("quantity"), row.number("value", 0, 1000)) != null) {
                throw row.fault("the same quantity stands twice");
            }
        }
        return limits;
    }
}

package tunside.dosing;

import tunside.reference.NamedValues;
import tunside.reference.Table;

/** Limits and usual uncertainties of making a weaker acid, from {@code acid-dilution-limits.csv}. */
public final class AcidDilutionLimits {
    private static final NamedValues ALL = Table.readNamed("acid-dilution-limits.csv", "quantity", "value", 0, 1000);

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
        return ALL.of(quantity);
    }
}

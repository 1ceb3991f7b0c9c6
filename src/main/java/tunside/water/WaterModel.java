package tunside.water;

import tunside.reference.NamedValues;
import tunside.reference.Table;

/** What the reading of a report and its treatment take for granted, from {@code water-model.csv}. */
public final class WaterModel {
    private static final NamedValues VALUES = Table.readNamed("water-model.csv", "parameter", "value", 0, 100);

    private WaterModel() {}

    /** pH taken where a report names none. */
    public static double assumedPh() {
        return value("assumed-ph");
    }

    /** End point taken where an alkalinity names none. */
    public static double assumedEndPointPh() {
        return value("assumed-end-point");
    }

    /** Factor from a conductivity at 20 degC to one at 25 degC. */
    public static double conductivityAt20To25() {
        return value("conductivity-at-20-to-25");
    }

    static double value(String parameter) {
        return VALUES.of(parameter);
    }
}

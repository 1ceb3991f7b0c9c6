package tunside.electrode.reading;

import tunside.reference.NamedValues;
import tunside.reference.Table;

/** The conventions of {@code reading-model.csv}. */
final class ReadingLimits {
    private static final NamedValues ALL = Table.readNamed("reading-model.csv", "quantity", "value", 0, 1e6);

    private ReadingLimits() {}

    /** The value with this name, in the unit of its row. */
    static double of(String name) {
        return ALL.of(name);
    }
}

package tunside.electrode;

import tunside.reference.NamedValues;
import tunside.reference.Table;

/** The limits of {@code electrode-limits.csv} and the assumptions of {@code buffer-preparation.csv}. */
final class ElectrodeLimits {
    private static final NamedValues LIMITS = Table.readNamed("electrode-limits.csv", "limit", "value", 0, 1e6);
    private static final NamedValues PREPARATION =
            Table.readNamed("buffer-preparation.csv", "quantity", "value", 0, 1e6);

    private ElectrodeLimits() {}

    /** The limit with this name, in the unit of its row. */
    static double of(String name) {
        return LIMITS.of(name);
    }

    /** The assumption about a buffer's preparation with this name, in the unit of its row. */
    static double preparation(String name) {
        return PREPARATION.of(name);
    }
}

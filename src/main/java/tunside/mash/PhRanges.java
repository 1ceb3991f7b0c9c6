package tunside.mash;

import static java.util.Objects.requireNonNull;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import tunside.reference.Row;
import tunside.reference.Table;

/** The ranges of {@code ph-ranges.csv}. */
public final class PhRanges {
    private static final Map<String, PhRange> ALL = load();

    private PhRanges() {}

    /** By id, in the table's order. */
    public static Map<String, PhRange> all() {
        return ALL;
    }

    /** The range with this id, if there is one. */
    public static Optional<PhRange> find(String id) {
        return Optional.ofNullable(ALL.get(id));
    }

    /** The range that is accepted for a mash, both ends present. */
    public static PhRange acceptedMash() {
        return requireNonNull(ALL.get("mash-accepted"));
    }

    private static Map<String, PhRange> load() {
        Map<String, PhRange> ranges = new LinkedHashMap<>();
        for (Row row : Table.read("ph-ranges.csv").rows()) {
            OptionalDouble low = row.optionalNumber("low_ph");
            OptionalDouble high = row.optionalNumber("high_ph");
            if (!(low.orElse(0) < high.orElse(14))) {
                throw row.fault("low_ph must be below high_ph");
            }
            PhRange range =
                    new PhRange(row.text("range"), row.text("liquid"), row.text("meaning"), low, high, row.source());
            if (ranges.put(range.id(), range) != null) {
                throw row.fault("range '%s' stands twice".formatted(range.id()));
            }
        }
        return Collections.unmodifiableMap(ranges);
    }
}

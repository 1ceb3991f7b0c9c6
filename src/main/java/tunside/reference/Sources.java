package tunside.reference;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;

/** The publications behind every value, from {@code sources.csv}, each once. */
public final class Sources {
    private static final Set<String> KINDS =
            Set.of("publication", "second-hand", "common-practice", "derived", "memory");
    private static final Map<String, Source> ALL = load();

    private Sources() {}

    /** By id, in the file's order. */
    public static Map<String, Source> all() {
        return ALL;
    }

    private static Map<String, Source> load() {
        Map<String, Source> sources = new LinkedHashMap<>();
        for (Row row : Table.readUnsourced("sources.csv").rows()) {
            Source source = new Source(row.text("id"), row.text("citation"), row.text("kind"), row.text("read"));
            if (!KINDS.contains(source.kind())) {
                throw row.fault("kind '%s' is none of %s".formatted(source.kind(), KINDS));
            }
            if (sources.put(source.id(), source) != null) {
                throw row.fault("id '%s' stands twice".formatted(source.id()));
            }
        }
        return java.util.Collections.unmodifiableMap(sources);
    }
}

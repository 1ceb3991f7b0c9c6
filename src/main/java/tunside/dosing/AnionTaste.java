package tunside.dosing;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import tunside.reference.Row;
import tunside.reference.Table;

/** From how much of an acid's anion a beer can taste of it, from {@code taste-thresholds.csv}. */
public final class AnionTaste {
    /**
     * A threshold.
     *
     * @param mgPerL of the anion
     * @param meaning of the value
     * @param source id of the publication
     */
    public record Threshold(double mgPerL, String meaning, String source) {}

    private static final Map<String, Threshold> ALL = load();

    private AnionTaste() {}

    /** The threshold of an anion, where one is known. */
    public static Optional<Threshold> of(String anion) {
        return Optional.ofNullable(ALL.get(anion));
    }

    private static Map<String, Threshold> load() {
        Map<String, Threshold> thresholds = new LinkedHashMap<>();
        for (Row row : Table.read("taste-thresholds.csv").rows()) {
            thresholds.put(
                    row.text("anion"),
                    new Threshold(row.number("mg_per_L", 1, 10_000), row.text("meaning"), row.source()));
        }
        return thresholds;
    }
}

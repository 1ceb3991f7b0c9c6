package tunside.http.dilution;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import tunside.reference.Row;
import tunside.reference.Table;

/**
 * One step of the work or one line of a label, from {@code dilution-words.csv}.
 *
 * @param part {@code step} or {@code label}
 * @param code which
 * @param when on what occasion
 * @param text with places in braces to fill in
 * @param source id of the publication
 */
record DilutionWords(String part, String code, String when, String text, String source) {
    private static final Set<String> OCCASIONS = Set.of(
            "always",
            "corrosive",
            "not-corrosive",
            "fuming",
            "warm-water",
            "staged",
            "one-go",
            "each-stage",
            "powder",
            "liquid",
            "hazard-made",
            "no-hazard-made");

    private static final List<DilutionWords> ALL = load();

    /** Those of a part whose occasion is among the ones given, in the table's order. */
    static List<DilutionWords> of(String part, Set<String> occasions) {
        return ALL.stream()
                .filter(words -> words.part.equals(part) && occasions.contains(words.when))
                .toList();
    }

    /** The text with its places filled in. */
    String filled(Map<String, String> values) {
        String filled = text;
        for (Map.Entry<String, String> value : values.entrySet()) {
            filled = filled.replace("{" + value.getKey() + "}", value.getValue());
        }
        return filled;
    }

    private static List<DilutionWords> load() {
        List<DilutionWords> all = new ArrayList<>();
        Map<String, String> seen = new LinkedHashMap<>();
        for (Row row : Table.read("dilution-words.csv").rows()) {
            DilutionWords words = new DilutionWords(
                    row.text("part"), row.text("code"), row.text("when"), row.text("text"), row.source());
            if (!OCCASIONS.contains(words.when)) {
                throw row.fault("when '%s' is none of %s".formatted(words.when, OCCASIONS));
            }
            if (seen.put(words.part + words.code + words.when, words.code) != null) {
                throw row.fault("the same words stand twice");
            }
            all.add(words);
        }
        return List.copyOf(all);
    }
}

package tunside.safety;

import static java.util.Objects.requireNonNull;

import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tunside.reference.Row;
import tunside.reference.Table;

/** The codes of {@code hazard-statements.csv}. */
public final class HazardStatements {
    private static final Map<String, HazardStatement> ALL = load();

    private HazardStatements() {}

    /** Every code, in the table's order. */
    public static List<HazardStatement> all() {
        return List.copyOf(ALL.values());
    }

    /** The statement with this code. */
    public static Optional<HazardStatement> find(String code) {
        return Optional.ofNullable(ALL.get(code));
    }

    /**
     * The meanings of these codes, as the end of a sentence; empty for none. What burns skin damages eyes too (H314), so
     * that is not said twice (H318).
     */
    public static String sentence(List<String> codes) {
        boolean burns = codes.contains("H314");
        List<String> meanings = codes.stream()
                .filter(code -> !(burns && code.equals("H318")))
                .map(code -> requireNonNull(ALL.get(code)).meaning())
                .toList();
        if (meanings.size() < 2) {
            return String.join("", meanings);
        }
        return String.join(", ", meanings.subList(0, meanings.size() - 1)) + " and "
                + meanings.get(meanings.size() - 1);
    }

    /** The word that a label with these codes carries: the strongest of theirs. */
    public static SignalWord signal(List<String> codes) {
        return codes.stream()
                .map(code -> requireNonNull(ALL.get(code)).signal())
                .max(Comparator.naturalOrder())
                .orElse(SignalWord.NONE);
    }

    private static Map<String, HazardStatement> load() {
        Map<String, HazardStatement> statements = new LinkedHashMap<>();
        for (Row row : Table.read("hazard-statements.csv").rows()) {
            String kind = row.text("kind");
            if (!List.of("hazard", "precaution").contains(kind)) {
                throw row.fault("kind '%s' must be hazard or precaution".formatted(kind));
            }
            HazardStatement statement = new HazardStatement(
                    row.text("code"),
                    kind.equals("precaution"),
                    SignalWord.named(row.optionalText("signal")),
                    row.text("meaning"),
                    row.source());
            if (statements.put(statement.code(), statement) != null) {
                throw row.fault("code '%s' stands twice".formatted(statement.code()));
            }
        }
        return Collections.unmodifiableMap(statements);
    }
}

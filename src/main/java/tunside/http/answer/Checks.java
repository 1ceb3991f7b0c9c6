package tunside.http.answer;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import tunside.finding.Finding;
import tunside.finding.Outcome;
import tunside.reference.Row;
import tunside.reference.Table;

/** Gives findings their words, from the tables {@code checks-*.csv}. */
public final class Checks {
    /** One table a package; each holds a message for every (code, outcome) that the package can find. */
    private static final List<String> TABLES = List.of(
            "checks-request.csv",
            "checks-water.csv",
            "checks-mash.csv",
            "checks-plan.csv",
            "checks-electrode.csv",
            "checks-reading.csv",
            "checks-dosing.csv",
            "checks-dilution.csv",
            "checks-review.csv");

    private static final Map<String, Map<Outcome, Wording>> WORDINGS = load();

    private Checks() {}

    /** The checks of an answer: that the request is well formed, then every finding in order. */
    public static List<Check> of(List<Finding> findings) {
        List<Check> checks = new ArrayList<>(findings.size() + 1);
        checks.add(of(Finding.of("request.valid", Outcome.PASS, "")));
        findings.forEach(finding -> checks.add(of(finding)));
        return checks;
    }

    /**
     * One finding in words.
     *
     * @throws IllegalStateException if no table words it: a bug
     */
    public static Check of(Finding finding) {
        Wording wording = wording(finding);
        Double observed = number(finding.observed());
        Double expected = number(finding.expected());
        return new Check(
                finding.code(),
                finding.outcome(),
                finding.pointer(),
                wording.message(observed, expected, finding.subject()),
                observed,
                expected,
                wording.source());
    }

    /** Where what a finding checks comes from: the id of a source. */
    public static String source(Finding finding) {
        return wording(finding).source();
    }

    private static Wording wording(Finding finding) {
        Wording wording = WORDINGS.getOrDefault(finding.code(), Map.of()).get(finding.outcome());
        if (wording == null) {
            throw new IllegalStateException(
                    "no checks-*.csv has a message for %s %s".formatted(finding.code(), finding.outcome()));
        }
        return wording;
    }

    private static @Nullable Double number(OptionalDouble value) {
        return value.isPresent() ? Rounded.significant(value.getAsDouble(), 4) : null;
    }

    private static Map<String, Map<Outcome, Wording>> load() {
        Map<String, Map<Outcome, Wording>> wordings = new HashMap<>();
        for (String table : TABLES) {
            for (Row row : Table.read(table).rows()) {
                Outcome outcome = Outcome.valueOf(row.text("outcome").toUpperCase(Locale.ROOT));
                Map<Outcome, Wording> ofCode =
                        wordings.computeIfAbsent(row.text("code"), code -> new EnumMap<>(Outcome.class));
                if (ofCode.put(outcome, Wording.of(row.text("message"), row.source())) != null) {
                    throw row.fault("the same code and outcome stand twice");
                }
            }
        }
        return wordings;
    }
}

package tunside.dosing;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.OptionalDouble;
import tunside.chemistry.Acid;
import tunside.finding.Finding;
import tunside.finding.Outcome;
import tunside.reference.Row;
import tunside.reference.Table;

/**
 * What an acid leaves behind, against what can be tasted.
 *
 * @param anion its name
 * @param mgPerL added to the liquid
 * @param thresholdMgPerL lowest published taste threshold or usual limit, if any is known
 * @param kind what that limit is: {@code taste-threshold} or {@code usual-limit}; empty where none is known
 * @param source id of its publication; empty where none is known
 */
public record AnionTaste(String anion, double mgPerL, OptionalDouble thresholdMgPerL, String kind, String source) {
    private static final Map<String, Limit> LOWEST = load();

    /** The lowest limit of an anion. */
    private record Limit(double mgPerL, String kind, String source) {}

    /**
     * An amount of an acid in a volume.
     *
     * @param millimoles of acid in all its forms
     * @param litres above 0
     */
    public static AnionTaste of(Acid acid, double millimoles, double litres) {
        double mgPerL = millimoles * acid.anionMolarMassGPerMol() / litres;
        Limit lowest = LOWEST.get(acid.anion());
        return lowest == null
                ? new AnionTaste(acid.anion(), mgPerL, OptionalDouble.empty(), "", "")
                : new AnionTaste(acid.anion(), mgPerL, OptionalDouble.of(lowest.mgPerL), lowest.kind, lowest.source);
    }

    private static Map<String, Limit> load() {
        Map<String, Limit> limits = new LinkedHashMap<>();
        for (Row row : Table.read("taste-thresholds.csv").rows()) {
            if (row.optionalNumber("mg_per_l").isPresent()) {
                limits.merge(
                        row.text("anion"),
                        new Limit(row.number("mg_per_l"), row.text("kind"), row.source()),
                        (one, other) -> other.mgPerL < one.mgPerL ? other : one);
            }
        }
        return limits;
    }

    /** Whether it could be tasted. */
    public Finding finding() {
        if (thresholdMgPerL.isEmpty()) {
            return new Finding(
                    "dose.taste", Outcome.NOTE, "", anion, OptionalDouble.of(mgPerL), OptionalDouble.empty());
        }
        Outcome outcome = mgPerL <= thresholdMgPerL.getAsDouble() ? Outcome.PASS : Outcome.CAUTION;
        return Finding.of("dose.taste", outcome, "/acid", mgPerL, thresholdMgPerL.getAsDouble())
                .about(anion);
    }
}

package tunside.dosing;

import java.util.ArrayList;
import java.util.List;
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
    private static final List<Row> ROWS = Table.read("taste-thresholds.csv").rows();

    /**
     * An amount of an acid in a volume.
     *
     * @param millimoles of acid in all its forms
     * @param litres above 0
     */
    public static AnionTaste of(Acid acid, double millimoles, double litres) {
        double mgPerL = millimoles * acid.anionMolarMassGPerMol() / litres;
        List<Row> known = new ArrayList<>();
        for (Row row : ROWS) {
            if (row.text("anion").equals(acid.anion())
                    && row.optionalNumber("mg_per_l").isPresent()) {
                known.add(row);
            }
        }
        Row lowest = null;
        for (Row row : known) {
            if (lowest == null || row.number("mg_per_l") < lowest.number("mg_per_l")) {
                lowest = row;
            }
        }
        if (lowest == null) {
            return new AnionTaste(acid.anion(), mgPerL, OptionalDouble.empty(), "", "");
        }
        return new AnionTaste(
                acid.anion(),
                mgPerL,
                OptionalDouble.of(lowest.number("mg_per_l")),
                lowest.text("kind"),
                lowest.source());
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

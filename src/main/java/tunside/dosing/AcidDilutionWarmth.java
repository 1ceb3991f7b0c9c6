package tunside.dosing;

import static java.util.Objects.requireNonNull;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import tunside.chemistry.Acid;
import tunside.chemistry.Acids;
import tunside.reference.Row;
import tunside.reference.Table;

/** How warm an acid gets when it is diluted, from {@code acid-dilution-warmth.csv}. */
public enum AcidDilutionWarmth {
    /** Known well enough to be computed. */
    COMPUTED,
    /** A few kelvin to about ten; no figure. */
    MILD,
    /** Hardly felt. */
    NEAR_NONE;

    private static final Map<String, AcidDilutionWarmth> ALL = load();

    /** Of an acid. */
    public static AcidDilutionWarmth of(Acid acid) {
        return requireNonNull(ALL.get(acid.id()));
    }

    private static Map<String, AcidDilutionWarmth> load() {
        Map<String, AcidDilutionWarmth> warmths = new LinkedHashMap<>();
        Table table = Table.read("acid-dilution-warmth.csv");
        for (Row row : table.rows()) {
            AcidDilutionWarmth warmth =
                    valueOf(row.text("warmth").toUpperCase(Locale.ROOT).replace('-', '_'));
            if ((warmth == COMPUTED) != row.optionalNumber("half_width_k").isPresent()) {
                throw row.fault("half_width_k belongs to a computed warmth, and to no other");
            }
            warmths.put(Acids.get(row.text("acid")).id(), warmth);
        }
        if (!warmths.keySet().equals(Acids.all().keySet())) {
            throw table.rows().get(0).fault("every acid of acids.csv must stand here");
        }
        return warmths;
    }
}

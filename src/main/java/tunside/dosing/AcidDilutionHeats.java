package tunside.dosing;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import tunside.chemistry.Acid;
import tunside.chemistry.Acids;
import tunside.reference.Row;
import tunside.reference.Table;

/**
 * Heat of dilution and heat capacity of an acid against its strength, from {@code acid-dilution-heats.csv} and {@code
 * acid-heat-capacities.csv}; linear between their rows.
 */
final class AcidDilutionHeats {
    private static final Map<String, AcidDilutionHeats> ALL = load();

    private record Point(double percent, double value) {}

    private final double molarMassGPerMol;
    private final double halfWidthKelvin;
    private final List<Point> heatsKjPerMol = new ArrayList<>();
    private final List<Point> capacitiesJPerGK = new ArrayList<>();

    private AcidDilutionHeats(double molarMassGPerMol, double halfWidthKelvin) {
        this.molarMassGPerMol = molarMassGPerMol;
        this.halfWidthKelvin = halfWidthKelvin;
    }

    /** Of an acid whose warming can be computed. */
    static Optional<AcidDilutionHeats> of(Acid acid) {
        return Optional.ofNullable(ALL.get(acid.id()));
    }

    /** How far a computed temperature may be off, either way, K. */
    double halfWidthKelvin() {
        return halfWidthKelvin;
    }

    /**
     * Heat that one gram of solution gives off when it is diluted without end.
     *
     * @param percent strength, %w/w, not beyond the table
     * @return kJ per gram of the solution
     */
    double heatKjPerGram(double percent) {
        return percent / 100 / molarMassGPerMol * at(heatsKjPerMol, percent);
    }

    /** Heat capacity, J/(g K). */
    double capacityJPerGK(double percent) {
        return at(capacitiesJPerGK, percent);
    }

    private static double at(List<Point> points, double percent) {
        if (!(percent >= 0 && percent <= points.get(points.size() - 1).percent)) {
            throw new IllegalArgumentException("strength (%s %%w/w) is beyond the table of heats".formatted(percent));
        }
        int upper = 1;
        while (points.get(upper).percent < percent) {
            upper++;
        }
        Point low = points.get(upper - 1);
        Point high = points.get(upper);
        return low.value + (percent - low.percent) / (high.percent - low.percent) * (high.value - low.value);
    }

    private static Map<String, AcidDilutionHeats> load() {
        Map<String, AcidDilutionHeats> all = new LinkedHashMap<>();
        for (Row row : Table.read("acid-dilution-warmth.csv").rows()) {
            OptionalDouble halfWidth = row.optionalNumber("half_width_k");
            if (halfWidth.isPresent()) {
                Acid acid = Acids.get(row.text("acid"));
                all.put(acid.id(), new AcidDilutionHeats(acid.molarMassGPerMol(), halfWidth.getAsDouble()));
            }
        }
        for (Row row : Table.read("acid-dilution-heats.csv").rows()) {
            add(row, requireNonNull(all.get(row.text("acid"))).heatsKjPerMol, row.number("heat_kj_per_mol", 0, 200));
        }
        for (Row row : Table.read("acid-heat-capacities.csv").rows()) {
            add(
                    row,
                    requireNonNull(all.get(row.text("acid"))).capacitiesJPerGK,
                    row.number("heat_capacity_j_per_g_k", 1, 5));
        }
        return all;
    }

    private static void add(Row row, List<Point> points, double value) {
        double percent = row.number("mass_percent", 0, 100);
        if (points.isEmpty() ? percent != 0 : percent <= points.get(points.size() - 1).percent) {
            throw row.fault("strengths of an acid must rise from 0");
        }
        points.add(new Point(percent, value));
    }
}

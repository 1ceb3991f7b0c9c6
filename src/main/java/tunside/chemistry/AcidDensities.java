package tunside.chemistry;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tunside.reference.Row;
import tunside.reference.Table;

/** Density of acids at 20 degC against strength, from {@code acid-densities.csv}; linear between its rows. */
final class AcidDensities {
    /**
     * A density.
     *
     * @param massPercent strength it belongs to
     * @param gPerMl value
     * @param uncertaintyGPerMl standard uncertainty
     * @param source id of the publication
     */
    record Density(double massPercent, double gPerMl, double uncertaintyGPerMl, String source) {}

    private static final Map<String, List<Density>> ALL = load();
    private static final Map<String, Density> SOLIDS = loadSolids();

    private AcidDensities() {}

    /** Density of the crystals of an acid that is sold as a powder of 100 %w/w. */
    static Optional<Density> ofPowder(Acid acid) {
        return Optional.ofNullable(SOLIDS.get(acid.id()));
    }

    /** Strongest solution that the table reaches, %w/w; 0 where it does not know the acid. */
    static double strongestPercent(Acid acid) {
        List<Density> rows = ALL.get(acid.id());
        return rows == null ? 0 : rows.get(rows.size() - 1).massPercent;
    }

    /**
     * Density at a strength; the uncertainty and the source are those of the less certain neighbour.
     *
     * @throws IllegalArgumentException beyond the acid's table
     */
    static Density at(Acid acid, double massPercent) {
        double strongest = strongestPercent(acid);
        if (strongest == 0) {
            throw new IllegalArgumentException(
                    "%s is known as a powder of 100 %%w/w only; its solutions have no density here, given was %s %%w/w"
                            .formatted(acid.name(), massPercent));
        }
        if (!(massPercent >= 0 && massPercent <= strongest)) {
            throw new IllegalArgumentException(
                    "%s must be from 0 to %s %%w/w, where its density is known, but is %s %%w/w"
                            .formatted(acid.name(), strongest, massPercent));
        }
        List<Density> rows = requireNonNull(ALL.get(acid.id()));
        int upper = 1;
        while (rows.get(upper).massPercent < massPercent) {
            upper++;
        }
        Density low = rows.get(upper - 1);
        Density high = rows.get(upper);
        double share = (massPercent - low.massPercent) / (high.massPercent - low.massPercent);
        Density lessCertain = high.uncertaintyGPerMl >= low.uncertaintyGPerMl ? high : low;
        return new Density(
                massPercent,
                low.gPerMl + share * (high.gPerMl - low.gPerMl),
                lessCertain.uncertaintyGPerMl,
                lessCertain.source);
    }

    private static Map<String, List<Density>> load() {
        Map<String, List<Density>> all = new LinkedHashMap<>();
        for (Row row : Table.read("acid-densities.csv").rows()) {
            List<Density> rows = all.computeIfAbsent(Acids.get(row.text("acid")).id(), id -> new ArrayList<>());
            Density density = new Density(
                    row.number("mass_percent", 0, 100),
                    row.number("density_g_per_mL", 0.9, 2),
                    row.number("u_g_per_mL", 0, 0.1),
                    row.source());
            if (!rows.isEmpty() && rows.get(rows.size() - 1).massPercent >= density.massPercent) {
                throw row.fault("strengths of an acid must rise");
            }
            rows.add(density);
        }
        return all;
    }

    private static Map<String, Density> loadSolids() {
        Map<String, Density> solids = new LinkedHashMap<>();
        for (Row row : Table.read("acid-solids.csv").rows()) {
            solids.put(
                    Acids.get(row.text("acid")).id(),
                    new Density(
                            100,
                            row.number("density_g_per_mL", 0.9, 3),
                            row.number("u_g_per_mL", 0, 0.1),
                            row.source()));
        }
        return solids;
    }
}

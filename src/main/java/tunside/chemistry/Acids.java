package tunside.chemistry;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tunside.reference.Row;
import tunside.reference.Table;

/** The acids of {@code acids.csv} with the constants of {@code acid-constants.csv}, and carbonic acid. */
public final class Acids {
    /** Carbonic acid: CO2(aq) with H2CO3, bicarbonate, carbonate (PLUMMER-BUSENBERG-1982). */
    public static final AcidSystem CARBONIC =
            new AcidSystem("carbonic", 0, List.of(CarbonateConstants::pK1, CarbonateConstants::pK2));

    private static final Map<String, Acid> ALL = load();

    private Acids() {}

    /** By id, in the table's order. */
    public static Map<String, Acid> all() {
        return ALL;
    }

    /** The acid with this id, if the service knows it. */
    public static Optional<Acid> find(String id) {
        return Optional.ofNullable(ALL.get(id));
    }

    /** The acid with this id, which must exist: for the code's own constants. */
    public static Acid get(String id) {
        return find(id).orElseThrow(() -> new IllegalArgumentException("no acid '%s'".formatted(id)));
    }

    private static Map<String, Acid> load() {
        Map<String, List<DissociationConstant>> steps = new LinkedHashMap<>();
        for (Row row : Table.read("acid-constants.csv").rows()) {
            List<DissociationConstant> ofSystem = steps.computeIfAbsent(row.text("system"), s -> new ArrayList<>());
            if (ofSystem.size() + 1 != row.number("step", 1, 9)) {
                throw row.fault("steps of a system must stand in order 1, 2, 3");
            }
            ofSystem.add(constant(row));
        }
        Map<String, Acid> acids = new LinkedHashMap<>();
        for (Row row : Table.read("acids.csv").rows()) {
            String id = row.text("acid");
            AcidSystem system =
                    new AcidSystem(id, (int) row.number("top_charge", -1, 0), steps.getOrDefault(id, List.of()));
            acids.put(
                    id,
                    new Acid(
                            id,
                            row.text("name"),
                            row.number("molar_mass_g_per_mol", 20, 400),
                            (int) row.number("protons", 1, 3),
                            system,
                            row.text("anion"),
                            row.number("anion_molar_mass_g_per_mol", 20, 400),
                            row.text("e_number"),
                            row.source()));
        }
        return Collections.unmodifiableMap(acids);
    }

    private static DissociationConstant constant(Row row) {
        double a1 = row.number("a1");
        double a2 = row.number("a2");
        double a3 = row.number("a3");
        return switch (row.text("form")) {
            case "temperature-fit" -> DissociationConstant.temperatureFit(a1, a2, a3);
            case "enthalpy" -> DissociationConstant.enthalpy(a1, a2, a3);
            default -> throw row.fault("form must be temperature-fit or enthalpy");
        };
    }
}

package tunside.chemistry;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tunside.quantity.Temperature;
import tunside.reference.Row;
import tunside.reference.Table;

/** Association of calcium and magnesium with the anions of weak acids, from {@code metal-complexes.csv}. */
final class MetalComplexes {
    /**
     * One complex.
     *
     * @param metal calcium or magnesium
     * @param protonsLost how many protons the binding form has lost, counted from the most protonated one
     * @param constant of metal + that form = complex, zero ionic strength, kg/mol
     */
    record Complex(Ion metal, int protonsLost, double constant) {}

    private static final Map<String, List<Complex>> BY_SYSTEM = load();

    private MetalComplexes() {}

    /** Those of one acid; none for most. */
    static List<Complex> of(AcidSystem system) {
        return BY_SYSTEM.getOrDefault(system.id(), List.of());
    }

    private static Map<String, List<Complex>> load() {
        Temperature reference = new Temperature(25);
        Map<String, List<Complex>> complexes = new LinkedHashMap<>();
        for (Row row : Table.read("metal-complexes.csv").rows()) {
            AcidSystem system = Acids.get(row.text("system")).system();
            int steps = system.steps().size();
            int protons = (int) row.number("ligand_protons", 0, steps);
            double logK = row.number("log_k", 0, 20);
            if (row.text("reference").equals("anion")) {
                for (int step = steps; step > steps - protons; step--) {
                    logK -= system.pK(step, reference);
                }
            } else if (!row.text("reference").equals("ligand")) {
                throw row.fault("reference must be ligand or anion");
            }
            complexes
                    .computeIfAbsent(system.id(), id -> new ArrayList<>())
                    .add(new Complex(Ion.ofSymbol(row.text("metal")), steps - protons, Math.pow(10, logK)));
        }
        return complexes;
    }
}

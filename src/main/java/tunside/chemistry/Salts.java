package tunside.chemistry;

import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tunside.reference.Row;
import tunside.reference.Table;

/** The salts and bases of {@code salts.csv}. */
public final class Salts {
    private static final List<Ion> IONS =
            List.of(Ion.CALCIUM, Ion.MAGNESIUM, Ion.SODIUM, Ion.POTASSIUM, Ion.CHLORIDE, Ion.SULFATE);

    private static final Map<String, Salt> ALL = load();

    private Salts() {}

    /** By id, in the table's order. */
    public static Map<String, Salt> all() {
        return ALL;
    }

    /** The salt with this id, if the service knows it. */
    public static Optional<Salt> find(String id) {
        return Optional.ofNullable(ALL.get(id));
    }

    /** The salt with this id, which must exist: for the code's own constants. */
    public static Salt get(String id) {
        return find(id).orElseThrow(() -> new IllegalArgumentException("no salt '%s'".formatted(id)));
    }

    private static Map<String, Salt> load() {
        Map<String, Salt> salts = new LinkedHashMap<>();
        for (Row row : Table.read("salts.csv").rows()) {
            Map<Ion, Double> ions = new EnumMap<>(Ion.class);
            for (Ion ion : IONS) {
                double moles = row.number(ion.symbol(), 0, 4);
                if (moles > 0) {
                    ions.put(ion, moles);
                }
            }
            Salt salt = new Salt(
                    row.text("salt"),
                    row.text("name"),
                    row.text("formula"),
                    row.number("molar_mass_g_per_mol", 20, 400),
                    ions,
                    row.number("carbon", 0, 2),
                    row.text("solubility"),
                    row.source());
            if (salts.put(salt.id(), salt) != null) {
                throw row.fault("salt '%s' stands twice".formatted(salt.id()));
            }
        }
        return Collections.unmodifiableMap(salts);
    }
}

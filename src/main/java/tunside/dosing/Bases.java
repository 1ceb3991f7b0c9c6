package tunside.dosing;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import tunside.chemistry.Salt;
import tunside.chemistry.Salts;
import tunside.reference.Row;
import tunside.reference.Table;

/** The bases of {@code dosing-bases.csv} that may raise a pH. */
public final class Bases {
    /** Base taken where the caller names none. */
    public static final String USUAL = "sodium-bicarbonate";

    private static final Map<String, Base> ALL = load();

    private Bases() {}

    /**
     * A base.
     *
     * @param salt what it is
     * @param care whether it acts fast, only in part, or hurts, so that its use needs a caution
     * @param forLiquor whether it dissolves in water that holds no acid
     * @param source id of the publication
     */
    public record Base(Salt salt, boolean care, boolean forLiquor, String source) {}

    /** By id, in the table's order. */
    public static Map<String, Base> all() {
        return ALL;
    }

    /** The base with this id, if it may be dosed. */
    public static Optional<Base> find(String id) {
        return Optional.ofNullable(ALL.get(id));
    }

    /** Whether a salt is chalk, which dissolves only in part. */
    static boolean isChalk(Salt salt) {
        return salt.id().equals("calcium-carbonate");
    }

    private static Map<String, Base> load() {
        Map<String, Base> bases = new LinkedHashMap<>();
        for (Row row : Table.read("dosing-bases.csv").rows()) {
            Salt salt = Salts.get(row.text("base"));
            bases.put(
                    salt.id(),
                    new Base(salt, row.number("care", 0, 1) == 1, row.number("liquor", 0, 1) == 1, row.source()));
        }
        return Collections.unmodifiableMap(bases);
    }
}

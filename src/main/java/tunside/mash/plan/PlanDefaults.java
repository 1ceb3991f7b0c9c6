package tunside.mash.plan;

import java.util.LinkedHashMap;
import java.util.Map;
import tunside.chemistry.AcidProduct;
import tunside.chemistry.Salt;
import tunside.reference.Row;
import tunside.reference.Table;

/** How much of a supply a plan may use where no limit is stated, from {@code plan-defaults.csv}. */
public final class PlanDefaults {
    private static final Map<String, Double> ALL = load();

    private PlanDefaults() {}

    /** Most of an acid, mL, or g of a powder. @param litres of liquor */
    public static double most(AcidProduct product, double litres) {
        double perUnit = new PlanSupply.OfAcid("", product, 1, 0).millimolesPerUnit();
        return ALL.get("acid") * litres / perUnit;
    }

    /** Most of a salt or base, g. @param litres of liquor */
    public static double most(Salt salt, double litres) {
        return ALL.get(PlanSupply.OfSalt.isBase(salt) ? "base" : "salt") * litres;
    }

    /** Most acidulated malt, share of the grist. */
    public static double mostAcidulatedShare() {
        return ALL.get("acidulated-malt") / 100;
    }

    /** Most diluting water, share of the liquor. */
    public static double mostDilutionShare() {
        return ALL.get("diluting-water") / 100;
    }

    private static Map<String, Double> load() {
        Map<String, Double> most = new LinkedHashMap<>();
        for (Row row : Table.read("plan-defaults.csv").rows()) {
            most.put(row.text("supply"), row.number("most", 0, 100));
        }
        return most;
    }
}

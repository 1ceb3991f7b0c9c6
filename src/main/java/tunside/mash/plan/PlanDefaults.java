package tunside.mash.plan;

import tunside.chemistry.AcidProduct;
import tunside.chemistry.Salt;
import tunside.reference.NamedValues;
import tunside.reference.Table;

/** How much of a supply a plan may use where no limit is stated, from {@code plan-defaults.csv}. */
public final class PlanDefaults {
    private static final NamedValues ALL = Table.readNamed("plan-defaults.csv", "supply", "most", 0, 100);

    private PlanDefaults() {}

    /**
     * Most of an acid, mL, or g of a powder.
     *
     * @param litres of liquor
     */
    public static double most(AcidProduct product, double litres) {
        double perUnit = new PlanSupply.OfAcid("", product, 1, 0).millimolesPerUnit();
        return ALL.of("acid") * litres / perUnit;
    }

    /**
     * Most of a salt or base, g.
     *
     * @param litres of liquor
     */
    public static double most(Salt salt, double litres) {
        return ALL.of(PlanSupply.OfSalt.isBase(salt) ? "base" : "salt") * litres;
    }

    /** Most acidulated malt, share of the grist. */
    public static double mostAcidulatedShare() {
        return ALL.of("acidulated-malt") / 100;
    }

    /** Most diluting water, share of the liquor. */
    public static double mostDilutionShare() {
        return ALL.of("diluting-water") / 100;
    }
}

package tunside.chemistry;

import tunside.reference.Row;
import tunside.reference.Table;

/**
 * Lactic acid above 30 %w/w is partly bound in chains of itself; only free acid groups titrate at once, the rest comes
 * back on hydrolysis (PLA-2ND, VU-2005).
 */
public final class LacticOligomers {
    private static final double MOLAR_MASS = 90.078;
    private static final double WATER_MOLAR_MASS = 18.015;
    private static final double EQUILIBRIUM_CONSTANT = value("equilibrium_constant");
    private static final double LOWEST_PERCENT = value("lowest_percent");

    private LacticOligomers() {}

    /** Strength up to which all acid groups titrate at once, %w/w. */
    public static double lowestPercent() {
        return LOWEST_PERCENT;
    }

    /**
     * Share of the acid groups that are free at equilibrium: {@code 1 - p} with {@code p (w + n p) = K n (1 - p)^2}, n
     * moles of total acid, w moles of water: the positive root of a quadratic equation.
     *
     * @param massPercent total acid as the label counts it, 0 to 100 %w/w (exclusive of 0)
     * @return 0 to 1; 0.834 at 88 %
     */
    public static double freeAcidShare(double massPercent) {
        double acid = massPercent / MOLAR_MASS;
        double water = (100 - massPercent) / WATER_MOLAR_MASS;
        double twice = 2 * EQUILIBRIUM_CONSTANT * acid;
        double linear = water + twice;
        double bound = twice / (linear + Math.sqrt(linear * linear + 2 * (1 - EQUILIBRIUM_CONSTANT) * acid * twice));
        return 1 - bound;
    }

    private static double value(String quantity) {
        for (Row row : Table.read("lactic-oligomers.csv").rows()) {
            if (row.text("quantity").equals(quantity)) {
                return row.number("value");
            }
        }
        throw new IllegalStateException("lactic-oligomers.csv has no " + quantity);
    }
}

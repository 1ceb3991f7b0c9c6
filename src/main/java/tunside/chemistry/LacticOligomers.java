package tunside.chemistry;

import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;
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
    private static final int MOST_EVALUATIONS = 100;

    private LacticOligomers() {}

    /** Strength up to which all acid groups titrate at once, %w/w. */
    public static double lowestPercent() {
        return LOWEST_PERCENT;
    }

    /**
     * Share of the acid groups that are free at equilibrium: {@code 1 - p} with {@code p (w + n p) = K n (1 - p)^2}, n
     * moles of total acid, w moles of water.
     *
     * @param massPercent total acid as the label counts it, 0 to 100 %w/w (exclusive of 0)
     * @return 0 to 1; 0.834 at 88 %
     */
    public static double freeAcidShare(double massPercent) {
        double acid = massPercent / MOLAR_MASS;
        double water = (100 - massPercent) / WATER_MOLAR_MASS;
        double bound = new BracketingNthOrderBrentSolver(1e-14, 1e-12, 1e-14, 5)
                .solve(
                        MOST_EVALUATIONS,
                        p -> p * (water + acid * p) - EQUILIBRIUM_CONSTANT * acid * (1 - p) * (1 - p),
                        0,
                        1);
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

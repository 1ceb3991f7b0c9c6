package tunside.chemistry;

import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;
import tunside.quantity.Strength;

/**
 * An acid as bought: in water, at a strength.
 *
 * @param acid what it is
 * @param labelled strength as the caller stated it
 * @param massPercent % w/w
 * @param densityGPerMl at 20 degC
 * @param densityUncertaintyGPerMl standard uncertainty of the density
 * @param densitySource id of the publication
 * @param molPerKg per kilogram of product, total acid
 * @param solid whether it is a powder, to be weighed and not measured by volume
 * @param directShare share of the total acid groups that give their proton at once: 1, or less for lactic acid above
 *     30 % w/w, whose oligomers come back only on hydrolysis
 */
public record AcidProduct(
        Acid acid,
        Strength labelled,
        double massPercent,
        double densityGPerMl,
        double densityUncertaintyGPerMl,
        String densitySource,
        double molPerKg,
        boolean solid,
        double directShare) {

    private static final int MOST_EVALUATIONS = 100;

    public AcidProduct {
        require("strength (%w/w)", massPercent, Double.MIN_VALUE, 100);
        require("density (g/mL)", densityGPerMl, 0.9, 3);
        require("uncertainty of the density (g/mL)", densityUncertaintyGPerMl, 0, 1);
        require("acid (mol/kg)", molPerKg, Double.MIN_VALUE, 100);
        require("share that acts at once", directShare, Double.MIN_VALUE, 1);
    }

    private static void require(String what, double value, double low, double high) {
        if (!(value >= low && value <= high)) {
            throw new IllegalArgumentException("%s must be from %s to %s but is %s".formatted(what, low, high, value));
        }
    }

    /**
     * Reads the label.
     *
     * @throws IllegalArgumentException if the strength is beyond what the acid's density table reaches
     */
    public static AcidProduct of(Acid acid, Strength strength) {
        double massPercent = switch (strength.unit()) {
            case PERCENT_W_W -> strength.value();
            case MOL_PER_L -> massPercent(acid, strength, strength.value());
            case EQ_PER_L -> massPercent(acid, strength, strength.value() / acid.protons());
        };
        boolean solid = massPercent == 100 && AcidDensities.ofPowder(acid).isPresent();
        AcidDensities.Density density =
                solid ? AcidDensities.ofPowder(acid).get() : AcidDensities.at(acid, massPercent);
        boolean oligomers = acid.id().equals("lactic") && massPercent > LacticOligomers.lowestPercent();
        return new AcidProduct(
                acid,
                strength,
                massPercent,
                density.gPerMl(),
                density.uncertaintyGPerMl(),
                density.source(),
                10 * massPercent / acid.molarMassGPerMol(),
                solid,
                oligomers ? LacticOligomers.freeAcidShare(massPercent) : 1);
    }

    /** Inverts {@code c = 10 w rho(w) / M}, which rises with w wherever the table goes. */
    private static double massPercent(Acid acid, Strength strength, double molPerL) {
        double strongest = AcidDensities.strongestPercent(acid);
        double most = strongest == 0 ? 0 : molPerL(acid, strongest);
        if (!(molPerL <= most)) {
            throw new IllegalArgumentException(
                    "%s of %s %s is beyond its density table, which ends at %s %%w/w, %s mol/L"
                            .formatted(
                                    acid.name(),
                                    strength.value(),
                                    strength.unit().symbol(),
                                    strongest,
                                    Math.floor(100 * most) / 100));
        }
        return new BracketingNthOrderBrentSolver(1e-14, 1e-11, 1e-14, 5)
                .solve(MOST_EVALUATIONS, percent -> molPerL(acid, percent) - molPerL, 0, strongest);
    }

    private static double molPerL(Acid acid, double massPercent) {
        return 10 * massPercent * AcidDensities.at(acid, massPercent).gPerMl() / acid.molarMassGPerMol();
    }

    /** Total acid, mol per litre at 20 degC. */
    public double molPerL() {
        return molPerKg * densityGPerMl;
    }

    /**
     * Acid that acts while the liquid stands, mol per kilogram. Oligomers of strong lactic acid give their protons back on
     * hydrolysis, in hours to days, faster when hot (VU-2005); between none and all of them act: the middle is taken.
     */
    public double actingMolPerKg() {
        return molPerKg * (1 + directShare) / 2;
    }

    /** Standard uncertainty of that, as a rectangular distribution from none to all of the oligomers, mol/kg. */
    public double actingUncertaintyMolPerKg() {
        return molPerKg * (1 - directShare) / Math.sqrt(12);
    }
}

package tunside.dosing;

import tunside.chemistry.AcidProduct;
import tunside.quantity.Strength;
import tunside.quantity.StrengthUnit;

/**
 * How well a strength is known, from the label, the measuring and the density.
 *
 * @param percentUncertainty standard uncertainty, %w/w
 * @param molPerLUncertainty standard uncertainty, mol/L
 */
public record AcidDilutionStrength(double percentUncertainty, double molPerLUncertainty) {
    /** Step in strength over which the density's slope is taken, as a share. */
    private static final double STEP = 1e-3;

    /** Of an acid as bought; its label counts in its own unit. */
    public static AcidDilutionStrength ofLabel(AcidProduct product, double labelShare) {
        double density = product.densityUncertaintyGPerMl() / product.densityGPerMl();
        double slope = molarSlope(product);
        return product.labelled().unit() == StrengthUnit.PERCENT_W_W
                ? of(product, labelShare, Math.hypot(slope * labelShare, density))
                : of(product, Math.hypot(labelShare, density) / slope, labelShare);
    }

    /** Of what is made, when acid and water are weighed. */
    public static AcidDilutionStrength whenWeighed(AcidDilution dilution, double labelShare) {
        double scales = AcidDilutionLimits.of("scales_relative");
        return made(dilution, labelShare, Math.hypot(scales, scales));
    }

    /** Of what is made, when acid and water are measured by volume. */
    public static AcidDilutionStrength whenMeasured(AcidDilution dilution, double labelShare) {
        double cylinder = AcidDilutionLimits.of("measuring_cylinder_relative");
        double density =
                dilution.strong().densityUncertaintyGPerMl() / dilution.strong().densityGPerMl();
        return made(dilution, labelShare, Math.hypot(Math.hypot(cylinder, density), cylinder));
    }

    private static AcidDilutionStrength made(AcidDilution dilution, double labelShare, double ratioShare) {
        AcidProduct weak = dilution.weak();
        double strong = ofLabel(dilution.strong(), labelShare).percentUncertainty
                / dilution.strong().massPercent();
        double water = dilution.waterMass().grams() / dilution.weakGrams();
        double percent = Math.hypot(strong, water * ratioShare);
        double density = weak.densityUncertaintyGPerMl() / weak.densityGPerMl();
        return of(weak, percent, Math.hypot(molarSlope(weak) * percent, density));
    }

    private static AcidDilutionStrength of(AcidProduct product, double percentShare, double molarShare) {
        return new AcidDilutionStrength(product.massPercent() * percentShare, product.molPerL() * molarShare);
    }

    /** By how much more than the strength in %w/w the one in mol/L rises: the density rises too. */
    private static double molarSlope(AcidProduct product) {
        if (product.solid()) {
            return 1;
        }
        AcidProduct weaker = AcidProduct.of(product.acid(), Strength.percent(product.massPercent() * (1 - STEP)));
        return Math.log(product.molPerL() / weaker.molPerL()) / -Math.log1p(-STEP);
    }
}

package tunside.chemistry;

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
        double directShare) {

    /**
     * Reads the label.
     *
     * @throws IllegalArgumentException if the strength is beyond what the acid's density table reaches
     */
    public static AcidProduct of(Acid acid, Strength strength) {
        throw new UnsupportedOperationException();
    }

    /** Total acid, mol per litre at 20 degC. */
    public double molPerL() {
        return molPerKg * densityGPerMl;
    }
}

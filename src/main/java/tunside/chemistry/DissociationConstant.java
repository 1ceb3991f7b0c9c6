package tunside.chemistry;

import tunside.quantity.Temperature;

/** One dissociation step of an acid, at zero ionic strength. */
@FunctionalInterface
public interface DissociationConstant {
    /** Gas constant, J/(mol K) (CODATA-2018). */
    double GAS_CONSTANT = 8.31446261815324;

    /** The negative decimal logarithm of the constant. */
    double pK(Temperature temperature);

    /** {@code pK = a1/T - a2 + a3 T}, T in kelvin (ROBINSON-STOKES). Usual validity 0 to 60 degC. */
    static DissociationConstant temperatureFit(double a1, double a2, double a3) {
        return temperature -> a1 / temperature.kelvin() - a2 + a3 * temperature.kelvin();
    }

    /**
     * Integrated van't Hoff equation with a constant heat capacity (GOLDBERG-2002).
     *
     * @param pk25 pK at 25 degC
     * @param enthalpyKJPerMol at 25 degC
     * @param heatCapacityJPerMolK constant over the range
     */
    static DissociationConstant enthalpy(double pk25, double enthalpyKJPerMol, double heatCapacityJPerMolK) {
        double reference = 298.15;
        double ln10 = Math.log(10);
        return temperature -> {
            double t = temperature.kelvin();
            double lnRatio = -1000 * enthalpyKJPerMol / GAS_CONSTANT * (1 / t - 1 / reference)
                    + heatCapacityJPerMolK / GAS_CONSTANT * (reference / t - 1 + Math.log(t / reference));
            return pk25 - lnRatio / ln10;
        };
    }
}

package tunside.water;

import java.util.OptionalDouble;
import tunside.chemistry.Activity;
import tunside.chemistry.CarbonateConstants;
import tunside.quantity.Temperature;

/**
 * Bicarbonate and carbonate as a report lists them instead of an alkalinity.
 *
 * @param bicarbonateMmolPerL HCO3-, not negative
 * @param carbonateMmolPerL CO3--, not negative
 */
public record CarbonateIons(double bicarbonateMmolPerL, double carbonateMmolPerL) {
    public CarbonateIons {
        WaterReport.require("HCO3 (mmol/L)", bicarbonateMmolPerL, 0, 5000);
        WaterReport.require("CO3 (mmol/L)", carbonateMmolPerL, 0, 5000);
    }

    /** Alkalinity that the two make up, hydroxide left out, mEq/L. */
    public double alkalinityMeqPerL() {
        return bicarbonateMmolPerL + 2 * carbonateMmolPerL;
    }

    /**
     * Alkalinity with hydroxide less hydrogen ion at a pH, mEq/L.
     *
     * @param ionicStrength mol/kg; 0 leaves activities out
     */
    public double alkalinityMeqPerL(double ph, Temperature temperature, double ionicStrength) {
        double hydrogen = Math.pow(10, -ph);
        double hydroxide = Math.pow(10, ph - CarbonateConstants.pKWater(temperature));
        return alkalinityMeqPerL() + 1000 * (hydroxide - hydrogen) / gamma(1, temperature, ionicStrength);
    }

    /** The pH at which both stand beside each other; empty where one is missing. */
    public OptionalDouble ph(Temperature temperature, double ionicStrength) {
        if (bicarbonateMmolPerL == 0 || carbonateMmolPerL == 0) {
            return OptionalDouble.empty();
        }
        double ratio = carbonateMmolPerL
                * gamma(2, temperature, ionicStrength)
                / (bicarbonateMmolPerL * gamma(1, temperature, ionicStrength));
        return OptionalDouble.of(CarbonateConstants.pK2(temperature) + Math.log10(ratio));
    }

    private static double gamma(int charge, Temperature temperature, double ionicStrength) {
        return Math.pow(
                10, -Activity.debyeHuckelSlope(temperature) * charge * charge * Activity.daviesFunction(ionicStrength));
    }
}

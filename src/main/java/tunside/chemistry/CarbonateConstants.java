package tunside.chemistry;

import tunside.quantity.Temperature;

/**
 * The carbonate system and water at zero ionic strength, 0 to 100 degC; T in kelvin in every formula.
 *
 * <p>PLUMMER-BUSENBERG-1982 for K1, K2, KH and calcite, PHREEQC-3 for Kw. Accuracy 0.004 in pK1 and pK2 against the
 * cell measurements of Harned and co-workers.
 */
public final class CarbonateConstants {
    private CarbonateConstants() {}

    /** CO2(aq) + H2O = HCO3- + H+; 6.352 at 25 degC. */
    public static double pK1(Temperature temperature) {
        double t = temperature.kelvin();
        return 356.3094 + 0.06091964 * t - 21834.37 / t - 126.8339 * Math.log10(t) + 1684915 / (t * t);
    }

    /** HCO3- = CO3-- + H+; 10.329 at 25 degC. */
    public static double pK2(Temperature temperature) {
        double t = temperature.kelvin();
        return 107.8871 + 0.03252849 * t - 5151.79 / t - 38.92561 * Math.log10(t) + 563713.9 / (t * t);
    }

    /** Henry's constant of CO2, mol/(kg atm); 1.468 at 25 degC. */
    public static double pKHenry(Temperature temperature) {
        double t = temperature.kelvin();
        return -108.3865 - 0.01985076 * t + 6919.53 / t + 40.45154 * Math.log10(t) - 669365 / (t * t);
    }

    /** Solubility product of calcite; 8.480 at 25 degC. */
    public static double pKCalcite(Temperature temperature) {
        double t = temperature.kelvin();
        return 171.9065 + 0.077993 * t - 2839.319 / t - 71.595 * Math.log10(t);
    }

    /** Ion product of water; 13.995 at 25 degC. */
    public static double pKWater(Temperature temperature) {
        double t = temperature.kelvin();
        return -293.29227 - 0.1360833 * t + 10576.913 / t + 123.73158 * Math.log10(t) + 6.996455e-5 * t * t;
    }
}

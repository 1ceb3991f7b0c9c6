package tunside.chemistry;

import tunside.quantity.Temperature;

/** Activity coefficients of ions in dilute solution. */
public final class Activity {
    private Activity() {}

    /**
     * Debye-Hueckel slope A on the molal scale, from the permittivity of water (MALMBERG-MARYOTT-1956) and its density
     * (KELL-1975): {@code 1.82483e6 sqrt(rho) / (eps T)^1.5}.
     *
     * @param temperature 0 to 100 degC
     * @return (kg/mol)^0.5; 0.511 at 25 degC
     */
    public static double debyeHuckelSlope(Temperature temperature) {
        double c = temperature.celsius();
        double permittivity = 87.740 - 0.40008 * c + 9.398e-4 * c * c - 1.410e-6 * c * c * c;
        double thermal = permittivity * temperature.kelvin();
        return 1.82483e6 * Math.sqrt(waterDensity(temperature) / thermal) / thermal;
    }

    /**
     * Davies' function f(I); the logarithm of an ion's activity coefficient is {@code -A z^2 f(I)} (DAVIES-1962).
     *
     * @param ionicStrength mol/kg, 0 to 0.5
     */
    public static double daviesFunction(double ionicStrength) {
        double root = Math.sqrt(ionicStrength);
        return root / (1 + root) - 0.3 * ionicStrength;
    }

    /** Derivative of Davies' function, kg/mol; at ionic strengths above 0. */
    static double daviesSlope(double ionicStrength) {
        double root = Math.sqrt(ionicStrength);
        return 0.5 / (root * (1 + root) * (1 + root)) - 0.3;
    }

    /** Density of water at 1 atm, g/mL, 0 to 100 degC (KELL-1975). */
    public static double waterDensity(Temperature temperature) {
        double c = temperature.celsius();
        double numerator = 999.83952
                + c * (16.945176 + c * (-7.9870401e-3 + c * (-46.170461e-6 + c * (105.56302e-9 - c * 280.54253e-12))));
        return numerator / (1 + 16.879850e-3 * c) / 1000;
    }
}

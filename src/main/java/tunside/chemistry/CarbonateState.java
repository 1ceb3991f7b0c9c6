package tunside.chemistry;

import tunside.quantity.Temperature;

/**
 * The carbonate species of a water at its pH, with what saturation and degassing ask for.
 *
 * @param ph activity scale
 * @param ionicStrength mol/kg
 * @param carbonDioxideMolPerKg CO2(aq) with H2CO3
 * @param bicarbonateMolPerKg HCO3-
 * @param carbonateMolPerKg CO3--
 * @param freeCalciumMolPerKg Ca++ that no weak acid holds
 * @param gammaOfTwo activity coefficient of a doubly charged ion (DAVIES-1962)
 * @param partialPressureAtm of the CO2 that the water would be in equilibrium with
 */
public record CarbonateState(
        double ph,
        double ionicStrength,
        double carbonDioxideMolPerKg,
        double bicarbonateMolPerKg,
        double carbonateMolPerKg,
        double freeCalciumMolPerKg,
        double gammaOfTwo,
        double partialPressureAtm) {

    /** CO2 in outdoor air, atm: 10^-3.38, 417 ppm (DERIVED). */
    public static final double AIR_PARTIAL_PRESSURE_ATM = Math.pow(10, -3.38);

    /** The state that the water takes in a closed vessel. */
    public static CarbonateState closed(Solution solution, Temperature temperature) {
        Speciation speciation = new Speciation(solution, temperature);
        return of(solution, speciation, ChargeBalance.neutral(speciation), temperature);
    }

    /** The state of the water held at a pH by an unnamed strong acid or base. */
    public static CarbonateState at(Solution solution, Temperature temperature, double ph) {
        Speciation speciation = new Speciation(solution, temperature);
        return of(solution, speciation, ChargeBalance.at(speciation, ph), temperature);
    }

    /**
     * The water after its carbon dioxide has come to equilibrium with a gas: the same but for its carbon.
     *
     * @param partialPressureAtm of CO2, above 0, at most 10
     * @throws IllegalArgumentException beyond these, or beyond pH -1 to 15
     */
    public static Solution open(Solution solution, Temperature temperature, double partialPressureAtm) {
        requirePressure(partialPressureAtm);
        double carbonDioxide = partialPressureAtm * henry(temperature);
        Speciation speciation = new Speciation(solution, Solution.WATER, temperature, carbonDioxide);
        ChargeBalance.neutral(speciation);
        return solution.withCarbon(carbonDioxide / speciation.carbonShare(0));
    }

    /** The state that the water takes beside a gas; as {@link #closed} of what {@link #open} gives, in half the time. */
    public static CarbonateState beside(Solution solution, Temperature temperature, double partialPressureAtm) {
        requirePressure(partialPressureAtm);
        double carbonDioxide = partialPressureAtm * henry(temperature);
        Speciation speciation = new Speciation(solution, Solution.WATER, temperature, carbonDioxide);
        Equilibrium equilibrium = ChargeBalance.neutral(speciation);
        return of(solution.withCarbon(carbonDioxide / speciation.carbonShare(0)), speciation, equilibrium, temperature);
    }

    private static void requirePressure(double partialPressureAtm) {
        if (!(partialPressureAtm > 0 && partialPressureAtm <= 10)) {
            throw new IllegalArgumentException(
                    "partial pressure of CO2 (%s atm) must be above 0 and at most 10".formatted(partialPressureAtm));
        }
    }

    private static CarbonateState of(
            Solution solution, Speciation speciation, Equilibrium equilibrium, Temperature temperature) {
        double carbon = solution.carbon();
        double carbonDioxide = carbon > 0 ? carbon * speciation.carbonShare(0) : 0;
        return new CarbonateState(
                equilibrium.ph(),
                equilibrium.ionicStrength(),
                carbonDioxide,
                carbon > 0 ? carbon * speciation.carbonShare(1) : 0,
                carbon > 0 ? carbon * speciation.carbonShare(2) : 0,
                speciation.free(Ion.CALCIUM, solution),
                speciation.gamma(2),
                carbonDioxide / henry(temperature));
    }

    private static double henry(Temperature temperature) {
        return Math.pow(10, -CarbonateConstants.pKHenry(temperature));
    }

    /** Ion activity product of calcite, {@code log10(a(Ca++) a(CO3--))}; minus infinity without either. */
    public double logCalciteActivityProduct() {
        return Math.log10(freeCalciumMolPerKg * carbonateMolPerKg * gammaOfTwo * gammaOfTwo);
    }
}

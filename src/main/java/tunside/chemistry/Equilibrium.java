package tunside.chemistry;

/**
 * The state of a solution at a pH.
 *
 * @param ph activity scale
 * @param ionicStrength mol/kg
 * @param netCharge mol/kg; zero where the pH is the solution's own
 */
public record Equilibrium(double ph, double ionicStrength, double netCharge) {}

package tunside.chemistry;

import java.util.OptionalDouble;
import tunside.quantity.Temperature;

/**
 * Electroneutrality of a water: the pH at which all charges sum to zero, with Davies activities and the complexes of
 * calcium and magnesium.
 */
public final class ChargeBalance {
    private ChargeBalance() {}

    /**
     * State of the solution held at a pH by an unnamed strong acid or base; {@link Equilibrium#netCharge} is the charge
     * that this acid or base would have to cancel. It falls monotonically as the pH rises.
     *
     * @param ph 0 to 14
     */
    public static Equilibrium at(Solution solution, Temperature temperature, double ph) {
        throw new UnsupportedOperationException();
    }

    /**
     * The pH that the solution takes in a closed vessel.
     *
     * <p>Bracketed in pH 0 to 14 to 1e-9; always converges, since the net charge falls monotonically.
     *
     * @throws IllegalArgumentException if the solution is beyond pH 0 to 14
     */
    public static Equilibrium solve(Solution solution, Temperature temperature) {
        throw new UnsupportedOperationException();
    }

    /**
     * How much of something brings the solution to a pH in a closed vessel.
     *
     * @param perMole what one mole of it adds
     * @param targetPh 0 to 14
     * @param largest most that may be added, mol/kg
     * @return mol/kg, or empty if the target lies on the wrong side or beyond {@code largest}
     */
    public static OptionalDouble dose(
            Solution solution, Solution perMole, double targetPh, Temperature temperature, double largest) {
        throw new UnsupportedOperationException();
    }
}

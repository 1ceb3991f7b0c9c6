package tunside.chemistry;

import java.util.OptionalDouble;
import org.hipparchus.analysis.UnivariateFunction;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;
import tunside.quantity.Temperature;

/**
 * Electroneutrality of a water: the pH at which all charges sum to zero, with Davies activities and the complexes of
 * calcium and magnesium.
 */
public final class ChargeBalance {
    private static final double LOWEST_PH = -1;
    private static final double HIGHEST_PH = 15;
    private static final int MOST_EVALUATIONS = 200;
    private static final int ORDER = 5;

    private ChargeBalance() {}

    /**
     * State of the solution held at a pH by an unnamed strong acid or base; {@link Equilibrium#netCharge} is the charge
     * that this acid or base would have to cancel. It falls monotonically as the pH rises.
     *
     * @param ph -1 to 15
     */
    public static Equilibrium at(Solution solution, Temperature temperature, double ph) {
        Speciation speciation = new Speciation(solution, temperature);
        double netCharge = speciation.netCharge(ph);
        return new Equilibrium(ph, speciation.ionicStrength(), netCharge);
    }

    /**
     * The pH that the solution takes in a closed vessel.
     *
     * <p>Bracketed in pH -1 to 15 to 1e-9, in at most 200 evaluations; always converges, since the net charge falls
     * monotonically.
     *
     * @throws IllegalArgumentException if the solution is beyond pH -1 to 15
     */
    public static Equilibrium solve(Solution solution, Temperature temperature) {
        Speciation speciation = new Speciation(solution, temperature);
        double atLowest = speciation.netCharge(LOWEST_PH);
        double atHighest = speciation.netCharge(HIGHEST_PH);
        if (!(atLowest >= 0 && atHighest <= 0)) {
            throw new IllegalArgumentException("the water has no pH from %s to %s: its charge is out by %s mol/kg"
                    .formatted(LOWEST_PH, HIGHEST_PH, atLowest < 0 ? atLowest : atHighest));
        }
        double ph = root(speciation::netCharge, LOWEST_PH, HIGHEST_PH, 1e-9);
        double netCharge = speciation.netCharge(ph);
        return new Equilibrium(ph, speciation.ionicStrength(), netCharge);
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
        UnivariateFunction excess =
                amount -> new Speciation(solution.plus(perMole.scaled(amount)), temperature).netCharge(targetPh);
        double without = excess.value(0);
        double with = excess.value(largest);
        if (without == 0) {
            return OptionalDouble.of(0);
        }
        boolean acid = new Speciation(perMole, temperature).netCharge(targetPh) < 0;
        if ((acid && without < 0) || (!acid && without > 0) || without * with > 0) {
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(root(excess, 0, largest, 1e-12));
    }

    private static double root(UnivariateFunction function, double low, double high, double accuracy) {
        return new BracketingNthOrderBrentSolver(1e-14, accuracy, 1e-16, ORDER)
                .solve(MOST_EVALUATIONS, function, low, high);
    }
}

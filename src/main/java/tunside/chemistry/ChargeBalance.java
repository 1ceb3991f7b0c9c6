package tunside.chemistry;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.hipparchus.exception.LocalizedCoreFormats;
import org.hipparchus.exception.MathIllegalStateException;
import tunside.quantity.Temperature;

/**
 * Electroneutrality of a water: the pH at which all charges sum to zero, with Davies activities and the complexes of
 * calcium and magnesium.
 */
public final class ChargeBalance {
    /** Range of pH that is solved for. */
    static final double LOWEST_PH = -1;

    static final double HIGHEST_PH = 15;

    private static final int MOST_EVALUATIONS = 200;
    private static final double DOSE_ACCURACY = 1e-14;
    private static final double NEAR = 1e-6; // from so near a secant comes within 1e-12
    private static final double FIRST_STEP = 1.5;
    private static final double NEXT_STEP = 4;
    private static final Solution CARBON = Solution.ofCarbon(1);

    private ChargeBalance() {}

    /**
     * State of the solution held at a pH by an unnamed strong acid or base; {@link Equilibrium#netCharge} is the charge
     * that this acid or base would have to cancel. It falls monotonically as the pH rises. The ions of that acid or base
     * count in the ionic strength, so that the solution with so much less base has this pH.
     *
     * @param ph -1 to 15
     */
    public static Equilibrium at(Solution solution, Temperature temperature, double ph) {
        return at(new Speciation(solution, temperature), ph);
    }

    /**
     * The pH that the solution takes in a closed vessel.
     *
     * <p>To 1e-10, by Newton's method on all balances at once; there is one such pH, since the net charge falls
     * monotonically.
     *
     * @throws IllegalArgumentException if the solution is beyond pH -1 to 15
     */
    public static Equilibrium solve(Solution solution, Temperature temperature) {
        return neutral(new Speciation(solution, temperature));
    }

    /**
     * How much of something brings the solution to a pH in a closed vessel.
     *
     * @param perMole what one mole of it adds
     * @param targetPh -1 to 15
     * @param largest most that may be added, mol/kg, finite, not negative
     * @return mol/kg to 1e-14, or empty if the target lies on the wrong side or beyond {@code largest}
     */
    public static OptionalDouble dose(
            Solution solution, Solution perMole, double targetPh, Temperature temperature, double largest) {
        requirePh(targetPh);
        if (!(largest >= 0 && largest < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "largest dose (%s mol/kg) must be finite and not negative".formatted(largest));
        }
        Speciation speciation = new Speciation(solution, perMole, temperature);
        return root(added -> speciation.netCharge(targetPh, added), largest);
    }

    /**
     * A solution with the carbon and the strong base that give it a pH and let it take so much strong acid on its way to a
     * lower one. What it takes depends on its carbon alone: the ions that hold it at a pH count in its ionic strength, not the
     * base that it came with.
     *
     * @param solution whose carbon and base are not known yet
     * @param fromPh -1 to 15
     * @param toPh -1 to 15, below {@code fromPh}
     * @param acid mol/kg
     * @param largest most carbon, mol/kg, finite, not negative
     * @return with carbon to 1e-14 mol/kg, or empty where even no carbon takes more, or the largest less
     */
    public static Optional<Solution> titrated(
            Solution solution, double fromPh, double toPh, double acid, Temperature temperature, double largest) {
        requirePh(fromPh);
        requirePh(toPh);
        Solution ions = solution.withCarbon(0);
        Speciation before = new Speciation(ions, CARBON, temperature);
        Speciation after = new Speciation(before);
        OptionalDouble found =
                root(carbon -> after.netCharge(toPh, carbon) - before.netCharge(fromPh, carbon) - acid, largest);
        if (found.isEmpty()) {
            return Optional.empty();
        }
        double carbon = found.getAsDouble();
        return Optional.of(
                new Solution(ions.ions(), carbon, ions.acids(), ions.base() - before.netCharge(fromPh, carbon)));
    }

    /**
     * Where a function of an amount, monotonic and almost straight with a slope of about one, is zero: steps outward from
     * zero until the sign changes, and goes on with secants between the last two, halving what encloses the amount where a
     * secant leads outside.
     */
    private static OptionalDouble root(DoubleUnaryOperator function, double largest) {
        double low = 0;
        double before = 0;
        double atBefore = function.applyAsDouble(0);
        double sign = Math.signum(atBefore);
        double last = Math.min(largest, Math.abs(atBefore) * FIRST_STEP);
        double atLast = function.applyAsDouble(last);
        while (sign * Math.signum(atLast) > 0) {
            if (last >= largest) {
                return OptionalDouble.empty();
            }
            low = last;
            before = last;
            atBefore = atLast;
            last = Math.min(largest, last * NEXT_STEP);
            atLast = function.applyAsDouble(last);
        }
        double high = last;
        for (int i = 0; i < MOST_EVALUATIONS; i++) {
            double next = last - atLast * (last - before) / (atLast - atBefore);
            if (!(next >= low && next <= high)) {
                next = (low + high) / 2;
            }
            if (Math.abs(next - last) <= DOSE_ACCURACY + NEAR * next) {
                return OptionalDouble.of(next);
            }
            before = last;
            atBefore = atLast;
            last = next;
            atLast = function.applyAsDouble(next);
            if (sign * atLast > 0) {
                low = next;
            } else {
                high = next;
            }
        }
        throw new MathIllegalStateException(LocalizedCoreFormats.MAX_COUNT_EXCEEDED, MOST_EVALUATIONS);
    }

    /** The state in which all charges sum to zero. */
    static Equilibrium neutral(Speciation speciation) {
        double ph = speciation.neutralPh();
        if (!(ph >= LOWEST_PH && ph <= HIGHEST_PH)) {
            throw new IllegalArgumentException("the water has no pH from %s to %s: its charge is out by %s mol/kg"
                    .formatted(LOWEST_PH, HIGHEST_PH, speciation.netCharge(ph < LOWEST_PH ? LOWEST_PH : HIGHEST_PH)));
        }
        return new Equilibrium(ph, speciation.ionicStrength(), speciation.netCharge());
    }

    /** The state at a pH; leaves the speciation there. */
    static Equilibrium at(Speciation speciation, double ph) {
        requirePh(ph);
        double netCharge = speciation.netCharge(ph);
        return new Equilibrium(ph, speciation.ionicStrength(), netCharge);
    }

    private static void requirePh(double ph) {
        if (!(ph >= LOWEST_PH && ph <= HIGHEST_PH)) {
            throw new IllegalArgumentException("pH (%s) must be from %s to %s".formatted(ph, LOWEST_PH, HIGHEST_PH));
        }
    }
}

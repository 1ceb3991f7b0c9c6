package tunside.water;

import java.util.Map;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Function;
import org.hipparchus.analysis.UnivariateFunction;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;
import tunside.chemistry.CarbonateConstants;
import tunside.chemistry.CarbonateState;
import tunside.chemistry.Ion;
import tunside.chemistry.IonAmounts;
import tunside.chemistry.Solution;
import tunside.quantity.Temperature;

/**
 * How much calcite a water drops or dissolves on the way to a saturation index. Each mole takes one mole of calcium, one of
 * carbon and two equivalents of alkalinity with it.
 *
 * <p>The index of the free ions falls as calcite is taken out, so the root is bracketed and solved to 1e-11 mol/kg. At the
 * root the CaCO3 pairs are known from the index alone; the weaker pairs are found by repeating it until it moves by less than 1e-9 mol/kg, about four times.
 */
final class CalciteEquilibrium {
    private static final int MOST_EVALUATIONS = 200;
    private static final int MOST_ROUNDS = 20;
    private static final double SETTLED_MOL_PER_KG = 1e-9;
    private static final double NEAR_MOL_PER_KG = 2e-5;
    private static final double ACCURACY_MOL_PER_KG = 1e-11;
    private static final double ALL_BUT = 1 - 1e-9;
    private static final Solution CALCITE = Solution.of(Ion.CALCIUM, 1).plus(Solution.ofCarbon(1));

    private final Temperature temperature;
    private final double targetIndex;

    /**
     * @param temperature 0 to 100 degC
     * @param targetIndex saturation index that the water comes to
     */
    CalciteEquilibrium(Temperature temperature, double targetIndex) {
        this.temperature = temperature;
        this.targetIndex = targetIndex;
    }

    /** Moles per kg that drop in a closed vessel; zero where the index is not reached. */
    double dropped(Solution solution) {
        return dropped(solution, this::closed);
    }

    /** Moles per kg that drop while the carbon dioxide is in equilibrium with a gas. */
    double droppedOpen(Solution solution, double partialPressureAtm) {
        // carbon comes and goes with the gas, so any amount may stand for it
        return dropped(
                solution.withCarbon(solution.carbon() + solution.ion(Ion.CALCIUM)),
                water -> CarbonateState.beside(water, temperature, partialPressureAtm));
    }

    private double dropped(Solution solution, Function<Solution, CarbonateState> gas) {
        IonPairs.Held held = IonPairs.Held.NONE;
        double taken = 0;
        for (int round = 0; round < MOST_ROUNDS; round++) {
            Solution free = held.removedFrom(solution);
            double most = Math.min(free.ion(Ion.CALCIUM), free.carbon());
            if (most <= 0 || index(gas.apply(free)) <= targetIndex) {
                return 0;
            }
            double before = taken;
            taken = root(amount -> index(gas.apply(without(free, amount))), 0, most * ALL_BUT, before);
            if (Math.abs(taken - before) < SETTLED_MOL_PER_KG) {
                break;
            }
            held = held(without(free, taken), gas);
        }
        return Math.max(0, taken - pairs());
    }

    /** Moles per kg of at most {@code most} that dissolve in a closed vessel. */
    double dissolved(Solution solution, double most) {
        return dissolved(solution, most, this::closed);
    }

    /** The same open to a gas. */
    double dissolvedOpen(Solution solution, double most, double partialPressureAtm) {
        return dissolved(solution, most, water -> CarbonateState.beside(water, temperature, partialPressureAtm));
    }

    private double dissolved(Solution solution, double most, Function<Solution, CarbonateState> gas) {
        if (most <= 0) {
            return 0;
        }
        IonPairs.Held held = IonPairs.Held.NONE;
        double given = 0;
        for (int round = 0; round < MOST_ROUNDS; round++) {
            Solution free = held.removedFrom(solution);
            DoubleUnaryOperator indexAfter = amount -> index(gas.apply(without(free, -amount)));
            double trace = most * (1 - ALL_BUT);
            if (indexAfter.applyAsDouble(trace) >= targetIndex) {
                return 0;
            }
            double before = given;
            given = indexAfter.applyAsDouble(most) <= targetIndex ? most : root(indexAfter, trace, most, before);
            if (Math.abs(given - before) < SETTLED_MOL_PER_KG) {
                break;
            }
            held = held(without(free, -given), gas);
        }
        return Math.min(most, given + pairs());
    }

    /** Saturation index of a water, its ion pairs taken off. */
    static double index(Solution solution, Temperature temperature) {
        double pK = CarbonateConstants.pKCalcite(temperature);
        double most = Math.min(solution.ion(Ion.CALCIUM), solution.carbon());
        if (most <= 0) {
            return Double.NEGATIVE_INFINITY;
        }
        CalciteEquilibrium any = new CalciteEquilibrium(temperature, 0);
        IonPairs.Held held = IonPairs.Held.NONE;
        double paired = 0;
        for (int round = 0; round < MOST_ROUNDS; round++) {
            Solution free = held.removedFrom(solution);
            double before = paired;
            double room = Math.min(free.ion(Ion.CALCIUM), free.carbon()) * ALL_BUT;
            // rises from below zero where nothing is paired to above where all is
            paired = new BracketingNthOrderBrentSolver(1e-9, ACCURACY_MOL_PER_KG, 1e-15, 5)
                    .solve(
                            MOST_EVALUATIONS,
                            amount -> amount
                                    - IonPairs.calciumCarbonate(
                                            Math.pow(10, any.index(any.closed(without(free, amount))) - pK),
                                            temperature),
                            0,
                            room);
            held = any.held(without(free, paired), any::closed);
            if (Math.abs(paired - before) < SETTLED_MOL_PER_KG) {
                break;
            }
        }
        return any.index(any.closed(without(held.removedFrom(solution), paired)));
    }

    /** CaCO3 pairs at the target. */
    private double pairs() {
        return IonPairs.calciumCarbonate(
                Math.pow(10, targetIndex - CarbonateConstants.pKCalcite(temperature)), temperature);
    }

    private IonPairs.Held held(Solution free, Function<Solution, CarbonateState> gas) {
        return IonPairs.Held.of(free, gas.apply(free), temperature);
    }

    private CarbonateState closed(Solution free) {
        return CarbonateState.closed(free, temperature);
    }

    /** The solution less so much calcite; negative: more. */
    static Solution without(Solution solution, double molPerKg) {
        if (molPerKg < 0) {
            return solution.plus(CALCITE.scaled(-molPerKg));
        }
        Map<Ion, Double> ions = IonAmounts.of(solution.ions()).with(Ion.CALCIUM, solution.ion(Ion.CALCIUM) - molPerKg);
        return new Solution(ions, solution.carbon() - molPerKg, solution.acids(), solution.base());
    }

    private double index(CarbonateState ofFreeIons) {
        return ofFreeIons.logCalciteActivityProduct() + CarbonateConstants.pKCalcite(temperature);
    }

    /** The root between two ends, looked for around a guess first. */
    private double root(DoubleUnaryOperator index, double low, double high, double guess) {
        UnivariateFunction excess = amount -> index.applyAsDouble(amount) - targetIndex;
        double from = Math.max(low, guess - NEAR_MOL_PER_KG);
        double to = Math.min(high, guess + NEAR_MOL_PER_KG);
        boolean near = guess > low && guess < high && excess.value(from) * excess.value(to) <= 0;
        return new BracketingNthOrderBrentSolver(1e-9, ACCURACY_MOL_PER_KG, 1e-12, 5)
                .solve(MOST_EVALUATIONS, excess, near ? from : low, near ? to : high);
    }
}

package tunside.water;

import java.util.EnumMap;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;
import tunside.chemistry.CarbonateState;
import tunside.chemistry.Ion;
import tunside.chemistry.Solution;
import tunside.quantity.Temperature;

/**
 * How much calcite a water drops or dissolves on the way to a saturation index. Each mole takes one mole of calcium, one of
 * carbon and two equivalents of alkalinity with it.
 *
 * <p>The saturation index falls as calcite is taken out, so the root is bracketed and solved to 1e-13 mol/kg.
 */
final class CalciteEquilibrium {
    private static final int MOST_EVALUATIONS = 200;
    private static final double ALL_BUT = 1 - 1e-9;
    private static final Solution CALCITE = Solution.of(Ion.CALCIUM, 1).plus(Solution.ofCarbon(1));

    private final Temperature temperature;
    private final double targetIndex;

    /** @param temperature 0 to 100 degC @param targetIndex saturation index that the water comes to */
    CalciteEquilibrium(Temperature temperature, double targetIndex) {
        this.temperature = temperature;
        this.targetIndex = targetIndex;
    }

    /** Moles per kg that drop in a closed vessel; zero where the index is not reached. */
    double dropped(Solution solution) {
        return dropped(
                solution,
                Math.min(solution.ion(Ion.CALCIUM), solution.carbon()),
                amount -> index(without(solution, amount)));
    }

    /** Moles per kg that drop while the carbon dioxide is in equilibrium with a gas. */
    double droppedOpen(Solution solution, double partialPressureAtm) {
        return dropped(
                solution,
                solution.ion(Ion.CALCIUM),
                amount -> index(
                        CarbonateState.open(without(solution.withCarbon(1), amount), temperature, partialPressureAtm)));
    }

    private double dropped(Solution solution, double most, DoubleUnaryOperator indexAfter) {
        if (most <= 0 || indexAfter.applyAsDouble(0) <= targetIndex) {
            return 0;
        }
        return root(indexAfter, 0, most * ALL_BUT);
    }

    /** Moles per kg of at most {@code most} that dissolve in a closed vessel. */
    double dissolved(Solution solution, double most) {
        if (most <= 0 || index(without(solution, -most)) <= targetIndex) {
            return Math.max(0, most);
        }
        double trace = most * 1e-9;
        return index(without(solution, -trace)) >= targetIndex
                ? 0
                : root(amount -> index(without(solution, -amount)), trace, most);
    }

    /** The same open to a gas. */
    double dissolvedOpen(Solution solution, double most, double partialPressureAtm) {
        DoubleUnaryOperator index =
                amount -> index(CarbonateState.open(without(solution, -amount), temperature, partialPressureAtm));
        return index.applyAsDouble(most) <= targetIndex ? most : root(index, most * 1e-9, most);
    }

    /** The solution less so much calcite; negative: more. */
    static Solution without(Solution solution, double molPerKg) {
        return molPerKg < 0
                ? solution.plus(CALCITE.scaled(-molPerKg))
                : new Solution(
                        less(solution, molPerKg), solution.carbon() - molPerKg, solution.acids(), solution.base());
    }

    private static Map<Ion, Double> less(Solution solution, double molPerKg) {
        Map<Ion, Double> ions = new EnumMap<>(Ion.class);
        ions.putAll(solution.ions());
        ions.merge(Ion.CALCIUM, -molPerKg, Double::sum);
        return ions;
    }

    private double index(Solution solution) {
        return Saturation.calcite(solution, temperature);
    }

    private double root(DoubleUnaryOperator index, double low, double high) {
        return new BracketingNthOrderBrentSolver(1e-12, 1e-13, 1e-12, 5)
                .solve(MOST_EVALUATIONS, amount -> index.applyAsDouble(amount) - targetIndex, low, high);
    }
}

package tunside.water;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import tunside.chemistry.CarbonateState;
import tunside.chemistry.Ion;
import tunside.chemistry.Solution;
import tunside.finding.Finding;
import tunside.finding.Outcome;
import tunside.quantity.Temperature;
import tunside.quantity.Volume;

/**
 * The liquor is boiled, left to settle and drawn off its deposit: bicarbonate of calcium falls out as calcite, that of
 * magnesium and sodium stays. The equilibrium at 100 degC (PLUMMER-BUSENBERG-1982) is an end that no boil quite reaches.
 *
 * @param supersaturation saturation index of calcite that is left, 0 to 2; absent: 0.7, and no less alkalinity than
 *     {@code residualMeqPerL}
 * @param residualMeqPerL alkalinity that a boil is taken to leave where calcium is ample, 0 to 10; absent: as practice
 *     has it where no supersaturation is stated, else none
 * @param carbonDioxideAtm partial pressure down to which the carbon dioxide is driven off; absent: it stays, as under a
 *     lid
 */
public record Boiling(OptionalDouble supersaturation, OptionalDouble residualMeqPerL, OptionalDouble carbonDioxideAtm)
        implements Treatment {
    private static final Temperature BOIL = new Temperature(100);

    public Boiling {
        supersaturation.ifPresent(value -> WaterReport.require("supersaturation", value, 0, 2));
        residualMeqPerL.ifPresent(value -> WaterReport.require("residual alkalinity (mEq/L)", value, 0, 10));
        carbonDioxideAtm.ifPresent(value -> WaterReport.require("carbon dioxide (atm)", value, 1e-6, 1));
    }

    /**
     * A boil.
     *
     * @param lidOn whether the carbon dioxide stays; else it is driven off down to that of the air (PHREEQC-3)
     */
    public static Boiling of(OptionalDouble supersaturation, OptionalDouble residualMeqPerL, boolean lidOn) {
        return new Boiling(
                supersaturation,
                residualMeqPerL,
                lidOn ? OptionalDouble.empty() : OptionalDouble.of(CarbonateState.AIR_PARTIAL_PRESSURE_ATM));
    }

    /** A good boil by common practice. */
    public static Boiling usual() {
        return of(OptionalDouble.empty(), OptionalDouble.empty(), false);
    }

    @Override
    public TreatmentStep applied(Water water, Volume volume) {
        Solution before = water.solution();
        double equilibrium = equilibriumMolPerKg(before);
        double practice = Math.max(0, (before.fixedCharge() - residual() / 1000) / 2);
        double dropped = Math.min(Math.min(equilibrium, practice), before.carbon());
        Solution left = CalciteEquilibrium.without(before, dropped);
        Solution after = carbonDioxideAtm.isPresent() && before.carbon() > 0
                ? withLess(CarbonateState.open(left, BOIL, carbonDioxideAtm.getAsDouble()), left)
                : left;
        List<Finding> findings = new ArrayList<>();
        findings.add(Finding.of(
                "water.boiling",
                dropped > 0 ? Outcome.PASS : Outcome.CAUTION,
                "",
                2000 * dropped,
                1000 * left.fixedCharge()));
        if (dropped > 0 && left.ion(Ion.CALCIUM) < before.ion(Ion.CALCIUM) * WaterModel.value("boil-calcium-spent")) {
            findings.add(Finding.of("water.boiling-calcium", Outcome.CAUTION, "", 1000 * left.fixedCharge(), 0));
        }
        Water cooled = Water.closed(after, water.temperature(), water.samplePh(), List.of());
        return new TreatmentStep("boiling", "", 0, cooled, dropped, findings);
    }

    /** Boiling takes carbon dioxide out; it never puts any in. */
    private static Solution withLess(Solution open, Solution left) {
        return open.carbon() < left.carbon() ? open : left;
    }

    private double equilibriumMolPerKg(Solution solution) {
        CalciteEquilibrium calcite =
                new CalciteEquilibrium(BOIL, supersaturation.orElse(WaterModel.value("boil-supersaturation")));
        return carbonDioxideAtm.isPresent()
                ? calcite.droppedOpen(solution, carbonDioxideAtm.getAsDouble())
                : calcite.dropped(solution);
    }

    /** Alkalinity that stays by practice, mEq/L. */
    private double residual() {
        return residualMeqPerL.orElse(
                supersaturation.isPresent() ? Double.NEGATIVE_INFINITY : WaterModel.value("boil-residual-alkalinity"));
    }

    /** Less chalk falls out; and the water holds or takes back some carbon dioxide while it cools. */
    @Override
    public List<Treatment> varied() {
        double index = supersaturation.orElse(WaterModel.value("boil-supersaturation"))
                + WaterModel.value("boil-supersaturation-uncertainty");
        double residual = residual() * (1 + WaterModel.value("boil-residual-relative"));
        Treatment less = new Boiling(
                OptionalDouble.of(Math.min(2, index)),
                residual == Double.NEGATIVE_INFINITY ? residualMeqPerL : OptionalDouble.of(Math.min(10, residual)),
                carbonDioxideAtm);
        if (carbonDioxideAtm.isEmpty()) {
            return List.of(less);
        }
        double held = carbonDioxideAtm.getAsDouble() * WaterModel.value("boil-carbon-dioxide-held");
        return List.of(less, new Boiling(supersaturation, residualMeqPerL, OptionalDouble.of(Math.min(1, held))));
    }
}

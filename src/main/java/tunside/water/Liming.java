package tunside.water;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tunside.chemistry.CarbonateState;
import tunside.chemistry.Ion;
import tunside.chemistry.Salt;
import tunside.chemistry.Salts;
import tunside.chemistry.Solution;
import tunside.finding.Finding;
import tunside.finding.Outcome;
import tunside.quantity.Mass;
import tunside.quantity.Volume;

/**
 * Slaked lime is stirred into the liquor, which is left to settle and drawn off its deposit: lime turns carbon dioxide and
 * bicarbonate to carbonate, which falls out with the calcium of both.
 *
 * @param mass of calcium hydroxide; absent: the dose of {@link #doseMolPerKg}
 * @param supersaturation saturation index of calcite that is left, 0 to 2; absent: 0.3, and no less alkalinity than
 *     {@code residualMeqPerL}
 * @param residualMeqPerL alkalinity that liming is taken to leave, 0 to 10; absent: as practice has it where no
 *     supersaturation is stated, else none
 */
public record Liming(Optional<Mass> mass, OptionalDouble supersaturation, OptionalDouble residualMeqPerL)
        implements Treatment {
    /** How far a dose may lie above the formula's before it is remarked on. */
    private static final double OVER_DOSE = 1.05;

    private static final double MOST_MMOL_PER_L = 100;

    public Liming {
        supersaturation.ifPresent(value -> WaterReport.require("supersaturation", value, 0, 2));
        residualMeqPerL.ifPresent(value -> WaterReport.require("residual alkalinity (mEq/L)", value, 0, 10));
    }

    /** The dose by the formula. */
    public static Liming usual() {
        return new Liming(Optional.empty(), OptionalDouble.empty(), OptionalDouble.empty());
    }

    /** What is stirred in. */
    public static Salt lime() {
        return Salts.get("calcium-hydroxide");
    }

    /**
     * Dose that leaves least alkalinity: the carbon dioxide and half the alkalinity, but of the latter no more than there is
     * calcium for, mol/kg.
     */
    public static double doseMolPerKg(Water water) {
        double carbonDioxide =
                CarbonateState.closed(water.solution(), water.temperature()).carbonDioxideMolPerKg();
        double half = Math.max(0, water.solution().fixedCharge() / 2);
        return carbonDioxide + Math.min(half, water.solution().ion(Ion.CALCIUM));
    }

    @Override
    public TreatmentStep applied(Water water, Volume volume) {
        Salt lime = lime();
        double formula = doseMolPerKg(water);
        double dose = mass.isPresent() ? mass.get().grams() / lime.molarMassGPerMol() / volume.litres() : formula;
        if (!(1000 * dose <= MOST_MMOL_PER_L)) {
            throw new IllegalArgumentException("lime must be at most %s mmol per litre of liquor but is %s"
                    .formatted(MOST_MMOL_PER_L, 1000 * dose));
        }
        Solution limed = water.solution().plus(lime.perGram().scaled(dose * lime.molarMassGPerMol()));
        double equilibrium = new CalciteEquilibrium(
                        water.temperature(), supersaturation.orElse(WaterModel.value("lime-supersaturation")))
                .dropped(limed);
        double practice = Math.max(0, (limed.fixedCharge() - residual() / 1000) / 2);
        double dropped = Math.min(equilibrium, practice);
        Water after = Water.closed(
                CalciteEquilibrium.without(limed, dropped), water.temperature(), water.samplePh(), List.of());
        return new TreatmentStep(
                "liming",
                lime.id(),
                dose * lime.molarMassGPerMol() * volume.litres(),
                after,
                dropped,
                findings(water, after, dose, formula));
    }

    private static List<Finding> findings(Water before, Water after, double dose, double formula) {
        List<Finding> findings = new ArrayList<>();
        findings.add(Finding.of(
                "water.liming",
                dose > OVER_DOSE * formula ? Outcome.CAUTION : Outcome.PASS,
                "",
                1000 * dose,
                1000 * formula));
        double highest = WaterModel.value("lime-highest-ph");
        findings.add(Finding.of(
                "water.liming-ph", after.ph() > highest ? Outcome.STOP : Outcome.PASS, "", after.ph(), highest));
        if (before.solution().ion(Ion.CALCIUM) < before.solution().fixedCharge() / 2) {
            findings.add(Finding.of(
                    "water.liming-calcium",
                    Outcome.CAUTION,
                    "",
                    2000 * before.solution().ion(Ion.CALCIUM),
                    before.alkalinityMeqPerL()));
        }
        double grams = dose * lime().molarMassGPerMol();
        double most = WaterModel.value("lime-solubility");
        findings.add(
                Finding.of("water.lime-solubility", grams > most ? Outcome.CAUTION : Outcome.PASS, "", grams, most));
        return findings;
    }

    /** Alkalinity that stays by practice, mEq/L. */
    private double residual() {
        return residualMeqPerL.orElse(
                supersaturation.isPresent() ? Double.NEGATIVE_INFINITY : WaterModel.value("lime-residual-alkalinity"));
    }

    /** Less chalk falls out; and a weighed dose is a little smaller. */
    @Override
    public List<Treatment> varied() {
        double index = supersaturation.orElse(WaterModel.value("lime-supersaturation"))
                + WaterModel.value("lime-supersaturation-uncertainty");
        double residual = residual() * (1 + WaterModel.value("lime-residual-relative"));
        List<Treatment> varied = new ArrayList<>();
        varied.add(new Liming(
                mass,
                OptionalDouble.of(Math.min(2, index)),
                residual == Double.NEGATIVE_INFINITY ? residualMeqPerL : OptionalDouble.of(Math.min(10, residual))));
        double less = 1 - WaterModel.value("salt-mass-relative");
        mass.ifPresent(given -> varied.add(
                new Liming(Optional.of(new Mass(given.kilograms() * less)), supersaturation, residualMeqPerL)));
        return varied;
    }
}

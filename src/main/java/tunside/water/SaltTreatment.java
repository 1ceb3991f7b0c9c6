package tunside.water;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tunside.chemistry.Ion;
import tunside.chemistry.IonAmounts;
import tunside.chemistry.Salt;
import tunside.chemistry.Salts;
import tunside.chemistry.Solution;
import tunside.finding.Finding;
import tunside.finding.Outcome;
import tunside.quantity.Mass;
import tunside.quantity.Volume;

/**
 * A salt or base weighed into the liquor. All of it dissolves, but of chalk only what the water can take up in a closed
 * vessel.
 *
 * @param salt which
 * @param mass with its crystal water
 */
public record SaltTreatment(Salt salt, Mass mass) implements Treatment {
    private static final double MOST_MMOL_PER_L = 250;
    private static final double PRESENT = 1e-12;

    /** Which hydrate a bag of calcium chloride is most easily taken for. */
    private static final Map<String, String> MISTAKEN_FOR = Map.of(
            "calcium-chloride",
            "calcium-chloride-dihydrate",
            "calcium-chloride-dihydrate",
            "calcium-chloride",
            "calcium-chloride-hexahydrate",
            "calcium-chloride-dihydrate");

    @Override
    public TreatmentStep applied(Water water, Volume volume) {
        double gramsPerKg = mass.grams() / volume.litres();
        double molPerKg = gramsPerKg / salt.molarMassGPerMol();
        if (!(1000 * molPerKg <= MOST_MMOL_PER_L)) {
            throw new IllegalArgumentException("a salt must be at most %s mmol per litre of liquor but is %s"
                    .formatted(MOST_MMOL_PER_L, 1000 * molPerKg));
        }
        List<Finding> findings = new ArrayList<>();
        double left = 0;
        if (isChalk()) {
            double dissolved = new CalciteEquilibrium(water.temperature(), 0).dissolved(water.solution(), molPerKg);
            left = molPerKg - dissolved;
            findings.add(Finding.of(
                    "water.chalk",
                    left > molPerKg / 100 ? Outcome.CAUTION : Outcome.PASS,
                    "",
                    1000 * dissolved * salt.molarMassGPerMol(),
                    1000 * gramsPerKg));
        }
        Solution treated = water.solution().plus(salt.perGram().scaled(gramsPerKg - left * salt.molarMassGPerMol()));
        if (IonAmounts.amount(salt.ions(), Ion.CALCIUM) > 0 || IonAmounts.amount(salt.ions(), Ion.SULFATE) > 0) {
            gypsum(treated, water, findings);
        }
        hydrate(gramsPerKg, water.solution(), treated).ifPresent(findings::add);
        Water after = Water.closed(treated, water.temperature(), water.samplePh(), List.of());
        return new TreatmentStep("salt", salt.id(), mass.grams(), after, left, findings);
    }

    private static void gypsum(Solution treated, Water water, List<Finding> findings) {
        double index = treated.ion(Ion.CALCIUM) > PRESENT && treated.ion(Ion.SULFATE) > PRESENT
                ? Saturation.gypsum(treated, water.temperature())
                : Double.NEGATIVE_INFINITY;
        if (index > Double.NEGATIVE_INFINITY) {
            findings.add(Finding.of("water.gypsum", index > 0 ? Outcome.CAUTION : Outcome.PASS, "", index, 0));
        }
    }

    /** What the calcium would be if the bag held the hydrate that it is most easily taken for. */
    private Optional<Finding> hydrate(double gramsPerKg, Solution before, Solution treated) {
        return mistakenFor()
                .map(other -> Finding.of(
                                "water.calcium-chloride-hydrate",
                                Outcome.NOTE,
                                "",
                                mgPerL(treated.ion(Ion.CALCIUM)),
                                mgPerL(before.ion(Ion.CALCIUM) + other.perGram().ion(Ion.CALCIUM) * gramsPerKg))
                        .about(other.name()));
    }

    /** The hydrate of calcium chloride that this one is most easily taken for; empty for other salts. */
    public Optional<Salt> mistakenFor() {
        return Optional.ofNullable(MISTAKEN_FOR.get(salt.id())).map(Salts::get);
    }

    private static double mgPerL(double molPerKg) {
        return 1000 * molPerKg * Ion.CALCIUM.molarMassGPerMol();
    }

    private boolean isChalk() {
        return salt.formula().equals("CaCO3");
    }

    @Override
    public List<Treatment> varied() {
        return List.of(
                new SaltTreatment(salt, new Mass(mass.kilograms() * (1 - WaterModel.value("salt-mass-relative")))));
    }
}

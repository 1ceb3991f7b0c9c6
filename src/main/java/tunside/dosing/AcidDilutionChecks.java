package tunside.dosing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tunside.chemistry.Acid;
import tunside.chemistry.AcidProduct;
import tunside.chemistry.NeatAcidLimits;
import tunside.finding.Finding;
import tunside.finding.Outcome;
import tunside.safety.HazardStatements;
import tunside.safety.Hazards;
import tunside.safety.Jurisdiction;
import tunside.safety.SignalWord;

/** What a dilution is checked for. Words stand in {@code checks-dilution.csv}. */
public final class AcidDilutionChecks {
    private AcidDilutionChecks() {}

    /**
     * All checks of a plan, in order.
     *
     * @param labelStated whether the caller stated how good the label is
     * @param jurisdiction where the brewer is, if known; otherwise every one is looked at
     */
    public static List<Finding> of(AcidDilutionPlan plan, boolean labelStated, Optional<Jurisdiction> jurisdiction) {
        AcidDilution dilution = plan.dilution();
        AcidProduct strong = dilution.strong();
        AcidProduct weak = dilution.weak();
        List<Finding> findings = new ArrayList<>();
        findings.add(Finding.of(
                "dilution.weaker", Outcome.PASS, "/wantedStrength", weak.massPercent(), strong.massPercent()));
        double labelPercent = 100 * plan.conditions().labelShare();
        findings.add(Finding.of(
                "dilution.label",
                labelStated ? Outcome.PASS : Outcome.NOTE,
                labelStated ? "/labelUncertaintyPercent" : "/strength",
                labelPercent,
                labelPercent));
        findings.add(heat(plan));
        if (strong.solid()) {
            findings.add(Finding.of("dilution.powder-dissolves", Outcome.NOTE, "/strength"));
        } else {
            findings.add(coldWater(plan));
        }
        if (strong.directShare() < 1) {
            findings.add(Finding.of(
                    "dilution.lactic-oligomers", Outcome.NOTE, "/strength", 100 * strong.directShare(), 100));
        }
        findings.add(density(dilution));
        findings.add(smallAmount(dilution));
        findings.add(hazardMade(weak));
        findings.add(dosable(weak));
        for (Jurisdiction where : Jurisdiction.orAll(jurisdiction)) {
            findings.add(supply("/strength", "the %s in hand", strong, where));
            findings.add(supply("/wantedStrength", "the %s as you make it", weak, where));
        }
        return findings;
    }

    private static Finding coldWater(AcidDilutionPlan plan) {
        double limit = AcidDilutionLimits.coldWaterCelsius();
        double celsius = plan.conditions().water().celsius();
        return Finding.of(
                "dilution.cold-water",
                celsius <= limit ? Outcome.PASS : Outcome.CAUTION,
                "/waterTemperature",
                celsius,
                limit);
    }

    private static Finding heat(AcidDilutionPlan plan) {
        Acid acid = plan.dilution().strong().acid();
        if (plan.inOneGo().isEmpty()) {
            String code = plan.warmth() == AcidDilutionWarmth.MILD ? "dilution.heat-mild" : "dilution.heat-near-none";
            return Finding.of(code, Outcome.NOTE, "/acid").about(acid.name());
        }
        double most = Math.ceil(plan.inOneGo().get().surelyBelowCelsius());
        double limit = plan.conditions().warmLimitCelsius();
        Outcome outcome = most <= limit ? Outcome.PASS : Outcome.CAUTION;
        return Finding.of(
                        "dilution.heat",
                        plan.nearBoilingInOneGo() ? Outcome.STOP : outcome,
                        "/wantedStrength",
                        most,
                        limit)
                .about(acid.name());
    }

    private static Finding density(AcidDilution dilution) {
        AcidProduct strong = dilution.strong();
        double weak = dilution.weak().densityUncertaintyGPerMl();
        double worst = strong.solid() ? weak : Math.max(strong.densityUncertaintyGPerMl(), weak);
        double vague = AcidDilutionLimits.of("vague_density_g_per_ml");
        return Finding.of("dilution.density", worst <= vague ? Outcome.PASS : Outcome.NOTE, "/strength", worst, vague);
    }

    private static Finding smallAmount(AcidDilution dilution) {
        double grams = dilution.strongMass().grams();
        double smallest = AcidDilutionLimits.of("smallest_weighed_grams");
        return Finding.of(
                "dilution.small-amount", grams >= smallest ? Outcome.PASS : Outcome.CAUTION, "", grams, smallest);
    }

    private static Finding hazardMade(AcidProduct weak) {
        List<String> codes = Hazards.of(weak.acid().id(), weak.massPercent());
        SignalWord signal = HazardStatements.signal(codes);
        Outcome outcome = signal == SignalWord.DANGER
                ? Outcome.CAUTION
                : codes.stream().anyMatch(code -> !code.equals("H290")) ? Outcome.NOTE : Outcome.PASS;
        return new Finding(
                "dilution.hazard-made",
                outcome,
                "/wantedStrength",
                weak.acid().name(),
                OptionalDouble.of(weak.massPercent()),
                OptionalDouble.empty());
    }

    private static Finding dosable(AcidProduct weak) {
        OptionalDouble limit = NeatAcidLimits.percent(weak.acid());
        return new Finding(
                "dilution.dosable",
                NeatAcidLimits.reachedBy(weak) ? Outcome.CAUTION : Outcome.PASS,
                "/wantedStrength",
                weak.acid().name(),
                OptionalDouble.of(weak.massPercent()),
                limit);
    }

    private static Finding supply(String pointer, String subject, AcidProduct product, Jurisdiction where) {
        String acid = product.acid().id();
        double percent = product.massPercent();
        List<Hazards.SupplyLimit> passed = where.limitsAbove(acid, percent);
        OptionalDouble lowest = where.limits(acid).stream()
                .mapToDouble(Hazards.SupplyLimit::abovePercent)
                .min();
        return new Finding(
                where == Jurisdiction.GREAT_BRITAIN
                        ? "dilution.supply-great-britain"
                        : "dilution.supply-european-union",
                passed.isEmpty() ? Outcome.PASS : Outcome.CAUTION,
                pointer,
                subject.formatted(product.acid().name()),
                OptionalDouble.of(percent),
                lowest);
    }
}

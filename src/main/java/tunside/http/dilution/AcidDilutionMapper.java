package tunside.http.dilution;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import tunside.chemistry.AcidProduct;
import tunside.dosing.AcidDilution;
import tunside.dosing.AcidDilutionChecks;
import tunside.dosing.AcidDilutionConditions;
import tunside.dosing.AcidDilutionPlan;
import tunside.dosing.AcidDilutionStage;
import tunside.dosing.AcidDilutionStrength;
import tunside.dosing.AcidDilutionWarmth;
import tunside.http.answer.Basis;
import tunside.http.answer.Checks;
import tunside.http.answer.Rounded;
import tunside.http.answer.Safety;
import tunside.http.dilution.AcidDilutionResponse.AcidDilutionResult;
import tunside.http.dilution.AcidDilutionResponse.DilutionAmount;
import tunside.http.dilution.AcidDilutionResponse.DilutionHeat;
import tunside.http.dilution.AcidDilutionResponse.DilutionSolution;
import tunside.http.dilution.AcidDilutionResponse.DilutionSpill;
import tunside.http.dilution.AcidDilutionResponse.DilutionStage;
import tunside.http.dilution.AcidDilutionResponse.HazardMeaning;
import tunside.http.dilution.AcidDilutionResponse.NeutraliserAmount;
import tunside.http.dilution.AcidDilutionResponse.SupplyLimitState;
import tunside.http.dilution.AcidDilutionResponse.UncertainStrength;
import tunside.http.quantity.MassQuantity;
import tunside.http.quantity.TemperatureQuantity;
import tunside.http.quantity.VolumeQuantity;
import tunside.quantity.MassUnit;
import tunside.quantity.VolumeUnit;
import tunside.safety.HazardStatements;
import tunside.safety.Hazards;
import tunside.safety.Jurisdiction;
import tunside.safety.SpillNeutraliser;

/** Answers how a weaker acid is made. */
final class AcidDilutionMapper {
    private AcidDilutionMapper() {}

    static AcidDilutionResponse answer(AcidDilutionRequest request) {
        AcidDilutionReading reading = AcidDilutionReading.of(request);
        AcidDilutionPlan plan = AcidDilutionPlan.of(reading.dilution(), reading.conditions());
        Optional<Jurisdiction> jurisdiction = Optional.ofNullable(request.jurisdiction());
        return new AcidDilutionResponse(
                toResult(plan, jurisdiction),
                Checks.of(AcidDilutionChecks.of(plan, request.labelUncertaintyPercent() != null, jurisdiction)),
                Safety.dilution(reading.dilution().strong(), reading.dilution().weak()),
                basis(plan));
    }

    private static AcidDilutionResult toResult(AcidDilutionPlan plan, Optional<Jurisdiction> jurisdiction) {
        AcidDilution dilution = plan.dilution();
        double label = plan.conditions().labelShare();
        boolean solid = dilution.strong().solid();
        AcidDilutionStrength weighed = AcidDilutionStrength.whenWeighed(dilution, label);
        DilutionSolution inHand = toSolution(
                dilution.strong(),
                AcidDilutionStrength.ofLabel(dilution.strong(), label),
                Optional.empty(),
                jurisdiction);
        DilutionSolution made = toSolution(
                dilution.weak(),
                weighed,
                solid ? Optional.empty() : Optional.of(AcidDilutionStrength.whenMeasured(dilution, label)),
                jurisdiction);
        int decimals = decimals(dilution.weakGrams());
        DilutionAmount acid =
                acidAmount(dilution.strong(), dilution.strongMass().grams(), decimals);
        DilutionAmount water = amount(dilution.waterMass().grams(), dilution.waterMillilitres(), decimals);
        DilutionAmount makes = amount(dilution.weakGrams(), dilution.weakMillilitres(), decimals);
        List<DilutionStage> stages = plan.staged()
                ? plan.stages().stream()
                        .map(stage -> toStage(stage, dilution.strong(), decimals))
                        .toList()
                : List.of();
        DilutionText text = new DilutionText(plan, acid, water, makes, stages, made, inHand);
        return new AcidDilutionResult(
                plan.staged() ? DilutionMethod.STAGES : DilutionMethod.ONE_GO,
                text.advice(),
                inHand,
                made,
                acid,
                water,
                makes,
                solid ? null : Rounded.decimals(dilution.lostMillilitres(), decimals),
                toHeat(plan),
                stages,
                text.steps(),
                text.label(),
                toSpill(dilution));
    }

    /** Decimals of grams and millilitres: the same for all amounts of an answer, so that they add up. */
    private static int decimals(double totalGrams) {
        return totalGrams >= 10_000 ? 0 : totalGrams >= 200 ? 1 : 2;
    }

    private static DilutionAmount amount(double grams, double millilitres, int decimals) {
        return new DilutionAmount(
                MassQuantity.grams(grams, decimals), VolumeQuantity.millilitres(millilitres, decimals));
    }

    private static DilutionAmount acidAmount(AcidProduct product, double grams, int decimals) {
        return product.solid()
                ? new DilutionAmount(MassQuantity.grams(grams, decimals), null)
                : amount(grams, grams / product.densityGPerMl(), decimals);
    }

    private static DilutionStage toStage(AcidDilutionStage stage, AcidProduct strong, int decimals) {
        return new DilutionStage(
                acidAmount(strong, stage.acidGrams(), decimals),
                Rounded.decimals(stage.percentAfter(), 1),
                TemperatureQuantity.celsius(stage.startCelsius(), 0),
                TemperatureQuantity.celsius(stage.hottestCelsius(), 0),
                Rounded.decimals(stage.halfWidthKelvin(), 0));
    }

    private static DilutionSolution toSolution(
            AcidProduct product,
            AcidDilutionStrength known,
            Optional<AcidDilutionStrength> byVolume,
            Optional<Jurisdiction> jurisdiction) {
        String acid = product.acid().id();
        double percent = product.massPercent();
        int protons = product.acid().protons();
        boolean solid = product.solid();
        List<String> codes = Hazards.of(acid, percent);
        return new DilutionSolution(
                acid,
                product.acid().name(),
                product.acid().eNumber(),
                strength(percent, known.percentUncertainty(), byVolume.map(AcidDilutionStrength::percentUncertainty)),
                solid
                        ? null
                        : strength(
                                product.molPerL(),
                                known.molPerLUncertainty(),
                                byVolume.map(AcidDilutionStrength::molPerLUncertainty)),
                solid
                        ? null
                        : strength(
                                protons * product.molPerL(),
                                protons * known.molPerLUncertainty(),
                                byVolume.map(by -> protons * by.molPerLUncertainty())),
                solid ? null : Rounded.decimals(product.densityGPerMl(), 4),
                solid ? null : product.densityUncertaintyGPerMl(),
                solid ? null : product.densitySource(),
                HazardStatements.signal(codes),
                codes.stream().map(code -> toHazard(code, acid, percent)).toList(),
                Jurisdiction.orAll(jurisdiction).stream()
                        .flatMap(where -> where.limits(acid).stream())
                        .map(limit -> new SupplyLimitState(
                                limit.region(),
                                limit.abovePercent(),
                                percent > limit.abovePercent(),
                                limit.meaning(),
                                limit.source()))
                        .toList());
    }

    private static UncertainStrength strength(double value, double uncertainty, Optional<Double> byVolume) {
        return new UncertainStrength(
                Rounded.significant(value, 4),
                Rounded.significant(uncertainty, 2),
                byVolume.map(by -> Rounded.significant(by, 2)).orElse(null));
    }

    private static HazardMeaning toHazard(String code, String acid, double percent) {
        String source = Hazards.bands(acid, percent).stream()
                .filter(band -> band.codes().contains(code))
                .map(Hazards.Band::source)
                .findFirst()
                .orElseThrow();
        return new HazardMeaning(code, HazardStatements.find(code).orElseThrow().meaning(), source);
    }

    private static DilutionHeat toHeat(AcidDilutionPlan plan) {
        if (plan.inOneGo().isEmpty()) {
            return new DilutionHeat(plan.warmth(), null, null, null, null, null);
        }
        AcidDilutionStage stage = plan.inOneGo().get();
        return new DilutionHeat(
                plan.warmth(),
                TemperatureQuantity.celsius(stage.endCelsius(), 0),
                Rounded.decimals(stage.endCelsius() - stage.startCelsius(), 0),
                TemperatureQuantity.celsius(stage.hottestCelsius(), 0),
                Rounded.decimals(stage.halfWidthKelvin(), 0),
                TemperatureQuantity.celsius(plan.conditions().warmLimitCelsius(), 0));
    }

    private static DilutionSpill toSpill(AcidDilution dilution) {
        AcidProduct strong = dilution.strong();
        return new DilutionSpill(
                neutraliser(strong, strong.solid() ? 100 : 100 * strong.densityGPerMl()),
                neutraliser(strong, dilution.strongMass().grams()),
                neutraliser(dilution.weak(), dilution.weakGrams()));
    }

    private static NeutraliserAmount neutraliser(AcidProduct product, double grams) {
        double bicarbonate = SpillNeutraliser.sodiumBicarbonateGrams(product, grams);
        return new NeutraliserAmount(
                new MassQuantity(Rounded.significant(bicarbonate, 3), MassUnit.G),
                new MassQuantity(
                        Rounded.significant(SpillNeutraliser.sodiumCarbonateGrams(product, grams), 3), MassUnit.G),
                new VolumeQuantity(
                        Rounded.significant(SpillNeutraliser.carbonDioxideLitres(bicarbonate), 2), VolumeUnit.L));
    }

    private static Basis basis(AcidDilutionPlan plan) {
        AcidDilutionConditions conditions = plan.conditions();
        List<String> assumptions = new ArrayList<>(
                List.of(
                        "Masses of acid and water add up; volumes at 20 degC come from the density tables and do not add up.",
                        "The label is good to %s %% of its value, scales to 0.5 %%, a measuring cylinder to 1 %% (one standard deviation; common practice)."
                                .formatted(Rounded.text(Rounded.significant(100 * conditions.labelShare(), 3))),
                        "Hazard bands and supply limits are those we know; the label of the very product and the law where you live come first."));
        Set<String> sources = new LinkedHashSet<>(List.of(
                "IUPAC-WEIGHTS",
                plan.dilution().strong().densitySource(),
                plan.dilution().weak().densitySource(),
                "CLP-1272-2008",
                "CLP-SELF",
                "GB-POISONS-ACT",
                "EU-2019-1148"));
        if (plan.warmth() == AcidDilutionWarmth.COMPUTED) {
            boolean sulfuric = plan.dilution().strong().acid().id().equals("sulfuric");
            assumptions.add(
                    "No heat is lost while the acid goes in. Heats of dilution and heat capacities are from memory: temperatures are good to %s K at best."
                            .formatted(sulfuric ? "10" : "5"));
            sources.add(sulfuric ? "THOMSEN-HEAT" : "PARKER-1965");
            sources.add("PERRY-HEAT-CAPACITIES");
        } else {
            assumptions.add("How warm this acid gets is a rule from practice, without a figure.");
        }
        if (plan.dilution().strong().directShare() < 1) {
            assumptions.add("Strengths count all lactic acid, the part bound in chains too.");
            sources.add("VU-2005");
        }
        sources.addAll(List.of("ACID-HANDLING-BASICS", "DERIVED", "COMMON-PRACTICE"));
        return Basis.of("acid-dilution", assumptions, List.copyOf(sources));
    }
}

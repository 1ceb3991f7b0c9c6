package tunside.http.plan;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tunside.chemistry.Acid;
import tunside.chemistry.AcidProduct;
import tunside.chemistry.Acids;
import tunside.chemistry.NeatAcidLimits;
import tunside.chemistry.Salt;
import tunside.dosing.AnionTaste;
import tunside.dosing.Bases;
import tunside.dosing.DoseChecks;
import tunside.finding.Finding;
import tunside.http.answer.Basis;
import tunside.http.answer.Check;
import tunside.http.answer.Checks;
import tunside.http.answer.Rounded;
import tunside.http.answer.Safety;
import tunside.http.dosing.AcidDoseResponse.DilutionFirst;
import tunside.http.mash.MashPredictionMapper;
import tunside.http.mash.MashPredictionResponse.PhInterval;
import tunside.http.plan.MashPlanResponse.AlternativePlan;
import tunside.http.plan.MashPlanResponse.FirstAddition;
import tunside.http.plan.MashPlanResponse.MashPlanResult;
import tunside.http.plan.MashPlanResponse.PlanLimit;
import tunside.http.plan.MashPlanResponse.PlanObjective;
import tunside.http.plan.MashPlanResponse.PlanObstruction;
import tunside.http.plan.MashPlanResponse.PlannedAddition;
import tunside.http.plan.MashPlanResponse.PlannedPh;
import tunside.http.plan.MashPlanResponse.WantedRange;
import tunside.http.problem.UnanswerableException;
import tunside.http.quantity.MassQuantity;
import tunside.http.quantity.StrengthQuantity;
import tunside.http.quantity.VolumeQuantity;
import tunside.mash.MashChecks;
import tunside.mash.MashPrediction;
import tunside.mash.plan.FirstPart;
import tunside.mash.plan.IonWant;
import tunside.mash.plan.MashPlan;
import tunside.mash.plan.PlanAnswer;
import tunside.mash.plan.PlanChecks;
import tunside.mash.plan.PlanObstacle;
import tunside.mash.plan.PlanScore;
import tunside.mash.plan.PlanSupply;
import tunside.mash.plan.PlannedAmount;
import tunside.mash.plan.WantedValue;

/** Answers a plan question with the additions. */
public final class MashPlanMapper {
    private static final List<String> ASSUMPTIONS = List.of(
            "The objective puts, in order of weight: pH and ions in their ranges, the pH at the target, few additions, small"
                    + " ones. Limits of supplies and of lactate are never passed, and acid and base never go in"
                    + " together.",
            "Diluting water takes the place of liquor, so the volume stays; acidulated malt comes on top of the grist; acids"
                    + " add no volume.",
            "Lactate and ions are counted in the mash liquor, where they are highest; the sparge thins them in the beer.",
            "The probability takes a normal distribution of the prediction around its pH. With malts known by class the"
                    + " prediction itself is only good to about 0.2.");

    private MashPlanMapper() {}

    static MashPlanResponse answer(MashPlanRequest request) {
        MashPlanReading reading = MashPlanReading.of(request);
        PlanAnswer answer = PlanAnswer.of(reading.question());
        MashPlan plan = answer.best();
        if (!plan.prediction().isWithinReach()) {
            throw new UnanswerableException(
                    "/grist",
                    "with the nearest plan this mash would land at pH %s, where no malt was ever titrated; check units and amounts"
                            .formatted(Rounded.text(
                                    Rounded.decimals(plan.prediction().ph(), 1))));
        }
        List<AcidProduct> products = new ArrayList<>(reading.prediction().products());
        List<Salt> salts = new ArrayList<>(reading.prediction().salts());
        for (PlannedAmount addition : plan.additions()) {
            if (addition.supply() instanceof PlanSupply.OfAcid acid) {
                products.add(reading.bought().get(acid.pointer()));
                products.add(acid.product());
            } else if (addition.supply() instanceof PlanSupply.OfSalt salt) {
                salts.add(salt.salt());
            }
        }
        return new MashPlanResponse(
                toResult(reading, answer),
                Checks.of(findings(reading, answer)),
                Safety.mash(products, salts),
                basis(reading, plan, products, salts));
    }

    private static List<Finding> findings(MashPlanReading reading, PlanAnswer answer) {
        MashPlan plan = answer.best();
        List<Finding> findings = new ArrayList<>(reading.prediction().findings());
        findings.addAll(reading.findings());
        findings.addAll(MashChecks.of(plan.mash(), plan.prediction()));
        findings.addAll(PlanChecks.of(answer));
        usual(plan, Acids.get("hydrochloric"), "Cl", findings);
        usual(plan, Acids.get("sulfuric"), "SO4", findings);
        for (PlanSupply supply : plan.setters()) {
            if (supply.role() == PlanSupply.Role.BASE) {
                Finding care = DoseChecks.base(Bases.find(supply.id()).orElseThrow());
                findings.add(new Finding(
                        care.code(),
                        care.outcome(),
                        supply.pointer() + care.pointer(),
                        care.subject(),
                        care.observed(),
                        care.expected()));
            }
        }
        return findings;
    }

    private static void usual(MashPlan plan, Acid acid, String symbol, List<Finding> findings) {
        AnionTaste.of(acid, 0, 1)
                .thresholdMgPerL()
                .ifPresent(limit -> findings.add(PlanChecks.usual(plan, symbol, acid.anion(), limit)));
    }

    private static Basis basis(MashPlanReading reading, MashPlan plan, List<AcidProduct> products, List<Salt> salts) {
        List<String> assumptions = new ArrayList<>(ASSUMPTIONS);
        assumptions.addAll(MashPredictionMapper.assumptions(plan.mash()));
        Set<String> sources = new LinkedHashSet<>(MashPredictionMapper.sources(new MashPredictionMapper.Question(
                plan.mash(), products, salts, reading.prediction().findings())));
        sources.addAll(List.of("BRIGGS-2004", "PALMER-2006", "DERIVED"));
        return Basis.of("mash-plan", assumptions, List.copyOf(sources));
    }

    private static MashPlanResult toResult(MashPlanReading reading, PlanAnswer answer) {
        MashPlan plan = answer.best();
        List<PlannedAddition> additions = toAdditions(reading, plan);
        Optional<FirstPart> first = FirstPart.of(plan);
        return new MashPlanResult(
                PlanResult.valueOf(answer.result().name()),
                MashPlanWords.advice(answer, additions, first),
                additions,
                first.map(MashPlanMapper::toFirst).orElse(null),
                toPh(MashPlan.asItIs(reading.question(), answer.before())),
                toPh(plan),
                WantedValue.of(answer).stream().map(MashPlanMapper::toWanted).toList(),
                toObjective(plan.score()),
                answer.binding().stream().map(MashPlanMapper::toLimit).toList(),
                answer.obstacles().stream().map(MashPlanMapper::toObstruction).toList(),
                answer.alternatives().stream()
                        .map(other -> toAlternative(reading, plan, other))
                        .toList(),
                MashPredictionMapper.toResult(plan.mash(), plan.prediction()));
    }

    private static FirstAddition toFirst(FirstPart first) {
        PlanSupply supply = first.supply();
        boolean liquid =
                supply instanceof PlanSupply.OfAcid acid && !acid.product().solid();
        return new FirstAddition(
                supply.id(),
                liquid ? VolumeQuantity.millilitres(first.amount(), 4) : null,
                liquid ? null : MassQuantity.grams(first.amount(), 4),
                Rounded.decimals(first.ph(), 2));
    }

    private static AlternativePlan toAlternative(MashPlanReading reading, MashPlan best, MashPlan other) {
        PlanSupply setter = other.setters().get(0);
        return new AlternativePlan(
                setter.id(),
                setter.name(),
                other.score().meetsAll(),
                MashPlanWords.difference(best, other),
                toAdditions(reading, other),
                toPh(other),
                Rounded.decimals(other.mgPerL(Acids.get("lactic").anion()), 1),
                toObjective(other.score()));
    }

    private static List<PlannedAddition> toAdditions(MashPlanReading reading, MashPlan plan) {
        return plan.additions().stream()
                .map(addition -> toAddition(reading, plan, addition))
                .sorted(Comparator.comparing(PlannedAddition::kind))
                .toList();
    }

    private static PlannedAddition toAddition(MashPlanReading reading, MashPlan plan, PlannedAmount addition) {
        double amount = addition.amount();
        PlanSupply supply = addition.supply();
        if (supply instanceof PlanSupply.OfAcid acid) {
            return new PlannedAddition(
                    PlanAdditionKind.ACID,
                    supply.id(),
                    supply.name(),
                    supply.pointer(),
                    StrengthQuantity.percent(acid.product().massPercent(), 2),
                    acid.product().solid() ? null : VolumeQuantity.millilitres(amount, 4),
                    MassQuantity.grams(acid.grams(amount), acid.product().solid() ? 4 : 2),
                    null,
                    null,
                    toDilution(requireNonNull(reading.bought().get(supply.pointer())), acid.grams(amount)));
        }
        if (supply instanceof PlanSupply.OfWater) {
            double litres = plan.mash().liquor().volume().litres();
            return addition(
                    PlanAdditionKind.DILUTING_WATER,
                    supply,
                    VolumeQuantity.litres(amount, 4),
                    null,
                    100 * amount / litres,
                    VolumeQuantity.litres(litres - amount, 4));
        }
        if (supply instanceof PlanSupply.OfMalt) {
            return addition(
                    PlanAdditionKind.ACIDULATED_MALT,
                    supply,
                    null,
                    MassQuantity.kilograms(amount, 5),
                    100 * amount / plan.mash().grist().kilograms(),
                    null);
        }
        return addition(
                supply.role() == PlanSupply.Role.BASE ? PlanAdditionKind.BASE : PlanAdditionKind.SALT,
                supply,
                null,
                MassQuantity.grams(amount, 4),
                null,
                null);
    }

    private static PlannedAddition addition(
            PlanAdditionKind kind,
            PlanSupply supply,
            @Nullable VolumeQuantity volume,
            @Nullable MassQuantity mass,
            @Nullable Double percent,
            @Nullable VolumeQuantity own) {
        return new PlannedAddition(
                kind,
                supply.id(),
                supply.name(),
                supply.pointer(),
                null,
                volume,
                mass,
                percent == null ? null : Rounded.decimals(percent, 2),
                own,
                null);
    }

    /** Enough of the diluted acid for the plan. */
    private static @Nullable DilutionFirst toDilution(AcidProduct bought, double grams) {
        return NeatAcidLimits.reachedBy(bought) ? DilutionFirst.of(bought, grams) : null;
    }

    private static PlannedPh toPh(MashPlan plan) {
        MashPrediction prediction = plan.prediction();
        return new PlannedPh(
                Rounded.decimals(prediction.ph(), 2),
                Rounded.decimals(prediction.standardUncertainty(), 3),
                new PhInterval(Rounded.decimals(prediction.low90(), 2), Rounded.decimals(prediction.high90(), 2)),
                Rounded.decimals(plan.probabilityInRange(), 3),
                Rounded.decimals(plan.probabilityBelow(), 3),
                Rounded.decimals(plan.probabilityAbove(), 3));
    }

    private static WantedRange toWanted(WantedValue wanted) {
        IonWant want = wanted.want();
        return new WantedRange(
                want.name(),
                want.unit(),
                rounded(wanted.before()),
                rounded(wanted.after()),
                rounded(want.low()),
                rounded(want.high()),
                wanted.met());
    }

    private static @Nullable Double rounded(OptionalDouble value) {
        return value.isPresent() ? Rounded.significant(value.getAsDouble(), 4) : null;
    }

    private static PlanObjective toObjective(PlanScore score) {
        return new PlanObjective(
                Rounded.significant(score.total(), 5),
                Rounded.significant(score.phBeyond(), 3),
                Rounded.significant(score.ionsBeyond(), 3),
                Rounded.significant(score.phOff(), 3),
                score.additions(),
                Rounded.significant(score.amount(), 3));
    }

    private static PlanLimit toLimit(Finding finding) {
        Check words = Checks.of(finding);
        return new PlanLimit(words.code(), words.pointer(), words.message(), words.observed(), words.expected());
    }

    private static PlanObstruction toObstruction(PlanObstacle obstacle) {
        Check words = Checks.of(obstacle.limit());
        return new PlanObstruction(
                words.code(),
                words.pointer(),
                words.message(),
                words.observed(),
                words.expected(),
                obstacle.enoughAlone(),
                Rounded.decimals(obstacle.without() / obstacle.now(), 3));
    }
}

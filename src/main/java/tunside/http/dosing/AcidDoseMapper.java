package tunside.http.dosing;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tunside.chemistry.AcidProduct;
import tunside.chemistry.NeatAcidLimits;
import tunside.chemistry.Salt;
import tunside.dosing.AnionTaste;
import tunside.dosing.Bases;
import tunside.dosing.BufferingPrior;
import tunside.dosing.DoseAdvice;
import tunside.dosing.DoseChecks;
import tunside.dosing.DoseOutcome;
import tunside.dosing.DoseQuestion;
import tunside.dosing.DoseStage;
import tunside.dosing.DosedLiquid;
import tunside.dosing.LiquorDose;
import tunside.dosing.PastAddition;
import tunside.dosing.PhReading;
import tunside.dosing.Reagent;
import tunside.dosing.StagedDose;
import tunside.finding.Finding;
import tunside.http.answer.Checks;
import tunside.http.answer.Rounded;
import tunside.http.answer.Safety;
import tunside.http.dosing.AcidDoseResponse.AcidDose;
import tunside.http.dosing.AcidDoseResponse.AmountAdded;
import tunside.http.dosing.AcidDoseResponse.AnionAdded;
import tunside.http.dosing.AcidDoseResponse.DilutionFirst;
import tunside.http.dosing.AcidDoseResponse.DoseRange;
import tunside.http.dosing.AcidDoseResponse.DosedAcid;
import tunside.http.dosing.AcidDoseResponse.DosedBase;
import tunside.http.dosing.AcidDoseResponse.LargestDose;
import tunside.http.dosing.AcidDoseResponse.LearntBuffering;
import tunside.http.dosing.AcidDoseResponse.PhBelief;
import tunside.http.dosing.AcidDoseResponse.ReadingSoFar;
import tunside.http.dosing.AcidDoseResponse.Stage;
import tunside.http.dosing.AcidDoseResponse.TotalDose;
import tunside.http.quantity.MassQuantity;
import tunside.http.quantity.StrengthQuantity;
import tunside.http.quantity.VolumeQuantity;
import tunside.quantity.MassUnit;
import tunside.quantity.VolumeUnit;

/** Answers a dose question with what to add now. */
public final class AcidDoseMapper {
    private AcidDoseMapper() {}

    static AcidDoseResponse answer(AcidDoseRequest request) {
        AcidDoseReading reading = AcidDoseReading.of(request);
        DoseQuestion question = reading.question();
        DoseAdvice advice = DoseAdvice.of(question, reading.findings());
        List<Finding> findings = new ArrayList<>(advice.findings());
        reading.bought().ifPresent(bought -> findings.addAll(DoseChecks.product(bought)));
        if (advice.outcome() instanceof DoseOutcome.RaiseInstead) {
            findings.add(DoseChecks.base(reading.base()));
        }
        if (question.history().isEmpty()) {
            findings.add(DoseChecks.prior(question.prior()));
        }
        Optional<AnionTaste> anion = reading.anionAfter(advice);
        anion.ifPresent(added -> findings.add(added.finding()));
        OptionalDouble openPh = reading.openPhAfter(advice);
        if (openPh.isPresent()) {
            findings.add(
                    LiquorDose.openFinding(openPh.getAsDouble(), question.aim().targetPh()));
        }
        return new AcidDoseResponse(
                toResult(reading, request.measuredPh() != null, advice, anion, openPh),
                Checks.of(findings),
                Safety.dosing(reading.products(), salts(reading, advice), request.liquid() == DosedLiquid.MASH),
                DoseBasis.of(request.liquid(), reading));
    }

    /** Salts and bases that are handled: those in the liquor, and the base that went in or is to go in. */
    private static List<Salt> salts(AcidDoseReading reading, DoseAdvice advice) {
        Set<Salt> salts = new LinkedHashSet<>(reading.liquorSalts());
        boolean added = reading.question().history().stream()
                .anyMatch(past -> !past.reagent().acid());
        if (added || advice.outcome() instanceof DoseOutcome.RaiseInstead) {
            salts.add(reading.base().salt());
        }
        return List.copyOf(salts);
    }

    private static AcidDose toResult(
            AcidDoseReading reading,
            boolean measured,
            DoseAdvice advice,
            Optional<AnionTaste> anion,
            OptionalDouble openPh) {
        Optional<StagedDose> staged = advice.staged();
        List<Stage> stages = new ArrayList<>();
        staged.ifPresent(dose -> dose.stages().forEach(stage -> stages.add(toStage(stage, dose.reagent()))));
        return new AcidDose(
                toOutcome(advice.outcome()),
                DoseWords.of(reading, advice),
                new DoseRange(
                        reading.question().aim().targetPh(),
                        reading.question().aim().lowPh(),
                        reading.question().aim().highPh()),
                toReadings(reading.question(), measured),
                toBelief(advice),
                reading.dosed().map(AcidDoseMapper::toAcid).orElse(null),
                toBase(reading, advice),
                toDilution(reading, advice),
                staged.filter(dose -> !advice.stopped())
                        .map(AcidDoseMapper::toTotal)
                        .orElse(null),
                stages.isEmpty() ? null : stages.get(0),
                stages,
                toLearnt(reading.question(), advice),
                anion.map(AcidDoseMapper::toAnion).orElse(null),
                openPh.isPresent() ? Rounded.decimals(openPh.getAsDouble(), 1) : null,
                toLargest(advice.outcome()));
    }

    private static DoseResult toOutcome(DoseOutcome outcome) {
        if (outcome instanceof DoseOutcome.Dose) {
            return DoseResult.DOSE;
        }
        if (outcome instanceof DoseOutcome.RaiseInstead) {
            return DoseResult.RAISE_INSTEAD;
        }
        return outcome instanceof DoseOutcome.NoneNeeded ? DoseResult.NONE_NEEDED : DoseResult.OUT_OF_REACH;
    }

    private static List<ReadingSoFar> toReadings(DoseQuestion question, boolean measured) {
        List<ReadingSoFar> readings = new ArrayList<>();
        readings.add(toReading(List.of(), measured, question.start()));
        List<AmountAdded> added = new ArrayList<>();
        for (PastAddition past : question.history()) {
            if (past.grams() > 0) {
                added.add(toAmount(past));
            }
            if (past.after().isPresent()) {
                readings.add(toReading(added, true, past.after().get()));
                added.clear();
            }
        }
        if (!added.isEmpty()) {
            readings.add(new ReadingSoFar(List.copyOf(added), false, null, null));
        }
        return readings;
    }

    private static ReadingSoFar toReading(List<AmountAdded> added, boolean measured, PhReading reading) {
        return new ReadingSoFar(
                List.copyOf(added),
                measured,
                Rounded.decimals(reading.ph(), measured ? 3 : 2),
                Rounded.significant(reading.standardUncertainty(), 3));
    }

    private static AmountAdded toAmount(PastAddition past) {
        OptionalDouble millilitres = past.reagent().millilitres(past.grams());
        return new AmountAdded(
                past.reagent().id(),
                past.reagent().name(),
                millilitres.isPresent()
                        ? new VolumeQuantity(Rounded.significant(millilitres.getAsDouble(), 4), VolumeUnit.ML)
                        : null,
                new MassQuantity(Rounded.significant(past.grams(), 4), MassUnit.G));
    }

    private static PhBelief toBelief(DoseAdvice advice) {
        return new PhBelief(
                Rounded.decimals(advice.currentPh(), 2),
                Rounded.decimals(advice.standardUncertainty(), 3),
                Rounded.decimals(advice.low90Ph(), 2),
                Rounded.decimals(advice.high90Ph(), 2),
                Rounded.decimals(advice.probabilityInRange(), 3));
    }

    private static DosedAcid toAcid(AcidProduct dosed) {
        return new DosedAcid(
                dosed.acid().id(),
                StrengthQuantity.percent(dosed.massPercent(), 2),
                Rounded.decimals(dosed.densityGPerMl(), 3),
                Rounded.significant(Reagent.actingMillimolesPerGram(dosed), 3));
    }

    private static @Nullable DosedBase toBase(AcidDoseReading reading, DoseAdvice advice) {
        if (!(advice.outcome() instanceof DoseOutcome.RaiseInstead raise)) {
            return null;
        }
        Bases.Base base = reading.base();
        double target = reading.question().aim().targetPh();
        double taken = -raise.staged().reagent().protonsMeqPerGram().at(target);
        return new DosedBase(base.salt().id(), base.salt().name(), Rounded.significant(taken, 3));
    }

    /** Enough of the diluted acid for the upper end of the whole dose. */
    private static @Nullable DilutionFirst toDilution(AcidDoseReading reading, DoseAdvice advice) {
        Optional<AcidProduct> bought = reading.bought().filter(NeatAcidLimits::reachedBy);
        if (bought.isEmpty() || advice.stopped() || !(advice.outcome() instanceof DoseOutcome.Dose dose)) {
            return null;
        }
        return DilutionFirst.of(bought.get(), dose.staged().high90Grams());
    }

    private static TotalDose toTotal(StagedDose dose) {
        return new TotalDose(
                volume(dose.reagent(), dose.totalGrams()),
                mass(dose.totalGrams()),
                mass(dose.low90Grams()),
                mass(dose.high90Grams()));
    }

    private static Stage toStage(DoseStage stage, Reagent reagent) {
        return new Stage(
                volume(reagent, stage.grams()),
                mass(stage.grams()),
                Rounded.decimals(stage.expectedPh(), 2),
                Rounded.decimals(stage.low90Ph(), 2),
                Rounded.decimals(stage.high90Ph(), 2),
                Rounded.decimals(stage.overshootProbability(), 3));
    }

    private static @Nullable LargestDose toLargest(DoseOutcome outcome) {
        return outcome instanceof DoseOutcome.OutOfReach out
                ? new LargestDose(
                        volume(out.reagent(), out.largestGrams()),
                        mass(out.largestGrams()),
                        Rounded.decimals(out.phAtLargest(), 2))
                : null;
    }

    private static LearntBuffering toLearnt(DoseQuestion question, DoseAdvice advice) {
        BufferingPrior prior = question.prior();
        double[] factors = advice.learning().now().scaleQuantiles(0.5, 0.05, 0.95);
        return new LearntBuffering(
                Rounded.significant(prior.median(), 3),
                prior.unit(),
                Rounded.significant(factors[0], 3),
                Rounded.significant(factors[1], 3),
                Rounded.significant(factors[2], 3),
                advice.learning().comparisons().size());
    }

    private static AnionAdded toAnion(AnionTaste anion) {
        return new AnionAdded(
                anion.anion(),
                Rounded.significant(anion.mgPerL(), 3),
                anion.thresholdMgPerL().isPresent() ? anion.thresholdMgPerL().getAsDouble() : null);
    }

    private static MassQuantity mass(double grams) {
        return new MassQuantity(Rounded.significant(grams, 3), MassUnit.G);
    }

    private static @Nullable VolumeQuantity volume(Reagent reagent, double grams) {
        OptionalDouble millilitres = reagent.millilitres(grams);
        return millilitres.isPresent()
                ? new VolumeQuantity(Rounded.significant(millilitres.getAsDouble(), 3), VolumeUnit.ML)
                : null;
    }
}

package tunside.http.reading;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tunside.electrode.Calibration;
import tunside.electrode.CalibrationSignal;
import tunside.electrode.MeterCompensation;
import tunside.electrode.ReadingUncertainty;
import tunside.electrode.reading.CompensationEffect;
import tunside.electrode.reading.DoubtCause;
import tunside.electrode.reading.PhInterval;
import tunside.electrode.reading.PublishedShift;
import tunside.electrode.reading.ReadingJudgement;
import tunside.electrode.reading.ReadingWord;
import tunside.electrode.reading.Recheck;
import tunside.electrode.reading.SampleLiquid;
import tunside.electrode.reading.SamplePoint;
import tunside.electrode.reading.SampleReading;
import tunside.electrode.reading.Settling;
import tunside.electrode.reading.SettlingCriterion;
import tunside.electrode.reading.TemperatureEffect;
import tunside.finding.Finding;
import tunside.finding.Outcome;
import tunside.http.answer.Basis;
import tunside.http.answer.Check;
import tunside.http.answer.Checks;
import tunside.http.answer.Rounded;
import tunside.http.answer.Safety;
import tunside.http.calibration.BufferCups;
import tunside.http.calibration.MeterRequest;
import tunside.http.calibration.ReadingUncertaintyRequest;
import tunside.http.problem.Place;
import tunside.http.quantity.PotentialQuantity;
import tunside.http.quantity.TemperatureQuantity;
import tunside.http.quantity.TimeQuantity;
import tunside.http.reading.PhReadingResponse.CoursePoint;
import tunside.http.reading.PhReadingResponse.DoubtShare;
import tunside.http.reading.PhReadingResponse.ElectrodeDrift;
import tunside.http.reading.PhReadingResponse.PhReadingResult;
import tunside.http.reading.PhReadingResponse.RangeProbability;
import tunside.http.reading.PhReadingResponse.ReadingAdviceRow;
import tunside.http.reading.PhReadingResponse.ReadingCompensation;
import tunside.http.reading.PhReadingResponse.ReadingSettling;
import tunside.http.reading.PhReadingResponse.SamplePh;
import tunside.http.reading.PhReadingResponse.SampleTemperatureEffect;
import tunside.mash.PhRange;
import tunside.mash.PhRanges;
import tunside.quantity.Interval90;
import tunside.quantity.Potential;
import tunside.quantity.Temperature;

/** Reads a series and has it judged. */
final class PhReadingMapper {
    private static final double LARGEST_MV = 1000;
    private static final double LONGEST_S = 400 * 86_400.0;

    private PhReadingMapper() {}

    static PhReadingResponse answer(PhReadingRequest request) {
        Place place = Place.root();
        ReadingJudgement judgement = ReadingJudgement.of(toReading(request, place));
        List<Finding> findings = new ArrayList<>(judgement.findings());
        boolean stated = request.lowPh() != null || request.highPh() != null;
        findings.add(Finding.of("reading.range", stated ? Outcome.PASS : Outcome.NOTE, "")
                .about(stated ? "" : usualRange(request.liquid()).id()));
        List<Check> checks = Checks.of(findings);
        return new PhReadingResponse(
                toResult(judgement),
                checks,
                Safety.reading(),
                Basis.of(
                        "exponential-approach",
                        judgement.assumptions().stream()
                                .map(ReadingWord::message)
                                .toList(),
                        sources(judgement, checks)));
    }

    private static SampleReading toReading(PhReadingRequest request, Place place) {
        Optional<Calibration> calibration = Optional.ofNullable(request.calibration())
                .map(document -> document.toCalibration(place.member("calibration")));
        if (request.calibration() != null && request.meter() != null) {
            place.member("meter").fault("stands beside the calibration, which says what the meter is; leave it out");
        }
        MeterCompensation compensation = calibration
                .map(Calibration::compensation)
                .orElseGet(() -> MeterRequest.toCompensation(request.meter(), place.member("meter")));
        ReadingUncertainty uncertainty =
                ReadingUncertaintyRequest.toUncertainty(request.uncertainty(), place.member("uncertainty"));
        boolean millivolts = calibration
                .map(known -> known.signal() == CalibrationSignal.POTENTIAL)
                .orElse(false);
        Signal signal = new Signal(calibration.isPresent(), millivolts, compensation);
        List<SamplePoint> points = toPoints(request, signal, place.member("readings"));
        List<Recheck> rechecks = toRechecks(request, signal, place.member("rechecks"));
        OptionalDouble since = request.sinceCalibration() == null
                ? OptionalDouble.empty()
                : OptionalDouble.of(request.sinceCalibration()
                        .toTimeSpan(place.member("sinceCalibration"), 0, LONGEST_S)
                        .seconds());
        if (!rechecks.isEmpty() && since.isEmpty()) {
            place.member("sinceCalibration")
                    .fault("is missing: drift needs the time from the calibration to the reading");
        }
        if (!rechecks.isEmpty() && calibration.isEmpty()) {
            place.member("calibration").fault("is missing: drift is counted from a calibration");
        }
        if (since.isPresent() && calibration.isEmpty()) {
            place.member("sinceCalibration").fault("belongs to a calibration; send it too");
        }
        PhInterval range = toRange(request, place);
        SettlingCriterion criterion = toCriterion(request, place);
        place.stopIfFaulty();
        return new SampleReading(
                points,
                calibration,
                compensation,
                uncertainty,
                request.displayStep() == null ? SampleReading.usualStepPh(millivolts) : request.displayStep(),
                request.liquid(),
                criterion,
                since,
                rechecks,
                range);
    }

    /** What the meter gives: with a calibration what that was made of, else displayed pH. */
    private record Signal(boolean calibrated, boolean millivolts, MeterCompensation compensation) {
        Potential read(
                @Nullable PotentialQuantity potential,
                @Nullable Double displayed,
                Temperature temperature,
                Place place) {
            if ((potential == null) == (displayed == null)) {
                place.fault("must have either potential or displayed");
                return new Potential(0);
            }
            if (potential != null && !calibrated) {
                place.member("potential")
                        .fault("cannot be read without a calibration; send the document of calibration-evaluations");
            } else if (calibrated && millivolts != (potential != null)) {
                place.member(potential != null ? "potential" : "displayed")
                        .fault(
                                millivolts
                                        ? "does not go with this calibration, which was made from millivolts: give potential"
                                        : "does not go with this calibration, which was made from displayed pH: give displayed");
            }
            return potential != null
                    ? potential.toPotential(place.member("potential"), -LARGEST_MV, LARGEST_MV)
                    : compensation.potentialBehind(displayed, temperature);
        }
    }

    private static List<SamplePoint> toPoints(PhReadingRequest request, Signal signal, Place place) {
        List<SamplePoint> points = new ArrayList<>();
        double before = -1;
        for (int i = 0; i < request.readings().size(); i++) {
            SamplePointRequest point = request.readings().get(i);
            Place at = place.item(i);
            double seconds = point.elapsed()
                    .toTimeSpan(at.member("elapsed"), 0, SamplePoint.LONGEST_S)
                    .seconds();
            if (!(seconds > before)) {
                at.member("elapsed")
                        .fault("must be later than the reading before, at %s s, but is %s s"
                                .formatted(Rounded.text(before), Rounded.text(seconds)));
            }
            before = seconds;
            Temperature temperature = point.temperature().toTemperature(at.member("temperature"), 0, 100);
            points.add(new SamplePoint(
                    seconds, signal.read(point.potential(), point.displayed(), temperature, at), temperature));
        }
        return points;
    }

    private static List<Recheck> toRechecks(PhReadingRequest request, Signal signal, Place place) {
        List<Recheck> rechecks = new ArrayList<>();
        if (request.rechecks() == null) {
            return rechecks;
        }
        for (int i = 0; i < request.rechecks().size(); i++) {
            RecheckRequest recheck = request.rechecks().get(i);
            Place at = place.item(i);
            double since = recheck.sinceCalibration()
                    .toTimeSpan(at.member("sinceCalibration"), 1, LONGEST_S)
                    .seconds();
            Temperature temperature = recheck.temperature().toTemperature(at.member("temperature"), -10, 100);
            Potential potential = signal.read(recheck.potential(), recheck.displayed(), temperature, at);
            BufferCups.toCup(recheck.buffer(), recheck.ph(), at)
                    .ifPresent(cup -> Optional.ofNullable(at.member("temperature")
                                    .build(() -> new Recheck(since, cup, potential, temperature), null))
                            .ifPresent(rechecks::add));
        }
        return rechecks;
    }

    private static PhInterval toRange(PhReadingRequest request, Place place) {
        if (request.lowPh() == null && request.highPh() == null) {
            PhRange usual = usualRange(request.liquid());
            return new PhInterval(usual.lowPh(), usual.highPh());
        }
        return place.member("highPh")
                .build(
                        () -> new PhInterval(optional(request.lowPh()), optional(request.highPh())),
                        new PhInterval(OptionalDouble.empty(), OptionalDouble.empty()));
    }

    private static PhRange usualRange(SampleLiquid liquid) {
        return PhRanges.find(
                        switch (liquid) {
                            case MASH -> "mash-home";
                            case WORT -> "boiled-wort";
                            case BEER -> "ale";
                            case LIQUOR -> "sparge-liquor";
                        })
                .orElseThrow();
    }

    private static OptionalDouble optional(@Nullable Double value) {
        return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
    }

    private static SettlingCriterion toCriterion(PhReadingRequest request, Place place) {
        SettlingCriterion usual = SettlingCriterion.usual();
        double window = request.settledWithin() == null
                ? usual.windowS()
                : request.settledWithin()
                        .toTimeSpan(place.member("settledWithin"), 5, 600)
                        .seconds();
        return new SettlingCriterion(
                request.settledChange() == null ? usual.changePh() : request.settledChange(), window);
    }

    private static PhReadingResult toResult(ReadingJudgement judgement) {
        PhInterval range = judgement.reading().range();
        return new PhReadingResult(
                judgement.verdict(),
                judgement.advice().stream()
                        .map(advice -> new ReadingAdviceRow(advice.id(), advice.message(), advice.source()))
                        .toList(),
                judgement.settling().state() == Settling.State.SETTLED,
                toSettling(judgement),
                toPh(judgement.temperature(), judgement.ph(), judgement.standardUncertainty()),
                toPh(new Temperature(20), judgement.phAt20(), judgement.standardUncertaintyAt20()),
                toBudget(judgement),
                toCompensation(judgement),
                toTemperatureEffect(judgement),
                Rounded.decimals(judgement.isothermalDifferencePh(), 4),
                judgement
                        .drift()
                        .map(drift -> new ElectrodeDrift(
                                Rounded.decimals(drift.ph(), 3),
                                Rounded.decimals(drift.standardUncertainty(), 3),
                                Rounded.decimals(drift.largestPh(), 3)))
                        .orElse(null),
                new RangeProbability(
                        range.low().isPresent() ? range.low().getAsDouble() : null,
                        range.high().isPresent() ? range.high().getAsDouble() : null,
                        Rounded.decimals(1 - judgement.probabilityBelow() - judgement.probabilityAbove(), 3),
                        Rounded.decimals(judgement.probabilityBelow(), 3),
                        Rounded.decimals(judgement.probabilityAbove(), 3)));
    }

    private static ReadingSettling toSettling(ReadingJudgement judgement) {
        Settling settling = judgement.settling();
        SettlingCriterion criterion = judgement.reading().criterion();
        return new ReadingSettling(
                settling.state(),
                Rounded.decimals(settling.ph(), 3),
                Rounded.decimals(settling.standardUncertainty(), 3),
                Rounded.decimals(settling.ph() - settling.halfWidth90(), 3),
                Rounded.decimals(settling.ph() + settling.halfWidth90(), 3),
                Rounded.decimals(settling.stillToComePh(), 3),
                Rounded.decimals(settling.changePh(), 3),
                seconds(settling.timeConstantS()),
                seconds(settling.waitS()),
                settling.course().stream().map(PhReadingMapper::toPoint).toList(),
                settling.outliers().stream().map(Settling.Outlier::index).toList(),
                "no more than %s pH in %s s, and no more than that to come"
                        .formatted(Rounded.text(criterion.changePh()), Rounded.text(criterion.windowS())));
    }

    private static CoursePoint toPoint(Settling.CoursePoint point) {
        return new CoursePoint(
                Rounded.decimals(point.seconds(), 3),
                Rounded.decimals(point.ph(), 3),
                point.curvePh().isPresent() ? Rounded.decimals(point.curvePh().getAsDouble(), 4) : null);
    }

    private static @Nullable TimeQuantity seconds(OptionalDouble value) {
        return value.isPresent() ? TimeQuantity.seconds(value.getAsDouble(), 0) : null;
    }

    private static SamplePh toPh(Temperature temperature, double ph, double uncertainty) {
        return new SamplePh(
                TemperatureQuantity.celsius(temperature.celsius(), 1),
                Rounded.decimals(ph, 2),
                Rounded.decimals(uncertainty, 3),
                Rounded.decimals(ph - Interval90.HALF_WIDTH * uncertainty, 2),
                Rounded.decimals(ph + Interval90.HALF_WIDTH * uncertainty, 2));
    }

    private static ReadingCompensation toCompensation(ReadingJudgement judgement) {
        CompensationEffect effect = judgement.compensation();
        return new ReadingCompensation(
                effect.kind(),
                TemperatureQuantity.celsius(effect.meterTemperature().celsius(), 1),
                Rounded.decimals(effect.usedMvPerPh(), 3),
                Rounded.decimals(effect.sampleMvPerPh(), 3),
                Rounded.decimals(effect.effectPh(), 4),
                effect.meaning().message());
    }

    private static SampleTemperatureEffect toTemperatureEffect(ReadingJudgement judgement) {
        SampleLiquid liquid = judgement.reading().liquid();
        TemperatureEffect effect = TemperatureEffect.of(liquid);
        double kelvins = judgement.temperature().celsius()
                - TemperatureEffect.reference().celsius();
        return new SampleTemperatureEffect(
                effect.fallPhPerK(),
                effect.standardUncertainty(),
                Rounded.decimals(judgement.phAt20() - judgement.ph(), 4),
                Rounded.decimals(requireNonNull(judgement.shares().get(DoubtCause.TEMPERATURE_EFFECT)), 4),
                published(liquid) ? Rounded.decimals(PublishedShift.lowestPerK() * kelvins, 4) : null,
                published(liquid) ? Rounded.decimals(PublishedShift.highestPerK() * kelvins, 4) : null);
    }

    private static boolean published(SampleLiquid liquid) {
        return liquid == SampleLiquid.MASH || liquid == SampleLiquid.WORT;
    }

    private static List<DoubtShare> toBudget(ReadingJudgement judgement) {
        double all = judgement.standardUncertaintyAt20();
        return judgement.shares().entrySet().stream()
                .filter(share -> share.getValue() > 0)
                .sorted(Map.Entry.<DoubtCause, Double>comparingByValue().reversed())
                .map(share -> new DoubtShare(
                        share.getKey(),
                        Rounded.significant(share.getValue(), 2),
                        Rounded.significant(
                                requireNonNull(judgement.sharesAtSample().get(share.getKey())), 2),
                        Rounded.decimals(share.getValue() * share.getValue() / (all * all), 2)))
                .toList();
    }

    private static List<String> sources(ReadingJudgement judgement, List<Check> checks) {
        Set<String> sources = new LinkedHashSet<>(List.of("CODATA-2018", "GUM-2008", "ISO-28037-2010"));
        sources.add(TemperatureEffect.of(judgement.reading().liquid()).source());
        judgement.assumptions().forEach(word -> sources.add(word.source()));
        if (published(judgement.reading().liquid())) {
            PublishedShift.all().forEach(shift -> sources.add(shift.source()));
        }
        checks.forEach(check -> sources.add(check.source()));
        judgement.advice().forEach(advice -> sources.add(advice.source()));
        sources.add("COMMON-PRACTICE");
        return List.copyOf(sources);
    }
}

package tunside.electrode.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import tunside.electrode.BufferCup;
import tunside.electrode.CalibratedPh;
import tunside.electrode.Calibration;
import tunside.electrode.IsothermalPoint;
import tunside.electrode.MeterCompensation;
import tunside.electrode.ReadingUncertainty;
import tunside.electrode.TemperatureCompensation;
import tunside.electrode.Verdict;
import tunside.finding.Finding;
import tunside.finding.Outcome;
import tunside.quantity.Temperature;

class ReadingJudgementTest {
    private static final Calibration FIT = Samples.calibration(Verdict.FIT);

    private static ReadingJudgement mash(double ph, double degC) {
        return ReadingJudgement.of(Samples.reading(FIT, Samples.standing(FIT, ph, degC, 10), SampleLiquid.MASH));
    }

    private static Outcome outcome(ReadingJudgement judged, String code) {
        return finding(judged, code).outcome();
    }

    private static Finding finding(ReadingJudgement judged, String code) {
        return judged.findings().stream()
                .filter(found -> found.code().equals(code))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no " + code));
    }

    private static List<String> advice(ReadingJudgement judged) {
        return judged.advice().stream().map(ReadingAdvice::id).toList();
    }

    /** The meter shows this of a true 5.40; read back, it is 5.40 again. */
    @ParameterizedTest(name = "true {0} at {1} degC")
    @CsvFileSource(resources = "/published/electrode/no-compensation.csv", useHeadersInDisplayName = true)
    void aMeterWithoutCompensationIsReadBack(
            double truePh, double degC, double displayedPh, double tolerance, String source) {
        ReadingJudgement judged = ReadingJudgement.of(Samples.displayed(displayedPh, degC, MeterCompensation.none()));
        double lastDigit = tolerance * 298.15 / new Temperature(degC).kelvin(); // of the display, carried to the pH
        assertThat(judged.ph()).as(source).isCloseTo(truePh, within(lastDigit));
        assertThat(judged.compensation().effectPh()).isCloseTo(displayedPh - truePh, within(lastDigit));
        assertThat(judged.compensation().usedMvPerPh()).isCloseTo(59.159350, within(1e-6));
        assertThat(judged.compensation().meterTemperature().celsius()).isEqualTo(25);
        assertThat(judged.compensation().meaning().key()).isEqualTo("none");
        assertThat(outcome(judged, "reading.compensation")).isEqualTo(Outcome.NOTE);
    }

    @Test
    void automaticAndManualCompensationAreToldApart() {
        ReadingJudgement automatic = ReadingJudgement.of(Samples.displayed(5.4, 40, MeterCompensation.automatic()));
        assertThat(automatic.ph()).isCloseTo(5.4, within(1e-12));
        assertThat(automatic.compensation().effectPh()).isZero();
        assertThat(automatic.compensation().usedMvPerPh())
                .isEqualTo(automatic.compensation().sampleMvPerPh())
                .isCloseTo(59.159350 * 313.15 / 298.15, within(1e-5));
        assertThat(automatic.compensation().meaning().key()).isEqualTo("automatic");
        ReadingJudgement manual =
                ReadingJudgement.of(Samples.displayed(5.4, 40, MeterCompensation.manual(new Temperature(20))));
        assertThat(manual.ph()).isCloseTo(7 - 1.6 * 293.15 / 313.15, within(1e-12));
        assertThat(manual.compensation().kind()).isEqualTo(TemperatureCompensation.MANUAL);
        assertThat(manual.compensation().meaning().key()).isEqualTo("manual");
        ReadingJudgement millivolts = mash(5.4, 40);
        assertThat(millivolts.compensation().meaning().key()).isEqualTo("potential");
        assertThat(millivolts.compensation().effectPh()).isZero();
        assertThat(outcome(millivolts, "reading.compensation")).isEqualTo(Outcome.PASS);
    }

    @Test
    void aStandingSampleIsReadAndBroughtToTwentyDegrees() {
        ReadingJudgement judged = mash(5.4, 30);
        assertThat(judged.ph()).isCloseTo(5.4, within(1e-9));
        assertThat(judged.phAt20()).isCloseTo(5.455, within(1e-9));
        assertThat(judged.settling().state()).isEqualTo(Settling.State.SETTLED);
        assertThat(judged.temperature().celsius()).isEqualTo(30);
    }

    @Test
    void everyShareIsWhatItsCauseBrings() {
        ReadingJudgement judged = mash(5.4, 30);
        Temperature at = new Temperature(30);
        CalibratedPh read = FIT.read(FIT.potential(5.4, at), at, ReadingUncertainty.USUAL);
        assertThat(judged.shares().get(DoubtCause.CALIBRATION)).isCloseTo(read.fromLine(), within(1e-9));
        assertThat(judged.shares().get(DoubtCause.POTENTIAL)).isCloseTo(0.5 / FIT.slopeMvPerPh(at), within(1e-12));
        assertThat(judged.shares().get(DoubtCause.LIQUID_JUNCTION)).isEqualTo(0.01);
        assertThat(judged.shares().get(DoubtCause.DISPLAY)).isCloseTo(0.001 / Math.sqrt(12), within(1e-12));
        assertThat(judged.shares().get(DoubtCause.DRIFT)).isCloseTo(0.05 * 4 / 24 / Math.sqrt(3), within(1e-12));
        assertThat(judged.shares().get(DoubtCause.ISOTHERMAL_POINT))
                .isCloseTo(Math.abs(judged.isothermalDifferencePh()) / Math.sqrt(3), within(1e-9));
        assertThat(judged.isothermalDifferencePh()).isCloseTo(-3.0 / 58 - -3 / FIT.slopeMvPerPh(at), within(1e-9));
        assertThat(judged.shares().get(DoubtCause.TEMPERATURE_EFFECT)).isCloseTo(0.013, within(1e-12));
        assertThat(judged.sharesAtSample().get(DoubtCause.TEMPERATURE_EFFECT)).isZero();
        assertThat(judged.sharesAtSample().get(DoubtCause.TEMPERATURE)).isCloseTo(1.6 / 303.15 * 0.5, within(1e-9));
        assertThat(judged.shares().get(DoubtCause.TEMPERATURE))
                .as("a warmer sample reads higher and is brought up further")
                .isCloseTo((1.6 / 303.15 + 0.0055) * 0.5, within(1e-9));
        assertThat(judged.shares().get(DoubtCause.UNCALIBRATED)).isZero();
    }

    @ParameterizedTest
    @EnumSource(SampleLiquid.class)
    void theSharesSumInQuadratureToTheWhole(SampleLiquid liquid) {
        ReadingJudgement judged = ReadingJudgement.of(Samples.reading(FIT, Samples.standing(FIT, 5.4, 35, 10), liquid));
        double at20 = 0;
        double own = 0;
        for (DoubtCause cause : DoubtCause.values()) {
            at20 += Math.pow(judged.shares().get(cause), 2);
            own += Math.pow(judged.sharesAtSample().get(cause), 2);
        }
        assertThat(judged.standardUncertaintyAt20()).isCloseTo(Math.sqrt(at20), within(1e-12));
        assertThat(judged.standardUncertainty()).isCloseTo(Math.sqrt(own), within(1e-12));
        assertThat(judged.assumptions())
                .extracting(ReadingWord::key)
                .contains(liquid.name().toLowerCase(java.util.Locale.ROOT), "slope", "offset-kept", "unseen-drift");
        assertThat(judged.assumptions().stream().anyMatch(word -> word.key().equals("conventional")))
                .isEqualTo(liquid != SampleLiquid.LIQUOR);
        assertThat(outcome(judged, "reading.conventional"))
                .isEqualTo(liquid == SampleLiquid.LIQUOR ? Outcome.PASS : Outcome.NOTE);
        assertThat(outcome(judged, "reading.temperature-effect"))
                .isEqualTo(liquid == SampleLiquid.MASH || liquid == SampleLiquid.WORT ? Outcome.PASS : Outcome.NOTE);
        assertThat(advice(judged).contains("discard")).isEqualTo(liquid != SampleLiquid.LIQUOR);
    }

    @ParameterizedTest
    @CsvSource({"5.38, IN_RANGE, leave-it", "5.6, ABOVE, lower", "5.1, BELOW, raise", "5.5, CANNOT_TELL, measure-again"
    })
    void theVerdictFollowsTheProbabilities(double ph, ReadingVerdict verdict, String id) {
        ReadingJudgement judged = mash(ph, 20);
        assertThat(judged.verdict()).isEqualTo(verdict);
        assertThat(advice(judged)).contains(id);
        assertThat(judged.probabilityBelow() + judged.probabilityAbove()).isBetween(0.0, 1.0);
    }

    @Test
    void atTheEndOfTheRangeEitherSideIsAsLikely() {
        ReadingJudgement judged = mash(5.5, 20);
        assertThat(judged.probabilityAbove()).isCloseTo(0.5, within(1e-6));
        assertThat(judged.probabilityBelow()).isLessThan(1e-6);
    }

    @Test
    void anOpenEndHasNothingBeyondIt() {
        SampleReading open = new SampleReading(
                Samples.standing(FIT, 5.4, 20, 10),
                Optional.of(FIT),
                FIT.compensation(),
                ReadingUncertainty.USUAL,
                0.01,
                SampleLiquid.LIQUOR,
                SettlingCriterion.usual(),
                OptionalDouble.empty(),
                List.of(),
                new PhInterval(OptionalDouble.empty(), OptionalDouble.of(5.8)));
        ReadingJudgement judged = ReadingJudgement.of(open);
        assertThat(judged.probabilityBelow()).isZero();
        assertThat(judged.verdict()).isEqualTo(ReadingVerdict.IN_RANGE);
        assertThat(judged.shares().get(DoubtCause.DRIFT)).as("8 h assumed").isCloseTo(0.0096225, within(1e-7));
        assertThat(outcome(judged, "reading.calibration-age")).isEqualTo(Outcome.NOTE);
        assertThat(finding(judged, "reading.calibration-age").observed()).hasValue(8);
    }

    @Test
    void anUncalibratedMeterIsNeverTrusted() {
        ReadingJudgement judged = ReadingJudgement.of(Samples.displayed(5.35, 20, MeterCompensation.automatic()));
        assertThat(judged.shares().get(DoubtCause.UNCALIBRATED)).isEqualTo(0.3);
        assertThat(judged.shares().get(DoubtCause.DRIFT)).isZero();
        assertThat(judged.verdict()).isEqualTo(ReadingVerdict.CANNOT_TELL);
        assertThat(outcome(judged, "reading.calibration")).isEqualTo(Outcome.STOP);
        assertThat(outcome(judged, "reading.certainty")).isEqualTo(Outcome.CAUTION);
        assertThat(advice(judged)).startsWith("calibrate", "watch").doesNotContain("measure-again", "recheck");
        assertThat(judged.assumptions())
                .extracting(ReadingWord::key)
                .contains("uncalibrated", "one-reading")
                .doesNotContain("unseen-drift", "drift");
    }

    /** 30 mV and 7.5 % of slope either way, rectangular, at pH 5.4: what the assumed doubt stands for. */
    @Test
    void theDoubtOfAnUncalibratedMeterFollowsFromTheLimitsOfUse() {
        double byOffset = 30 / Math.sqrt(3) / 59.159;
        double bySlope = (7 - 5.4) * 0.075 / Math.sqrt(3);
        assertThat(Math.hypot(byOffset, bySlope)).as("USP-791").isCloseTo(0.3, within(0.005));
    }

    @Test
    void anUnfitElectrodeStopsAndOneWithCareCautions() {
        Calibration unfit = Samples.calibration(Verdict.UNFIT);
        ReadingJudgement stopped =
                ReadingJudgement.of(Samples.reading(unfit, Samples.standing(unfit, 5.4, 20, 10), SampleLiquid.MASH));
        assertThat(outcome(stopped, "reading.calibration")).isEqualTo(Outcome.STOP);
        assertThat(stopped.verdict()).isEqualTo(ReadingVerdict.CANNOT_TELL);
        assertThat(stopped.shares().get(DoubtCause.UNCALIBRATED)).isEqualTo(0.3);
        assertThat(advice(stopped)).startsWith("replace-electrode").doesNotContain("leave-it");
        Calibration care = Samples.calibration(Verdict.FIT_WITH_CARE);
        ReadingJudgement cautioned =
                ReadingJudgement.of(Samples.reading(care, Samples.standing(care, 5.4, 20, 10), SampleLiquid.MASH));
        assertThat(outcome(cautioned, "reading.calibration")).isEqualTo(Outcome.CAUTION);
        assertThat(cautioned.verdict()).isEqualTo(ReadingVerdict.IN_RANGE);
        assertThat(outcome(mash(5.4, 20), "reading.calibration")).isEqualTo(Outcome.PASS);
    }

    @ParameterizedTest
    @CsvSource({
        "9.9, CAUTION",
        "10, PASS",
        "30, PASS",
        "30.1, CAUTION",
        "50, CAUTION",
        "50.1, STOP",
    })
    void theSampleShouldBeCool(double degC, Outcome outcome) {
        ReadingJudgement judged = mash(5.4, degC);
        assertThat(outcome(judged, "reading.sample-temperature")).isEqualTo(outcome);
        assertThat(finding(judged, "reading.sample-temperature").pointer()).isEqualTo("/readings/9/temperature");
        assertThat(advice(judged).contains("cool")).isEqualTo(degC > 30);
    }

    @ParameterizedTest
    @CsvSource({"20, PASS", "30, PASS", "30.1, NOTE", "19.9, NOTE"})
    void sampleAndCalibrationShouldBeNearInTemperature(double degC, Outcome outcome) {
        assertThat(outcome(mash(5.4, degC), "reading.temperature-difference")).isEqualTo(outcome);
    }

    @Test
    void aReadingOutsideTheBuffersIsExtended() {
        ReadingJudgement low = mash(3.5, 20);
        assertThat(outcome(low, "reading.bracket")).isEqualTo(Outcome.CAUTION);
        assertThat(finding(low, "reading.bracket").expected()).hasValue(4);
        assertThat(finding(low, "reading.bracket").observed()).hasValue(3.5);
        assertThat(advice(low)).contains("bracket");
        assertThat(finding(mash(9.5, 20), "reading.bracket").expected()).hasValue(9);
        assertThat(outcome(mash(5.4, 20), "reading.bracket")).isEqualTo(Outcome.PASS);
        assertThat(advice(mash(5.4, 20))).doesNotContain("bracket");
    }

    @ParameterizedTest
    @CsvSource({"4.049, PASS", "4.051, CAUTION", "3.949, CAUTION"})
    void driftIsTakenOffAndTold(double read, Outcome outcome) {
        Temperature at = new Temperature(25);
        Recheck recheck = new Recheck(8 * 3600, BufferCup.ofPh(4), FIT.potential(read, at), at);
        ReadingJudgement judged = ReadingJudgement.of(Samples.reading(
                FIT, Samples.standing(FIT, 5.4, 20, 10), SampleLiquid.MASH, Samples.CERTAIN, List.of(recheck)));
        assertThat(judged.ph()).isCloseTo(5.4 - (read - 4) / 2, within(1e-9));
        assertThat(outcome(judged, "reading.drift")).isEqualTo(outcome);
        assertThat(advice(judged).contains("recalibrate")).isEqualTo(outcome == Outcome.CAUTION);
        assertThat(advice(judged)).doesNotContain("recheck");
        assertThat(judged.shares().get(DoubtCause.DRIFT))
                .isEqualTo(judged.drift().orElseThrow().standardUncertainty());
        assertThat(judged.assumptions()).extracting(ReadingWord::key).contains("drift");
        assertThat(outcome(mash(5.4, 20), "reading.drift")).isEqualTo(Outcome.NOTE);
        assertThat(advice(mash(5.4, 20))).contains("recheck");
    }

    @Test
    void anOldCalibrationIsTold() {
        SampleReading fresh = Samples.reading(FIT, Samples.standing(FIT, 5.4, 20, 10), SampleLiquid.MASH);
        assertThat(outcome(ReadingJudgement.of(aged(fresh, 24)), "reading.calibration-age"))
                .isEqualTo(Outcome.PASS);
        ReadingJudgement old = ReadingJudgement.of(aged(fresh, 24.1));
        assertThat(outcome(old, "reading.calibration-age")).isEqualTo(Outcome.CAUTION);
        assertThat(finding(old, "reading.calibration-age").observed().getAsDouble())
                .isCloseTo(24.1, within(1e-9));
        assertThat(finding(old, "reading.calibration-age").expected()).hasValue(24);
    }

    private static SampleReading aged(SampleReading reading, double hours) {
        return new SampleReading(
                reading.points(),
                reading.calibration(),
                reading.compensation(),
                reading.uncertainty(),
                reading.stepPh(),
                reading.liquid(),
                reading.criterion(),
                OptionalDouble.of(hours * 3600),
                reading.rechecks(),
                reading.range());
    }

    @Test
    void aCoolingSampleIsComparedAtOneTemperature() {
        List<SamplePoint> points = new java.util.ArrayList<>();
        for (int i = 0; i < 10; i++) {
            double degC = 40 - i;
            points.add(Samples.point(FIT, 5.5 - 0.0055 * (degC - 20), degC, 10 * i));
        }
        ReadingJudgement judged = ReadingJudgement.of(Samples.reading(FIT, points, SampleLiquid.MASH));
        assertThat(judged.settling().state()).isEqualTo(Settling.State.SETTLED);
        assertThat(judged.phAt20()).isCloseTo(5.5, within(1e-9));
        assertThat(judged.ph()).isCloseTo(5.5 - 0.0055 * 11, within(1e-9));
    }

    @Test
    void aSeriesThatStillMovesIsToldToWait() {
        List<SamplePoint> points = new java.util.ArrayList<>();
        for (int i = 0; i < 20; i++) {
            points.add(Samples.point(FIT, 5.4 + 0.5 * Math.exp(-i * 5 / 30.0), 20, 5 * i));
        }
        ReadingJudgement judged = ReadingJudgement.of(Samples.reading(FIT, points, SampleLiquid.MASH));
        assertThat(outcome(judged, "reading.settling")).isEqualTo(Outcome.CAUTION);
        assertThat(finding(judged, "reading.settling").observed()).hasValue(-0.021);
        assertThat(finding(judged, "reading.settling").expected()).hasValue(0.01);
        assertThat(advice(judged)).startsWith("wait").doesNotContain("leave-it");
        assertThat(judged.assumptions()).extracting(ReadingWord::key).contains("settling");
        assertThat(judged.ph()).isCloseTo(5.4, within(1e-4));
        ReadingJudgement brief = ReadingJudgement.of(Samples.reading(FIT, points.subList(0, 4), SampleLiquid.MASH));
        assertThat(outcome(brief, "reading.series")).isEqualTo(Outcome.NOTE);
        assertThat(advice(brief)).startsWith("watch");
        assertThat(brief.assumptions()).extracting(ReadingWord::key).contains("no-curve");
    }

    /** What each finding shows, and what it is held against. */
    @Test
    void theFindingsCarryTheirNumbers() {
        List<SamplePoint> points = new java.util.ArrayList<>(Samples.standing(FIT, 5.4, 22, 20));
        points.set(7, Samples.point(FIT, 5.7, 22, 70));
        ReadingJudgement judged = ReadingJudgement.of(Samples.reading(FIT, points, SampleLiquid.MASH));
        assertThat(finding(judged, "reading.series").observed()).hasValue(20);
        assertThat(finding(judged, "reading.series").expected()).hasValue(8);
        Finding outlier = finding(judged, "reading.outlier");
        assertThat(outlier.outcome()).isEqualTo(Outcome.NOTE);
        assertThat(outlier.pointer()).isEqualTo("/readings/7");
        assertThat(outlier.observed()).hasValue(0.3);
        assertThat(outlier.expected()).hasValue(judged.settling().noisePh());
        assertThat(finding(judged, "reading.temperature-difference").observed().getAsDouble())
                .isCloseTo(3, within(1e-9));
        assertThat(finding(judged, "reading.temperature-difference").expected()).hasValue(5);
        assertThat(finding(judged, "reading.sample-temperature").observed()).hasValue(22);
        assertThat(finding(judged, "reading.sample-temperature").expected()).hasValue(50);
        assertThat(finding(judged, "reading.calibration-age").observed()).hasValue(4);
        assertThat(finding(judged, "reading.compensation").pointer()).isEqualTo("/calibration/meter");
        assertThat(finding(judged, "reading.certainty").outcome()).isEqualTo(Outcome.PASS);
        assertThat(finding(judged, "reading.certainty").observed().getAsDouble())
                .isCloseTo(judged.standardUncertaintyAt20(), within(0.0005));
        assertThat(finding(judged, "reading.certainty").expected()).hasValue(0.05);
        ReadingJudgement clean = mash(5.4, 22);
        assertThat(outcome(clean, "reading.outlier")).isEqualTo(Outcome.PASS);
        assertThat(clean.findings())
                .filteredOn(found -> found.code().equals("reading.outlier"))
                .hasSize(1);
        ReadingJudgement single = ReadingJudgement.of(Samples.displayed(5.4, 40, MeterCompensation.none()));
        assertThat(finding(single, "reading.series").observed().getAsDouble())
                .as("0.05 root 3 may be to come")
                .isCloseTo(0.087, within(1e-12));
        Finding compensation = finding(single, "reading.compensation");
        assertThat(compensation.pointer()).isEqualTo("/meter");
        assertThat(compensation.observed()).hasValue(25);
        assertThat(compensation.expected()).hasValue(40);
        assertThat(single.findings())
                .extracting(Finding::code)
                .doesNotContain("reading.settling", "reading.drift", "reading.bracket", "reading.calibration-age");
    }

    @Test
    void theOtherIsothermalPointIsNamed() {
        Calibration zero = FIT.with(IsothermalPoint.ZERO_POINT_KEPT);
        ReadingJudgement judged =
                ReadingJudgement.of(Samples.reading(zero, Samples.standing(zero, 5.4, 45, 10), SampleLiquid.MASH));
        assertThat(judged.assumptions()).extracting(ReadingWord::key).contains("zero-point-kept");
        assertThat(judged.isothermalDifferencePh())
                .isCloseTo(-3 / FIT.slopeMvPerPh(new Temperature(45)) - -3.0 / 58, within(1e-9));
    }

    @Test
    void nonsenseIsRefused() {
        List<SamplePoint> points = Samples.standing(FIT, 5.4, 20, 3);
        SampleReading good = Samples.reading(FIT, points, SampleLiquid.MASH);
        assertThatThrownBy(() -> Samples.reading(FIT, List.of(), SampleLiquid.MASH))
                .hasMessageContaining("from 1 to 2000 readings but this has 0");
        assertThat(Samples.reading(FIT, Samples.standing(FIT, 5.4, 20, 2000), SampleLiquid.MASH)
                        .points())
                .hasSize(2000);
        assertThatThrownBy(() -> Samples.reading(FIT, Samples.standing(FIT, 5.4, 20, 2001), SampleLiquid.MASH))
                .hasMessageContaining("but this has 2001");
        assertThatThrownBy(() ->
                        Samples.reading(FIT, List.of(points.get(0), points.get(1), points.get(1)), SampleLiquid.MASH))
                .hasMessageContaining("reading 2 is not later");
        assertThatThrownBy(() -> step(good, 0.00009)).hasMessageContaining("step must be from 0.0001 to 0.5");
        assertThatThrownBy(() -> step(good, 0.51)).hasMessageContaining("0.51");
        assertThatThrownBy(() -> step(good, Double.NaN)).hasMessageContaining("NaN");
        assertThat(step(good, 0.0001).stepPh()).isEqualTo(0.0001);
        assertThat(step(good, 0.5).stepPh()).isEqualTo(0.5);
        assertThatThrownBy(() -> new SamplePoint(-1, Samples.millivolts(0), new Temperature(20)))
                .hasMessageContaining("-1.0 s");
        assertThatThrownBy(() -> new SamplePoint(86_401, Samples.millivolts(0), new Temperature(20)))
                .hasMessageContaining("86401.0 s");
        assertThat(new SamplePoint(86_400, Samples.millivolts(0), new Temperature(20)).seconds())
                .isEqualTo(86_400);
        assertThatThrownBy(() -> new PhInterval(OptionalDouble.of(5.5), OptionalDouble.of(5.5)))
                .hasMessageContaining("must rise");
        assertThatThrownBy(() -> new PhInterval(OptionalDouble.of(-0.1), OptionalDouble.empty()))
                .hasMessageContaining("must rise");
        assertThatThrownBy(() -> new PhInterval(OptionalDouble.empty(), OptionalDouble.of(14.1)))
                .hasMessageContaining("must rise");
        assertThatThrownBy(() -> new SettlingCriterion(0.0009, 30)).hasMessageContaining("0.001 to 0.5");
        assertThatThrownBy(() -> new SettlingCriterion(0.51, 30)).hasMessageContaining("0.51");
        assertThatThrownBy(() -> new SettlingCriterion(0.01, 4.9)).hasMessageContaining("5 to 600 s");
        assertThatThrownBy(() -> new SettlingCriterion(0.01, 601)).hasMessageContaining("601");
        assertThat(new SettlingCriterion(0.001, 5)).isNotEqualTo(new SettlingCriterion(0.5, 600));
        Recheck recheck = new Recheck(1, BufferCup.ofPh(4), Samples.millivolts(170), new Temperature(25));
        assertThatThrownBy(() -> new SampleReading(
                        points,
                        Optional.of(FIT),
                        FIT.compensation(),
                        ReadingUncertainty.USUAL,
                        0.01,
                        SampleLiquid.MASH,
                        SettlingCriterion.usual(),
                        OptionalDouble.empty(),
                        List.of(recheck),
                        Samples.MASH))
                .hasMessageContaining("a re-check needs a calibration");
    }

    private static SampleReading step(SampleReading reading, double step) {
        return new SampleReading(
                reading.points(),
                reading.calibration(),
                reading.compensation(),
                reading.uncertainty(),
                step,
                reading.liquid(),
                reading.criterion(),
                reading.sinceCalibrationS(),
                reading.rechecks(),
                reading.range());
    }

    @Test
    void theUsualStepsAreThoseOfTheTable() {
        assertThat(SampleReading.usualStepPh(false)).isEqualTo(0.01);
        assertThat(SampleReading.usualStepPh(true)).isCloseTo(0.1 / 59.15935, within(1e-8));
    }
}

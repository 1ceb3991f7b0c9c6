package tunside.electrode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static tunside.electrode.Sessions.cup;
import static tunside.electrode.Sessions.millivolts;
import static tunside.electrode.Sessions.own;
import static tunside.electrode.Sessions.prepared;
import static tunside.electrode.Sessions.reading;
import static tunside.electrode.Sessions.settled;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tunside.finding.Finding;
import tunside.finding.Outcome;
import tunside.quantity.Temperature;
import tunside.quantity.TimeSpan;

class CalibrationChecksTest {
    private static CalibrationEvaluation twoBuffers(double slopePercent, double offsetMv) {
        return CalibrationEvaluation.of(Sessions.potentials(
                reading("iupac-phthalate", millivolts(4.005, 25, slopePercent, offsetMv)),
                reading("iupac-phosphate", millivolts(6.865, 25, slopePercent, offsetMv))));
    }

    private static Finding finding(CalibrationEvaluation evaluation, String code) {
        return evaluation.findings().stream()
                .filter(finding -> finding.code().equals(code))
                .findFirst()
                .orElseThrow();
    }

    private static List<String> steps(CalibrationEvaluation evaluation) {
        return evaluation.nextSteps().stream().map(NextStep::id).toList();
    }

    @ParameterizedTest
    @CsvSource({
        "98,    electrode.slope,          PASS",
        "95.01, electrode.slope,          PASS",
        "94.99, electrode.slope,          CAUTION",
        "90.01, electrode.slope,          CAUTION",
        "89.99, electrode.slope,          STOP",
        "84,    electrode.slope,          STOP",
        "104.99, electrode.slope-high,    PASS",
        "105.01, electrode.slope-high,    STOP",
        "20.1,  electrode.slope,          STOP",
        "20.1,  electrode.same-potential, PASS",
        "19.9,  electrode.same-potential, STOP",
        "-19.9, electrode.same-potential, STOP",
        "-20.1, electrode.direction,      STOP",
        "-19.9, electrode.direction,      PASS",
    })
    void theSlopeIsJudgedByItsLimits(double percent, String code, Outcome outcome) {
        assertThat(finding(twoBuffers(percent, 0), code).outcome()).isEqualTo(outcome);
    }

    @ParameterizedTest
    @CsvSource({
        "0, PASS",
        "14.9, PASS",
        "-14.9, PASS",
        "15.1, CAUTION",
        "-15.1, CAUTION",
        "29.9, CAUTION",
        "30.1, STOP",
        "-30.1, STOP",
    })
    void theOffsetIsJudgedByItsLimits(double offsetMv, Outcome outcome) {
        Finding finding = finding(twoBuffers(98, offsetMv), "electrode.offset");
        assertThat(finding.outcome()).isEqualTo(outcome);
        assertThat(finding.observed().orElseThrow()).isCloseTo(offsetMv, within(1e-6));
        assertThat(finding.expected().orElseThrow()).isEqualTo(outcome == Outcome.STOP ? 30 : 15);
    }

    @Test
    void theVerdictIsThatOfTheWorstFinding() {
        assertThat(twoBuffers(98, 0).verdict()).isEqualTo(Verdict.FIT);
        assertThat(twoBuffers(98, 0).reasons()).isEmpty();
        assertThat(twoBuffers(98, 20).verdict()).isEqualTo(Verdict.FIT_WITH_CARE);
        assertThat(twoBuffers(98, 40).verdict()).isEqualTo(Verdict.UNFIT);
        assertThat(twoBuffers(98, 40).reasons())
                .extracting(Finding::code)
                .contains("electrode.offset")
                .doesNotContain("electrode.slope");
        assertThat(twoBuffers(98, 40).calibration().orElseThrow().verdict()).isEqualTo(Verdict.UNFIT);
    }

    @Test
    void aLineThatRisesOrIsFlatLeavesNoCalibration() {
        for (double percent : new double[] {-98, 0.5}) {
            CalibrationEvaluation evaluation = twoBuffers(percent, 0);
            assertThat(evaluation.calibration()).isEmpty();
            assertThat(evaluation.expected()).isEmpty();
            assertThat(evaluation.verdict()).isEqualTo(Verdict.UNFIT);
            assertThat(steps(evaluation)).doesNotContain("use");
        }
    }

    @Test
    void whatToDoFollowsFromWhatWasFound() {
        assertThat(steps(twoBuffers(98, 0))).containsExactly("third-buffer", "use", "storage");
        assertThat(steps(twoBuffers(84, 0)))
                .contains("replace-if-stays", "recondition")
                .doesNotContain("use");
        assertThat(steps(twoBuffers(88, 0))).doesNotContain("replace-if-stays");
        assertThat(steps(twoBuffers(1, 0)).get(0)).isEqualTo("replace-electrode");
        assertThat(steps(twoBuffers(98, 50)).get(0)).isEqualTo("clean-reference");
    }

    @Test
    void aReadingOffTheLineIsCaught() {
        CalibrationEvaluation evaluation = CalibrationEvaluation.of(Sessions.potentials(
                reading("iupac-phthalate", millivolts(4.005, 25, 98, 0)),
                reading("iupac-phosphate", millivolts(6.865, 25, 98, 0) + 6),
                reading("iupac-borax", millivolts(9.18, 25, 98, 0))));
        assertThat(finding(evaluation, "electrode.agreement").outcome()).isEqualTo(Outcome.STOP);
        assertThat(finding(evaluation, "electrode.segment-slopes").outcome()).isEqualTo(Outcome.CAUTION);
        assertThat(finding(evaluation, "electrode.independent-buffer").outcome())
                .isEqualTo(Outcome.PASS);
        assertThat(evaluation.line().consistent()).isFalse();
        assertThat(evaluation.line().line().chiSquared())
                .isGreaterThan(evaluation.line().largestChiSquared());
        assertThat(evaluation.line().largestChiSquared()).isCloseTo(3.8415, within(1e-4));
    }

    @Test
    void scatterBeyondTheUncertaintiesWidensThem() {
        CalibrationSession scattered = Sessions.potentials(
                reading("iupac-phthalate", millivolts(4.005, 25, 98, 0)),
                reading("iupac-phosphate", millivolts(6.865, 25, 98, 0) + 3),
                reading("iupac-borax", millivolts(9.18, 25, 98, 0)));
        CalibrationEvaluation evaluation = CalibrationEvaluation.of(scattered);
        assertThat(finding(evaluation, "electrode.agreement").outcome()).isEqualTo(Outcome.CAUTION);
        double chiSquared = evaluation.line().line().chiSquared();
        CalibrationSession straight = Sessions.potentials(
                reading("iupac-phthalate", millivolts(4.005, 25, 98, 0)),
                reading("iupac-phosphate", millivolts(6.865, 25, 98, 0)),
                reading("iupac-borax", millivolts(9.18, 25, 98, 0)));
        double plain = CalibrationLine.of(straight).slopePercentUncertainty();
        assertThat(evaluation.line().slopePercentUncertainty() / plain).isCloseTo(Math.sqrt(chiSquared), within(0.01));
    }

    @ParameterizedTest
    @CsvSource({"5.4, PASS", "4.005, PASS", "6.865, PASS", "4.0, CAUTION", "6.87, CAUTION"})
    void theExpectedPhMustLieBetweenTheBuffers(double expectedPh, Outcome outcome) {
        CalibrationSession session = new CalibrationSession(
                List.of(reading("iupac-phthalate", 173), reading("iupac-phosphate", 8)),
                MeterReadout.POTENTIAL,
                MeterCompensation.automatic(),
                ReadingUncertainty.USUAL,
                expectedPh);
        CalibrationEvaluation evaluation = CalibrationEvaluation.of(session);
        assertThat(finding(evaluation, "electrode.bracketing").outcome()).isEqualTo(outcome);
        assertThat(evaluation.bracketed()).isEqualTo(outcome == Outcome.PASS);
        assertThat(steps(evaluation).contains("bracket")).isEqualTo(outcome != Outcome.PASS);
        assertThat(evaluation.expected().orElseThrow().ph()).isCloseTo(expectedPh, within(1e-9));
    }

    @Test
    void buffersNearEachOtherAreNotEnough() {
        CalibrationEvaluation near = CalibrationEvaluation.of(
                Sessions.potentials(own(5, millivolts(5, 25, 98, 0)), own(6.9, millivolts(6.9, 25, 98, 0))));
        assertThat(finding(near, "electrode.buffer-distance").outcome()).isEqualTo(Outcome.CAUTION);
        assertThatThrownBy(() -> CalibrationEvaluation.of(Sessions.potentials(own(6, 57), own(6.9, 6))))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("at least 1.0 pH");
        assertThat(CalibrationEvaluation.of(Sessions.potentials(own(6, 58), own(7, 0))))
                .isNotNull();
    }

    @ParameterizedTest
    @CsvSource({"10, PASS", "30, PASS", "31, NOTE", "60, NOTE", "61, CAUTION", "300, CAUTION", "301, STOP"})
    void settlingTimesAreJudged(double seconds, Outcome outcome) {
        CalibrationEvaluation evaluation = CalibrationEvaluation.of(
                Sessions.potentials(settled(reading("iupac-phthalate", 173), seconds), reading("iupac-phosphate", 8)));
        Finding finding = finding(evaluation, "electrode.settling");
        assertThat(finding.outcome()).isEqualTo(outcome);
        assertThat(finding.pointer()).isEqualTo("/readings/0/settlingTime");
        assertThat(steps(evaluation).contains("wait-longer")).isEqualTo(outcome != Outcome.PASS);
    }

    @ParameterizedTest
    @CsvSource({
        "25, 25, PASS, PASS",
        "25, 20, PASS, PASS",
        "25, 19.9, PASS, CAUTION",
        "4.9, 4.9, CAUTION, PASS",
        "50, 50, PASS, PASS"
    })
    void temperaturesAreJudged(double first, double second, Outcome range, Outcome spread) {
        CalibrationEvaluation evaluation = CalibrationEvaluation.of(Sessions.potentials(
                reading(cup("iupac-phthalate"), first, 170), reading(cup("iupac-phosphate"), second, 8)));
        assertThat(finding(evaluation, "electrode.buffer-temperature").outcome())
                .isEqualTo(range);
        assertThat(finding(evaluation, "electrode.temperature-spread").outcome())
                .isEqualTo(spread);
    }

    @Test
    void mixedSetsAreNoted() {
        assertThat(finding(twoBuffers(98, 0), "electrode.buffer-family").outcome())
                .isEqualTo(Outcome.PASS);
        CalibrationEvaluation mixed = CalibrationEvaluation.of(
                Sessions.potentials(reading("technical-4.00", 174), reading("jis-phosphate", 8)));
        assertThat(finding(mixed, "electrode.buffer-family").outcome()).isEqualTo(Outcome.NOTE);
    }

    @Test
    void repeatedReadingsMustAgree() {
        BufferReading first = reading("iupac-phthalate", 170);
        BufferReading second = reading("iupac-phosphate", 5);
        CalibrationEvaluation good =
                CalibrationEvaluation.of(Sessions.potentials(first, second, reading("iupac-phosphate", 5 + 2.9)));
        CalibrationEvaluation poor =
                CalibrationEvaluation.of(Sessions.potentials(first, second, reading("iupac-phosphate", 5 + 3.1)));
        assertThat(finding(good, "electrode.repeat").outcome()).isEqualTo(Outcome.PASS);
        assertThat(finding(poor, "electrode.repeat").outcome()).isEqualTo(Outcome.CAUTION);
        assertThat(finding(poor, "electrode.repeat").observed().orElseThrow()).isCloseTo(3.1 / 59.159350, within(1e-6));
        assertThat(poor.segments()).hasSize(1);
        assertThat(twoBuffers(98, 0).findings()).extracting(Finding::code).doesNotContain("electrode.repeat");
    }

    @Test
    void waterAndAgeOfABufferAreJudgedAndCounted() {
        Preparation wet =
                new Preparation(OptionalDouble.of(1.1), Optional.of(new TimeSpan(30 * 86_400.0)), BufferState.MADE_UP);
        Preparation fine =
                new Preparation(OptionalDouble.of(1.05), Optional.of(new TimeSpan(28 * 86_400.0)), BufferState.MADE_UP);
        CalibrationEvaluation evaluation = CalibrationEvaluation.of(Sessions.potentials(
                reading(prepared("iupac-phthalate", fine), 25, 170), reading(prepared("iupac-phosphate", wet), 25, 5)));
        List<Finding> water = evaluation.findings().stream()
                .filter(finding -> finding.code().equals("electrode.buffer-water"))
                .toList();
        assertThat(water).extracting(Finding::outcome).containsExactly(Outcome.PASS, Outcome.CAUTION);
        assertThat(water.get(1).pointer()).isEqualTo("/readings/1/preparation");
        assertThat(water.get(1).observed().orElseThrow()).isCloseTo(110, within(1e-9));
        assertThat(water.get(1).subject()).isEqualTo("iupac-phosphate");
        assertThat(evaluation.findings().stream()
                        .filter(finding -> finding.code().equals("electrode.buffer-age")))
                .extracting(Finding::outcome)
                .containsExactly(Outcome.PASS, Outcome.CAUTION);
        assertThat(steps(evaluation)).contains("weigh-water", "repeat-fresh");
        assertThat(evaluation.session().readings().get(1).buffer().ph())
                .isCloseTo(6.865 + 0.0118 - 0.001, within(0.002));
    }

    @Test
    void theTemperatureThatAMeterComputesWithIsChecked() {
        for (double setting : new double[] {20, 22, 22.1, 24, 24.1, 17.9}) {
            MeterCompensation manual = MeterCompensation.manual(new Temperature(setting));
            CalibrationEvaluation evaluation = displayed(MeterReadout.AS_FOUND, manual, 22, 4.0, 6.87);
            boolean near = Math.abs(setting - 22) <= 2;
            assertThat(finding(evaluation, "electrode.compensation").outcome())
                    .isEqualTo(near ? Outcome.PASS : Outcome.NOTE);
        }
        assertThat(twoBuffers(98, 0).findings()).extracting(Finding::code).doesNotContain("electrode.compensation");
    }

    @Test
    void aDisplayThatIsOffIsNotedBeforeAndCautionedAfterAdjusting() {
        MeterCompensation automatic = MeterCompensation.automatic();
        assertThat(finding(displayed(MeterReadout.AS_FOUND, automatic, 25, 4.1, 6.96), "electrode.display")
                        .outcome())
                .isEqualTo(Outcome.NOTE);
        CalibrationEvaluation after = displayed(MeterReadout.AFTER_ADJUSTING, automatic, 25, 4.1, 6.96);
        assertThat(finding(after, "electrode.display").outcome()).isEqualTo(Outcome.CAUTION);
        assertThat(finding(after, "electrode.display").observed().orElseThrow()).isCloseTo(0.095, within(1e-9));
        assertThat(steps(after)).contains("reset-meter");
        assertThat(after.unknowns()).hasSize(2);
        CalibrationEvaluation good = displayed(MeterReadout.AFTER_ADJUSTING, automatic, 25, 4.01, 6.87);
        assertThat(finding(good, "electrode.display").outcome()).isEqualTo(Outcome.PASS);
        assertThat(good.verdict()).isEqualTo(Verdict.FIT_WITH_CARE);
        assertThat(good.reasons()).extracting(Finding::code).containsExactly("electrode.display-only");
        CalibrationEvaluation found = displayed(MeterReadout.AS_FOUND, automatic, 25, 4.01, 6.87);
        assertThat(found.verdict()).isEqualTo(Verdict.FIT);
        assertThat(finding(found, "electrode.display-only").outcome()).isEqualTo(Outcome.NOTE);
        assertThat(found.findings()).extracting(Finding::code).doesNotContain("electrode.slope", "electrode.offset");
        assertThat(finding(twoBuffers(98, 0), "electrode.slope").outcome()).isEqualTo(Outcome.PASS);
        assertThat(good.calibration().orElseThrow().signal()).isEqualTo(CalibrationSignal.DISPLAYED_PH);
        assertThat(twoBuffers(98, 0).unknowns()).isEmpty();
        assertThat(twoBuffers(98, 0).calibration().orElseThrow().signal()).isEqualTo(CalibrationSignal.POTENTIAL);
    }

    @ParameterizedTest
    @CsvSource({
        "100, 0, electrode.sensitivity, PASS, FIT",
        "94.9, 0, electrode.sensitivity, CAUTION, FIT_WITH_CARE",
        "89.9, 0, electrode.sensitivity, STOP, UNFIT",
        "105.1, 0, electrode.sensitivity-high, STOP, UNFIT",
        "100, 0.25, electrode.display-offset, PASS, FIT",
        "100, 0.26, electrode.display-offset, CAUTION, FIT_WITH_CARE",
        "100, -0.26, electrode.display-offset, CAUTION, FIT_WITH_CARE",
        "100, 0.51, electrode.display-offset, STOP, UNFIT",
    })
    void aDisplayIsJudgedAgainstTheStoredCalibration(
            double percent, double offset, String code, Outcome outcome, Verdict verdict) {
        CalibrationEvaluation evaluation = displayed(
                MeterReadout.AS_FOUND,
                MeterCompensation.automatic(),
                25,
                7 + offset + percent / 100 * (4.005 - 7),
                7 + offset + percent / 100 * (6.865 - 7));
        assertThat(finding(evaluation, code).outcome()).isEqualTo(outcome);
        assertThat(evaluation.verdict()).isEqualTo(verdict);
        assertThat(evaluation.session().displayErrorPh(1))
                .isCloseTo(offset + (percent / 100 - 1) * (6.865 - 7), within(1e-9));
        if (outcome != Outcome.PASS) {
            assertThat(steps(evaluation)).contains("adjust-meter");
        }
        if (code.equals("electrode.display-offset")) {
            assertThat(finding(evaluation, code).observed().orElseThrow()).isCloseTo(offset, within(1e-9));
        }
    }

    private static CalibrationEvaluation displayed(
            MeterReadout readout, MeterCompensation compensation, double degC, double four, double seven) {
        Temperature at = new Temperature(degC);
        return CalibrationEvaluation.of(new CalibrationSession(
                List.of(
                        BufferReading.displayed(cup("iupac-phthalate"), at, four, compensation, Optional.empty()),
                        BufferReading.displayed(cup("iupac-phosphate"), at, seven, compensation, Optional.empty())),
                readout,
                compensation,
                ReadingUncertainty.USUAL,
                5.4));
    }

    @ParameterizedTest
    @CsvSource({"0.5, PASS", "0.7, NOTE", "2.5, CAUTION"})
    void theCertaintyAtTheExpectedPhIsJudged(double potentialMv, Outcome outcome) {
        CalibrationEvaluation evaluation = CalibrationEvaluation.of(new CalibrationSession(
                List.of(reading("iupac-phthalate", 173), reading("iupac-phosphate", 8)),
                MeterReadout.POTENTIAL,
                MeterCompensation.automatic(),
                new ReadingUncertainty(potentialMv, 0.5, outcome == Outcome.NOTE ? 0.02 : 0.01),
                5.4));
        assertThat(finding(evaluation, "electrode.certainty").outcome()).isEqualTo(outcome);
    }

    @Test
    void aClearCauseStopsAndAWeakOneIsNot() {
        assertThat(finding(twoBuffers(98, 0), "electrode.suspected-cause").outcome())
                .isEqualTo(Outcome.PASS);
        CalibrationEvaluation mixed = CalibrationEvaluation.of(Sessions.potentials(
                reading("technical-4.00", millivolts(4.005, 25, 98, 0)),
                reading("technical-7.00", millivolts(6.865, 25, 98, 0)),
                reading("iupac-borax", millivolts(9.18, 25, 98, 0))));
        Finding suspicion = finding(mixed, "electrode.suspected-cause");
        assertThat(suspicion.outcome()).isEqualTo(Outcome.STOP);
        assertThat(suspicion.subject()).isEqualTo(Cause.NEUTRAL_BUFFER_IS_6_86.meaning());
        assertThat(steps(mixed).get(0)).isEqualTo("enter-6.86");
        assertThat(mixed.soundWeight()).isLessThan(0.01);
        assertThat(twoBuffers(98, 0).soundWeight()).isGreaterThan(0.7);
    }

    @Test
    void aSessionHasTwoToSixteenReadings() {
        BufferReading one = reading("iupac-phthalate", 170);
        for (int count : new int[] {0, 1, 17}) {
            assertThatThrownBy(() -> CalibrationSession.ofPotentials(Collections.nCopies(count, one)))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageContaining("from 2 to 16 readings but this has " + count);
        }
        List<BufferReading> sixteen = new ArrayList<>(Collections.nCopies(15, one));
        sixteen.add(reading("iupac-phosphate", 5));
        assertThat(CalibrationEvaluation.of(CalibrationSession.ofPotentials(sixteen))
                        .verdict())
                .isEqualTo(Verdict.FIT);
        assertThatThrownBy(() -> new CalibrationSession(
                        sixteen,
                        MeterReadout.POTENTIAL,
                        MeterCompensation.automatic(),
                        ReadingUncertainty.USUAL,
                        Double.NaN))
                .hasMessageContaining("expected pH must be from 0 to 14");
    }
}

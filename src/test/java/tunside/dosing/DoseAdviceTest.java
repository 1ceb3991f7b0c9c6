package tunside.dosing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import tunside.finding.Finding;
import tunside.finding.Outcome;

class DoseAdviceTest {
    private static DoseAdvice advice(DoseQuestion question) {
        return DoseAdvice.of(question, List.of());
    }

    private static List<String> codes(DoseAdvice advice) {
        return advice.findings().stream()
                .map(finding -> "%s %s %s".formatted(finding.pointer(), finding.code(), finding.outcome()))
                .toList();
    }

    private static Finding finding(DoseAdvice advice, String code) {
        return advice.findings().stream()
                .filter(finding -> finding.code().equals(code))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void aboveTheRangeAcidIsDosed() {
        DoseAdvice advice = advice(Lines.question(5.8, 0.02));
        StagedDose dose = ((DoseOutcome.Dose) advice.outcome()).staged();
        assertThat(dose.totalGrams()).isCloseTo(76, within(0.5));
        assertThat(dose.low90Grams()).isCloseTo(48, within(1.0));
        assertThat(dose.high90Grams()).isCloseTo(120.5, within(2.0));
        assertThat(advice.staged()).contains(dose);
        assertThat(codes(advice)).containsExactly("/targetPh dose.reach PASS", " dose.smallest-step PASS");
        assertThat(finding(advice, "dose.reach").subject()).isEqualTo("strong acid");
        assertThat(finding(advice, "dose.smallest-step").observed()).hasValue(0.5);
        assertThat(finding(advice, "dose.smallest-step").expected()).hasValue(dose.totalGrams());
    }

    @Test
    void theAnswerSaysHowSureThePhIs() {
        DoseAdvice advice = advice(Lines.question(5.48, 0.02));
        assertThat(advice.currentPh()).isCloseTo(5.48, within(1e-6));
        assertThat(advice.low90Ph()).isCloseTo(5.48 - 0.0329, within(1e-4));
        assertThat(advice.high90Ph()).isCloseTo(5.48 + 0.0329, within(1e-4));
        assertThat(advice.standardUncertainty()).isCloseTo(0.02, within(1e-5));
        assertThat(advice.probabilityInRange()).isCloseTo(0.8413, within(1e-4));
    }

    @Test
    void theEndsOfTheRangeAreInIt() {
        for (double ph : new double[] {5.3, 5.4, 5.5}) {
            assertThat(advice(Lines.question(ph, 0.02)).outcome()).isInstanceOf(DoseOutcome.NoneNeeded.class);
            assertThat(advice(Lines.question(ph, 0.02)).staged()).isEmpty();
        }
        assertThat(advice(Lines.question(5.51, 0.02)).outcome()).isInstanceOf(DoseOutcome.Dose.class);
        assertThat(advice(Lines.question(5.29, 0.02)).outcome()).isInstanceOf(DoseOutcome.RaiseInstead.class);
    }

    @Test
    void belowTheRangeABaseIsDosed() {
        DoseAdvice advice = advice(Lines.question(5.2, 0.02));
        StagedDose dose = ((DoseOutcome.RaiseInstead) advice.outcome()).staged();
        assertThat(dose.reagent()).isEqualTo(Lines.BASE);
        assertThat(dose.totalGrams()).isCloseTo(38, within(0.5));
        assertThat(dose.now().orElseThrow().expectedPh()).isBetween(5.3, 5.41);
        assertThat(advice.staged()).contains(dose);
    }

    @Test
    void whatIsAtHandLimitsTheReach() {
        DoseAdvice advice = advice(Lines.question(new PhReading(6.5, 0.02), 0, 38));
        DoseOutcome.OutOfReach out = (DoseOutcome.OutOfReach) advice.outcome();
        assertThat(out.reagent().id()).isEqualTo("strong");
        assertThat(out.largestGrams()).isEqualTo(38);
        assertThat(out.phAtLargest()).isCloseTo(6.3, within(0.001));
        assertThat(codes(advice)).containsExactly("/targetPh dose.reach STOP");
        assertThat(advice.staged()).isEmpty();
        double needed = ((DoseOutcome.Dose) advice(Lines.question(5.8, 0.02)).outcome())
                .staged()
                .totalGrams();
        assertThat(advice(Lines.question(new PhReading(5.8, 0.02), 0, needed)).outcome())
                .isInstanceOf(DoseOutcome.Dose.class);
        assertThat(advice(Lines.question(new PhReading(5.8, 0.02), 0, needed * 0.999))
                        .outcome())
                .isInstanceOf(DoseOutcome.OutOfReach.class);
    }

    @Test
    void lessThanAStepIsACaution() {
        DoseQuestion coarse = new DoseQuestion(
                Lines.CURVE,
                Lines.PRIOR,
                new PhReading(5.51, 0.02),
                0,
                List.of(),
                Lines.AIM,
                Optional.of(new Supply(Lines.ACID, 50, 1e6)),
                new Supply(Lines.BASE, 0.5, 1e6));
        DoseAdvice advice = advice(coarse);
        assertThat(advice.staged().orElseThrow().now()).isEmpty();
        assertThat(codes(advice)).contains(" dose.smallest-step CAUTION");
    }

    @Test
    void aStopOfTheInputWithholdsTheAddition() {
        Finding stop = Finding.of("dose.measured-against-grist", Outcome.STOP, "/measuredPh", 5.8, 4.8);
        DoseAdvice advice = DoseAdvice.of(Lines.question(5.8, 0.02), List.of(stop));
        StagedDose dose = advice.staged().orElseThrow();
        assertThat(dose.now()).isEmpty();
        assertThat(dose.stages()).isEmpty();
        assertThat(dose.totalGrams()).isCloseTo(76, within(0.5));
        assertThat(advice.findings()).startsWith(stop);
        assertThat(codes(advice)).doesNotContain(" dose.smallest-step PASS");
        Finding caution = Finding.of("dose.measured-against-grist", Outcome.CAUTION, "/measuredPh", 5.8, 5.5);
        assertThat(DoseAdvice.of(Lines.question(5.8, 0.02), List.of(caution))
                        .staged()
                        .orElseThrow()
                        .now())
                .isPresent();
    }

    @Test
    void moreThanAnyLiquidExplainsIsAStop() {
        DoseAdvice advice = advice(Lines.question(5.8, 0.02, Lines.added(160), Lines.read(5.62, 0.02)));
        Finding finding = finding(advice, "dose.liquid-explains");
        assertThat(finding.outcome()).isEqualTo(Outcome.STOP);
        assertThat(finding.pointer()).isEqualTo("/history");
        assertThat(finding.observed().orElseThrow()).isGreaterThan(160);
        // 99.5 % of all: 76 g times exp(2.576 x 0.28), a little more for the reading
        assertThat(finding.expected().orElseThrow()).isCloseTo(76 * Math.exp(2.576 * 0.28), within(3.0));
        assertThat(advice.staged().orElseThrow().now()).isEmpty();
        DoseAdvice fine = advice(Lines.question(5.8, 0.02, Lines.added(40), Lines.read(5.62, 0.02)));
        assertThat(finding(fine, "dose.liquid-explains").outcome()).isEqualTo(Outcome.PASS);
        assertThat(finding(fine, "dose.liquid-explains").observed().orElseThrow())
                .isCloseTo(40 + fine.staged().orElseThrow().now().orElseThrow().grams(), within(1e-9));
    }

    @Test
    void acidBeforeABaseDoesNotCountAsBase() {
        DoseAdvice advice = advice(Lines.question(5.8, 0.02, Lines.added(110), Lines.read(5.2, 0.02)));
        assertThat(advice.outcome()).isInstanceOf(DoseOutcome.RaiseInstead.class);
        assertThat(codes(advice)).doesNotContain("/history dose.liquid-explains PASS");
    }

    @Test
    void historiesAreJudgedWhereTheyStand() {
        assertThat(codes(advice(Lines.question(5.8, 0.02, Lines.added(38), Lines.read(5.6, 0.02)))))
                .contains("/history/1 dose.reading-as-expected PASS");
        assertThat(codes(advice(Lines.question(5.8, 0.02, Lines.added(38), Lines.read(5.95, 0.02)))))
                .contains("/history/1 dose.reading-rose CAUTION");
        assertThat(codes(advice(Lines.question(5.8, 0.02, Lines.added(20), Lines.read(5.3, 0.02)))))
                .contains("/history/1 dose.reading-fell-too-far CAUTION");
        assertThat(codes(advice(Lines.question(5.8, 0.02, Lines.added(76), Lines.read(5.79, 0.02)))))
                .contains("/history/1 dose.reading-fell-too-little CAUTION");
        PastAddition base = new PastAddition(Lines.BASE, 38, Optional.empty());
        assertThat(codes(advice(Lines.question(5.0, 0.02, base, Lines.read(4.8, 0.02)))))
                .contains("/history/1 dose.reading-fell CAUTION");
        assertThat(codes(advice(Lines.question(5.0, 0.02, base, Lines.read(6.2, 0.02)))))
                .contains("/history/1 dose.reading-rose-too-far CAUTION");
        PastAddition much = new PastAddition(Lines.BASE, 100, Optional.empty());
        assertThat(codes(advice(Lines.question(5.0, 0.02, much, Lines.read(5.01, 0.02)))))
                .contains("/history/1 dose.reading-rose-too-little CAUTION");
    }

    @Test
    void aContradictionIsTheLastWordOnlyUntilTheNextReading() {
        DoseAdvice contradicted = advice(Lines.question(5.8, 0.02, Lines.added(38), Lines.read(5.95, 0.02)));
        assertThat(contradicted.lastReadingContradicts(2)).isTrue();
        DoseAdvice again =
                advice(Lines.question(5.8, 0.02, Lines.added(38), Lines.read(5.95, 0.02), Lines.read(5.6, 0.02)));
        assertThat(again.lastReadingContradicts(3)).isFalse();
        assertThat(advice(Lines.question(5.8, 0.02)).lastReadingContradicts(0)).isFalse();
        assertThat(advice(Lines.question(5.8, 0.02, Lines.added(38), Lines.read(5.6, 0.02)))
                        .lastReadingContradicts(2))
                .isFalse();
        Finding observed = finding(contradicted, "dose.reading-rose");
        assertThat(observed.observed()).hasValue(5.95);
        assertThat(observed.expected().orElseThrow()).isCloseTo(5.6, within(0.002));
    }

    @Test
    void nothingIsAddedWhereReadingAndExpectationDisagree() {
        // 57 g should bring it to 5.5, yet the cup says 5.2: neither acid nor base
        DoseAdvice low = advice(Lines.question(5.8, 0.02, Lines.added(20), Lines.read(5.1, 0.02)));
        assertThat(low.currentPh()).isGreaterThan(5.3);
        assertThat(low.outcome()).isInstanceOf(DoseOutcome.NoneNeeded.class);
        // the latest reading is in the range
        DoseAdvice inRange = advice(Lines.question(5.8, 0.02, Lines.added(10), Lines.read(5.49, 0.02)));
        assertThat(inRange.currentPh()).isGreaterThan(5.5);
        assertThat(inRange.outcome()).isInstanceOf(DoseOutcome.NoneNeeded.class);
    }

    @Test
    void anAdditionWithoutAReadingIsCountedOn() {
        DoseAdvice advice = advice(Lines.question(5.8, 0.02, Lines.added(70)));
        assertThat(advice.currentPh()).isCloseTo(5.8 - 70 / 190.0, within(0.003));
        assertThat(advice.outcome()).isInstanceOf(DoseOutcome.NoneNeeded.class);
        DoseAdvice more = advice(Lines.question(5.8, 0.02, Lines.added(38)));
        assertThat(((DoseOutcome.Dose) more.outcome()).staged().totalGrams()).isCloseTo(38, within(0.6));
    }

    @Test
    void laterStagesAreCountedFromReadingsThatComeAsExpected() {
        DoseQuestion question = new DoseQuestion(
                Lines.CURVE,
                Lines.PRIOR,
                new PhReading(6.3, 0.03),
                0,
                List.of(),
                Lines.AIM,
                Optional.of(new Supply(Lines.ACID, 0.5, 1e6)),
                new Supply(Lines.BASE, 0.5, 1e6));
        List<DoseStage> stages =
                ((DoseOutcome.Dose) advice(question).outcome()).staged().stages();
        assertThat(stages.size()).isBetween(2, 3);
        double ph = 6.3;
        for (DoseStage stage : stages) {
            assertThat(stage.expectedPh()).isLessThan(ph);
            assertThat(stage.low90Ph()).isLessThan(stage.expectedPh());
            assertThat(stage.high90Ph()).isGreaterThan(stage.expectedPh());
            ph = stage.expectedPh();
        }
        assertThat(ph).isBetween(5.3, 5.5);
        assertThat(stages.get(1).high90Ph() - stages.get(1).low90Ph())
                .isLessThan(stages.get(0).high90Ph() - stages.get(0).low90Ph());
        double sum = stages.stream().mapToDouble(DoseStage::grams).sum();
        assertThat(sum).isCloseTo(190 * (6.3 - ph), within(6.0));
    }

    @Test
    void stagesNeverUseMoreThanIsAtHand() {
        DoseQuestion question = Lines.question(new PhReading(6.3, 0.03), 0, 175);
        List<DoseStage> stages = advice(question).staged().orElseThrow().stages();
        assertThat(stages.stream().mapToDouble(DoseStage::grams).sum()).isLessThanOrEqualTo(175);
    }

    @Test
    void nonsenseIsRefused() {
        assertThatThrownBy(() -> new DoseAim(5.4, 5.4, 5.4, 0.05)).hasMessageContaining("have a width");
        assertThatThrownBy(() -> new DoseAim(5.4, 5.45, 5.5, 0.05)).hasMessageContaining("must hold the target");
        assertThatThrownBy(() -> new DoseAim(5.4, 5.3, 5.35, 0.05)).hasMessageContaining("must hold the target");
        assertThatThrownBy(() -> new DoseAim(5.4, Double.NaN, 5.5, 0.05)).hasMessageContaining("must hold the target");
        assertThatThrownBy(() -> new DoseAim(2.9, 2.8, 3, 0.05)).hasMessageContaining("from 3 to 9");
        assertThatThrownBy(() -> new DoseAim(9.1, 9, 9.2, 0.05)).hasMessageContaining("from 3 to 9");
        assertThatThrownBy(() -> new DoseAim(5.4, 2.3, 5.5, 0.05)).hasMessageContaining("within 3 pH");
        assertThatThrownBy(() -> new DoseAim(5.4, 5.3, 8.5, 0.05)).hasMessageContaining("within 3 pH");
        assertThatThrownBy(() -> new DoseAim(5.4, 5.3, 5.5, 0)).hasMessageContaining("accepted risk");
        assertThatThrownBy(() -> new DoseAim(5.4, 5.3, 5.5, 0.51)).hasMessageContaining("accepted risk");
        assertThat(new DoseAim(3, 2.5, 3.1, 0.001).targetPh()).isEqualTo(3);
        assertThat(new DoseAim(9, 8.9, 9.1, 0.5).targetPh()).isEqualTo(9);
        assertThat(new DoseAim(6, 3, 9, 0.5).contains(3)).isTrue();
        assertThat(new DoseAim(6, 3, 9, 0.5).contains(9)).isTrue();
        assertThat(new DoseAim(6, 3, 9, 0.5).contains(9.01)).isFalse();
        assertThat(new DoseAim(6, 3, 9, 0.5).contains(2.99)).isFalse();
        assertThatThrownBy(() -> new PhReading(2.4, 0.1)).hasMessageContaining("from 2.5 to 10.5");
        assertThatThrownBy(() -> new PhReading(Double.NaN, 0.1)).hasMessageContaining("from 2.5 to 10.5");
        assertThatThrownBy(() -> new PhReading(5, 0)).hasMessageContaining("from 0.001 to 1");
        assertThatThrownBy(() -> new PhReading(5, 1.01)).hasMessageContaining("from 0.001 to 1");
        assertThat(new PhReading(2.5, 0.001).ph()).isEqualTo(2.5);
        assertThat(new PhReading(10.5, 1).ph()).isEqualTo(10.5);
        assertThatThrownBy(() -> Lines.added(-1)).hasMessageContaining("not negative");
        assertThatThrownBy(() -> Lines.added(Double.POSITIVE_INFINITY)).hasMessageContaining("finite");
        assertThatThrownBy(() -> new Supply(Lines.ACID, 0, 1)).hasMessageContaining("above 0");
        assertThatThrownBy(() -> new Supply(Lines.ACID, 1, -1)).hasMessageContaining("not negative");
        assertThatThrownBy(() -> new BufferingPrior(0, "", 0.1, "")).hasMessageContaining("above 0");
        assertThatThrownBy(() -> new BufferingPrior(1, "", 0.0009, "")).hasMessageContaining("0.001 to 1");
        assertThatThrownBy(() -> new BufferingPrior(1, "", 1.1, "")).hasMessageContaining("0.001 to 1");
        assertThatThrownBy(() -> Lines.question(new PhReading(5.8, 0.02), 0.6, 1))
                .hasMessageContaining("0 to 0.5");
        assertThatThrownBy(() -> Lines.question(new PhReading(5.8, 0.02), -0.1, 1))
                .hasMessageContaining("0 to 0.5");
        PastAddition[] many = new PastAddition[41];
        java.util.Arrays.fill(many, Lines.read(5.8, 0.02));
        assertThatThrownBy(() -> Lines.question(5.8, 0.02, many)).hasMessageContaining("at most 40 entries but has 41");
        assertThatThrownBy(() -> new DoseQuestion(
                        Lines.CURVE,
                        Lines.PRIOR,
                        new PhReading(5.8, 0.02),
                        0,
                        List.of(),
                        Lines.AIM,
                        Optional.empty(),
                        new Supply(Lines.BASE, 1, 1)))
                .hasMessageContaining("an acid is needed");
        assertThat(new DoseQuestion(
                                Lines.CURVE,
                                Lines.PRIOR,
                                new PhReading(5.5, 0.02),
                                0,
                                List.of(),
                                Lines.AIM,
                                Optional.empty(),
                                new Supply(Lines.BASE, 1, 1))
                        .acid())
                .isEmpty();
    }

    @Test
    void roundingDownKeepsWholeSteps() {
        Supply supply = new Supply(Lines.ACID, 0.1, 10);
        assertThat(supply.roundedDown(0.3)).isCloseTo(0.3, within(1e-12));
        assertThat(supply.roundedDown(0.29)).isCloseTo(0.2, within(1e-12));
        assertThat(supply.roundedDown(0.0999)).isZero();
    }
}

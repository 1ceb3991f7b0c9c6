package tunside.dosing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import tunside.chemistry.Acids;
import tunside.finding.Finding;
import tunside.finding.Outcome;
import tunside.quantity.Volume;

class DosePlanTest {
    private static final DoseTarget TARGET = new DoseTarget(5.3, 5.4, 5.5, 0.05);

    private static Titratable mash(String acid) {
        return BufferedLiquid.even(new Volume(20), 9.5, 0.28, Acids.get(acid).system());
    }

    private static Belief belief(double ph, double u) {
        return Belief.first(mash("hydrochloric"), new DoseEvent.Reading(ph, u), 0);
    }

    @Test
    void aStrongAcidInAnEvenBufferIsSimpleArithmetic() {
        // 190 mEq per pH over 0.3 pH
        assertThat(belief(5.7, 0.02).acidFor(5.4, 0.5, 1000)).isCloseTo(57, within(0.6));
        assertThat(mash("hydrochloric").after(1, 5.7, 0, 57)).isCloseTo(5.4, within(1e-9));
        assertThat(mash("hydrochloric").after(2, 5.7, 0, 57)).isCloseTo(5.55, within(1e-9));
        assertThat(mash("sulfuric").after(1, 5.7, 0, 28.5)).isCloseTo(5.4, within(1e-3));
    }

    @Test
    void whatIsInRangeIsLeftAlone() {
        for (double ph : new double[] {5.3, 5.4, 5.5}) {
            assertThat(DosePlan.of(belief(ph, 0.02), TARGET, 1, 1000, 0.02))
                    .isEqualTo(new DoseOutcome.NoneNeeded(belief(ph, 0.02).ph()));
        }
        assertThat(DosePlan.of(belief(5.29, 0.02), TARGET, 1, 1000, 0.02)).isInstanceOf(DoseOutcome.RaiseInstead.class);
        assertThat(DosePlan.of(belief(5.51, 0.02), TARGET, 1, 1000, 0.02)).isInstanceOf(DoseOutcome.Dose.class);
    }

    @Test
    void aLimitThatIsTooLowPutsTheTargetOutOfReach() {
        DoseOutcome outcome = DosePlan.of(belief(6.5, 0.02), TARGET, 1, 50, 0.02);
        assertThat(outcome).isInstanceOf(DoseOutcome.OutOfReach.class);
        assertThat(((DoseOutcome.OutOfReach) outcome).phAtLargest()).isCloseTo(6.5 - 50 / 190.0, within(0.02));
    }

    @Test
    void everyStageIsAWholeNumberOfStepsAndKeepsTheRisk() {
        SplittableRandom random = new SplittableRandom(31);
        for (int i = 0; i < 40; i++) {
            double step = random.nextDouble(0.5, 5);
            double risk = random.nextDouble(0.01, 0.2);
            DoseTarget target = new DoseTarget(5.3, 5.4, 5.5, risk);
            DoseOutcome outcome = DosePlan.of(
                    belief(random.nextDouble(5.6, 6.2), random.nextDouble(0.01, 0.06)), target, step, 2000, 0.03);
            List<DoseStage> stages = ((DoseOutcome.Dose) outcome).stages();
            assertThat(stages).isNotEmpty();
            for (DoseStage stage : stages) {
                double steps = stage.millimoles() / step;
                assertThat(steps).isCloseTo(Math.rint(steps), within(1e-6));
                assertThat(stage.overshootProbability()).isLessThanOrEqualTo(risk + 1e-6);
                assertThat(stage.lowPh()).isLessThan(stage.expectedPh());
                assertThat(stage.highPh()).isGreaterThan(stage.expectedPh());
            }
        }
    }

    @Test
    void aSmallerRiskNeverMeansALargerStage() {
        double before = 0;
        for (double risk : new double[] {0.001, 0.01, 0.05, 0.1, 0.3}) {
            double next = DosePlan.next(belief(5.8, 0.03), new DoseTarget(5.3, 5.4, 5.5, risk), 0.01, 1000);
            assertThat(next).isGreaterThanOrEqualTo(before);
            before = next;
        }
        assertThat(before).isPositive();
    }

    @Test
    void theTotalLiesBetweenItsQuantiles() {
        DoseOutcome.Dose dose = (DoseOutcome.Dose) DosePlan.of(belief(5.8, 0.03), TARGET, 1, 2000, 0.03);
        assertThat(dose.lowMillimoles()).isLessThan(dose.millimoles());
        assertThat(dose.highMillimoles()).isGreaterThan(dose.millimoles());
        assertThat(dose.millimoles()).isCloseTo(76, within(1.5));
        assertThat(dose.lowMillimoles()).isCloseTo(76 * Math.exp(-1.645 * 0.28), within(5.0));
    }

    @Test
    void aReadingAfterAnAdditionTeachesTheBuffering() {
        Belief first = belief(5.8, 0.02);
        assertThat(first.scale()).isCloseTo(1, within(1e-9));
        assertThat(first.logScaleSd()).isCloseTo(0.28, within(0.001));
        Belief weak = first.after(new DoseEvent.Added(38)).after(new DoseEvent.Reading(5.5, 0.02));
        assertThat(weak.scale()).isBetween(0.6, 0.85);
        assertThat(weak.logScaleSd()).isLessThan(0.14);
        Belief strong = first.after(new DoseEvent.Added(38)).after(new DoseEvent.Reading(5.68, 0.02));
        assertThat(strong.scale()).isGreaterThan(1.15);
        assertThat(strong.millimoles()).isEqualTo(38);
    }

    @Test
    void repeatedReadingsAverage() {
        Belief belief = belief(5.8, 0.04)
                .after(new DoseEvent.Reading(5.7, 0.04))
                .after(new DoseEvent.Reading(5.72, 0.04))
                .after(new DoseEvent.Reading(5.78, 0.04));
        assertThat(belief.ph()).isCloseTo(5.75, within(1e-9));
        assertThat(belief.standardUncertainty()).isCloseTo(0.02, within(1e-9));
        assertThat(belief.probabilityBelow(5.75)).isCloseTo(0.5, within(1e-9));
        assertThat(belief.quantile(0.95)).isCloseTo(5.75 + 1.6449 * 0.02, within(1e-4));
    }

    @Test
    void uncertainAcidWidensTheBelief() {
        Belief sure = Belief.first(mash("hydrochloric"), new DoseEvent.Reading(5.8, 0.001), 0)
                .afterAcid(76);
        Belief unsure = Belief.first(mash("hydrochloric"), new DoseEvent.Reading(5.8, 0.001), 0.1)
                .afterAcid(76);
        assertThat(unsure.standardUncertainty()).isGreaterThan(sure.standardUncertainty());
        assertThat(unsure.ph()).isCloseTo(sure.ph(), within(1e-12));
    }

    @Test
    void contradictionsAreNamed() {
        Belief first = belief(5.8, 0.02);
        assertThat(codes(first, 38, 5.9)).containsExactly("/1 dose.reading-rose CAUTION");
        assertThat(codes(first, 38, 4.9)).containsExactly("/1 dose.reading-fell-too-far CAUTION");
        assertThat(codes(first, 76, 5.79)).containsExactly("/1 dose.reading-fell-too-little CAUTION");
        assertThat(codes(first, 38, 5.6)).containsExactly("/1 dose.reading-as-expected PASS");
        assertThat(codes(first, 38, 5.82)).doesNotContain("/1 dose.reading-rose CAUTION");
        assertThat(Contradictions.of(first, List.of(new DoseEvent.Reading(6, 0.02))))
                .isEmpty();
    }

    private static List<String> codes(Belief first, double added, double read) {
        return Contradictions.of(first, List.of(new DoseEvent.Added(added), new DoseEvent.Reading(read, 0.02))).stream()
                .map(finding -> finding.pointer() + " " + finding.code() + " " + finding.outcome())
                .toList();
    }

    @Test
    void contradictionsCarryWhatWasReadAndWhatWasExpected() {
        Finding finding = Contradictions.of(
                        belief(5.8, 0.02), List.of(new DoseEvent.Added(38), new DoseEvent.Reading(5.9, 0.02)))
                .get(0);
        assertThat(finding.outcome()).isEqualTo(Outcome.CAUTION);
        assertThat(finding.observed()).hasValue(5.9);
        assertThat(finding.expected().orElseThrow()).isCloseTo(5.6, within(0.02));
    }

    @Test
    void nonsenseIsRefused() {
        assertThatThrownBy(() -> new DoseTarget(5.4, 5.4, 5.5, 0.05)).hasMessageContaining("low < target < high");
        assertThatThrownBy(() -> new DoseTarget(5.3, 5.4, 5.5, 0)).hasMessageContaining("accepted risk");
        assertThatThrownBy(() -> new DoseTarget(5.3, 5.4, Double.NaN, 0.05)).hasMessageContaining("low < target");
        assertThatThrownBy(() -> new DoseEvent.Added(-1)).hasMessageContaining("must not be negative");
        assertThatThrownBy(() -> new DoseEvent.Reading(15, 0.1)).hasMessageContaining("from 0 to 14");
        assertThatThrownBy(() -> new DoseEvent.Reading(5, 0)).hasMessageContaining("from 0.001 to 1");
        assertThatThrownBy(() -> BufferedLiquid.even(
                        new Volume(1), 0, 0.1, Acids.get("lactic").system()))
                .hasMessageContaining("above 0");
    }

    @Test
    void aFallIsHeldAgainstTheExpectedOneAndAgainstTheUncertainty() {
        // 38 mEq in 190 mEq/pH let expect a fall of 0.2, give or take 0.06
        Belief first = belief(5.8, 0.02);
        assertThat(codes(first, 38, 5.35)).containsExactly("/1 dose.reading-as-expected PASS");
        assertThat(codes(first, 38, 5.15)).containsExactly("/1 dose.reading-fell-too-far CAUTION");
        assertThat(codes(first, 38, 5.74)).containsExactly("/1 dose.reading-fell-too-little CAUTION");
        assertThat(codes(first, 38, 5.72)).containsExactly("/1 dose.reading-as-expected PASS");
        // 4 mEq let expect 0.02: three times that is still within the noise of two readings
        assertThat(codes(first, 4, 5.73)).containsExactly("/1 dose.reading-as-expected PASS");
        assertThat(codes(first, 4, 5.70)).containsExactly("/1 dose.reading-fell-too-far CAUTION");
        assertThat(codes(first, 4, 5.81)).containsExactly("/1 dose.reading-as-expected PASS");
    }

    @Test
    void theUncertaintyOfThePhFollowsTheBufferingItPassesThrough() {
        Belief sharp = Belief.first(
                BufferedLiquid.even(
                        new Volume(20), 9.5, 0, Acids.get("hydrochloric").system()),
                new DoseEvent.Reading(5.8, 0.03),
                0);
        Belief after = sharp.afterAcid(57);
        assertThat(after.ph()).isCloseTo(5.5, within(1e-6));
        assertThat(after.standardUncertainty()).isCloseTo(0.03, within(1e-6));
        Belief unsure = Belief.first(
                        BufferedLiquid.even(
                                new Volume(20),
                                9.5,
                                0,
                                Acids.get("hydrochloric").system()),
                        new DoseEvent.Reading(5.8, 0.03),
                        0.1)
                .afterAcid(57);
        assertThat(unsure.standardUncertainty()).isCloseTo(Math.hypot(0.03, 0.03), within(1e-4));
    }

    @Test
    void limitsBelongToTheirRanges() {
        assertThat(new DoseEvent.Added(0).millimoles()).isZero();
        assertThat(new DoseEvent.Reading(0, 0.001).ph()).isZero();
        assertThat(new DoseEvent.Reading(14, 1).ph()).isEqualTo(14);
        assertThat(new DoseTarget(2, 5, 10, 0.001).lowPh()).isEqualTo(2);
        assertThat(new DoseTarget(2, 5, 10, 0.5).acceptedRisk()).isEqualTo(0.5);
        assertThatThrownBy(() -> new DoseTarget(1.99, 5, 6, 0.05)).hasMessageContaining("from 2 to 10");
        assertThatThrownBy(() -> new DoseTarget(5, 5.1, 5.1, 0.05)).hasMessageContaining("low < target < high");
        assertThatThrownBy(() -> new DoseTarget(5, 5.1, 10.01, 0.05)).hasMessageContaining("from 2 to 10");
        assertThatThrownBy(() -> new DoseTarget(5, 5.1, 5.2, 0.51)).hasMessageContaining("accepted risk");
        assertThatThrownBy(() -> new DoseEvent.Added(1e9)).hasMessageContaining("must not be negative");
        assertThatThrownBy(() -> new DoseEvent.Reading(-0.01, 0.1)).hasMessageContaining("from 0 to 14");
        assertThatThrownBy(() -> new DoseEvent.Reading(5, 1.01)).hasMessageContaining("from 0.001 to 1");
        assertThat(BufferedLiquid.even(new Volume(1), 1, 2, Acids.get("lactic").system())
                        .logSd())
                .isEqualTo(2);
        assertThatThrownBy(() -> BufferedLiquid.even(
                        new Volume(1), 1, 2.01, Acids.get("lactic").system()))
                .hasMessageContaining("from 0 to 2");
        assertThatThrownBy(() -> BufferedLiquid.even(
                        new Volume(1), 1000, 0, Acids.get("lactic").system()))
                .hasMessageContaining("below 1000");
    }
}

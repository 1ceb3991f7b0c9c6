package tunside.dosing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tunside.dosing.BufferLearning.Comparison;
import tunside.dosing.BufferLearning.Fit;

class BufferLearningTest {
    private static final PhReading START = new PhReading(5.8, 0.03);

    /** Posterior of the factor by brute force: a fine grid over factor, true starting pH and shared error. */
    private static double[] bruteForce(double sharedUncertainty, double added, double read, double uncertainty) {
        double sum = 0;
        double mean = 0;
        double square = 0;
        double phSum = 0;
        for (double x = -1.4; x <= 1.4; x += 0.01) {
            double drop = added / (Math.exp(x) * Lines.MEQ_PER_PH);
            for (double start = 5.6; start <= 6.0; start += 0.005) {
                for (double shared = -0.16; shared <= 0.16; shared += sharedUncertainty > 0 ? 0.008 : 1) {
                    double error = sharedUncertainty > 0 ? shared : 0;
                    double weight = density(x / 0.28)
                            * density((5.8 - start - error) / 0.03)
                            * density((read - start + drop - error) / uncertainty)
                            * (sharedUncertainty > 0 ? density(error / sharedUncertainty) : 1);
                    sum += weight;
                    mean += weight * x;
                    square += weight * x * x;
                    phSum += weight * (start - drop);
                }
            }
        }
        double logMean = mean / sum;
        return new double[] {logMean, Math.sqrt(square / sum - logMean * logMean), phSum / sum};
    }

    private static double density(double z) {
        return Math.exp(-z * z / 2);
    }

    @ParameterizedTest
    @CsvSource({"0, 38, 5.62, 0.03", "0, 57, 5.4, 0.02", "0.04, 38, 5.58, 0.03", "0.04, 20, 5.73, 0.05"})
    void itIsBayes(double shared, double added, double read, double uncertainty) {
        BufferLearning learning = BufferLearning.of(
                Lines.CURVE, Lines.PRIOR, START, shared, List.of(Lines.added(added), Lines.read(read, uncertainty)));
        double[] expected = bruteForce(shared, added, read, uncertainty);
        double[] moments = learning.now().logScaleMoments();
        assertThat(moments[0]).isCloseTo(expected[0], within(0.002));
        assertThat(moments[1]).isCloseTo(expected[1], within(0.002));
        double median = learning.now().quantile(0.5);
        assertThat(median).isCloseTo(expected[2], within(0.004));
    }

    @Test
    void withoutHistoryThePriorStands() {
        Knowledge now =
                BufferLearning.of(Lines.CURVE, Lines.PRIOR, START, 0, List.of()).now();
        double[] moments = now.logScaleMoments();
        assertThat(moments[0]).isCloseTo(0, within(1e-9));
        assertThat(moments[1]).isCloseTo(0.28, within(0.001));
        assertThat(now.scaleQuantiles(0.5)[0]).isCloseTo(1, within(1e-6));
        assertThat(now.scaleQuantiles(0.95)[0]).isCloseTo(Math.exp(1.6449 * 0.28), within(0.003));
        assertThat(now.scaleQuantiles(0.05)[0]).isCloseTo(Math.exp(-1.6449 * 0.28), within(0.003));
        assertThat(now.quantile(0.5)).isCloseTo(5.8, within(1e-6));
        assertThat(now.quantile(0.95) - now.quantile(0.5)).isCloseTo(1.6449 * 0.03, within(1e-4));
    }

    @Test
    void aSharedErrorWidensThePhButHardlyWhatIsLearnt() {
        List<PastAddition> history = List.of(Lines.added(57), Lines.read(5.5, 0.02));
        Knowledge alone = BufferLearning.of(Lines.CURVE, Lines.PRIOR, new PhReading(5.8, 0.02), 0, history)
                .now();
        Knowledge shared = BufferLearning.of(Lines.CURVE, Lines.PRIOR, new PhReading(5.8, 0.02), 0.05, history)
                .now();
        assertThat(shared.logScaleMoments()[1]).isCloseTo(alone.logScaleMoments()[1], within(0.002));
        assertThat(spread(shared)).isCloseTo(Math.hypot(spread(alone), 0.05), within(0.001));
    }

    private static double spread(Knowledge knowledge) {
        return (knowledge.quantile(0.95) - knowledge.quantile(0.05)) / 2 / 1.6448536;
    }

    @Test
    void repeatedReadingsAverage() {
        Knowledge now = BufferLearning.of(
                        Lines.CURVE,
                        Lines.PRIOR,
                        new PhReading(5.8, 0.04),
                        0,
                        List.of(Lines.read(5.7, 0.04), Lines.read(5.72, 0.04), Lines.read(5.78, 0.04)))
                .now();
        assertThat(now.quantile(0.5)).isCloseTo(5.75, within(1e-6));
        assertThat(spread(now)).isCloseTo(0.02, within(1e-5));
    }

    @Test
    void aVeryGoodMeterIsResolved() {
        PhReading start = new PhReading(6, 0.001);
        List<PastAddition> history = List.of(Lines.added(190), Lines.read(5.2, 0.001));
        Knowledge now =
                BufferLearning.of(Lines.CURVE, Lines.PRIOR, start, 0, history).now();
        assertThat(now.scaleQuantiles(0.5)[0]).isCloseTo(1 / 0.8, within(0.001));
        assertThat(now.logScaleMoments()[1]).isCloseTo(0.001 * Math.sqrt(2) / 0.8, within(0.0002));
    }

    /** Two very good readings that agree, then one that moves the pH as far again with half the acid. */
    @Test
    void aReadingThatLeadsOutOfWhatWasBelievedIsFollowed() {
        PhReading start = new PhReading(5.8, 0.001);
        List<PastAddition> history = List.of(
                Lines.added(38), Lines.read(5.6, 0.001), Lines.added(38), Lines.read(5.4, 0.001), Lines.added(19));
        List<PastAddition> withLast = new ArrayList<>(history);
        withLast.add(Lines.read(5.25, 0.001));
        Knowledge now = BufferLearning.of(Lines.CURVE, Lines.PRIOR, start, 0.04, withLast)
                .now();
        // regression of 5.8, 5.6, 5.4, 5.25 on 0, 38, 76, 95 g
        double perGram = 30.1625 / 5324.75;
        assertThat(now.scaleQuantiles(0.5)[0]).isCloseTo(1 / (perGram * Lines.MEQ_PER_PH), within(0.001));
        assertThat(now.logScaleMoments()[1]).isLessThan(0.01);
    }

    @Test
    void contradictionsAreNamed() {
        assertThat(fits(38, 5.95)).containsExactly("1 WRONG_WAY true");
        assertThat(fits(38, 4.9)).containsExactly("1 TOO_FAR true");
        assertThat(fits(76, 5.79)).containsExactly("1 TOO_LITTLE true");
        assertThat(fits(38, 5.6)).containsExactly("1 AS_EXPECTED true");
        assertThat(fits(38, 5.83)).containsExactly("1 TOO_LITTLE true");
        assertThat(fits(3, 5.83)).containsExactly("1 AS_EXPECTED true");
    }

    private static List<String> fits(double added, double read) {
        return named(List.of(Lines.added(added), Lines.read(read, 0.02)));
    }

    private static List<String> named(List<PastAddition> history) {
        return BufferLearning.of(Lines.CURVE, Lines.PRIOR, new PhReading(5.8, 0.02), 0, history).comparisons().stream()
                .map(comparison -> "%s %s %s".formatted(comparison.index(), comparison.fit(), comparison.falling()))
                .toList();
    }

    @Test
    void aFactorOfThreeIsTheLimitOfWhatIsExpected() {
        // 190 mEq per pH: 5.7 g should move the pH by 0.03
        assertThat(fit(5.7, 0.2)).isEqualTo(Fit.TOO_FAR);
        assertThat(fit(5.7, 0.08)).isEqualTo(Fit.AS_EXPECTED);
        // 57 g should move it by 0.3
        assertThat(fit(57, 0.09)).isEqualTo(Fit.TOO_LITTLE);
        assertThat(fit(57, 0.13)).isEqualTo(Fit.AS_EXPECTED);
    }

    private static Fit fit(double grams, double fall) {
        return BufferLearning.of(
                        Lines.CURVE,
                        Lines.PRIOR,
                        new PhReading(5.8, 0.02),
                        0,
                        List.of(Lines.added(grams), Lines.read(5.8 - fall, 0.02)))
                .comparisons()
                .get(0)
                .fit();
    }

    @Test
    void aBaseIsJudgedTheOtherWayRound() {
        PastAddition base = new PastAddition(Lines.BASE, 38, Optional.empty());
        assertThat(named(List.of(base, Lines.read(6.0, 0.02)))).containsExactly("1 AS_EXPECTED false");
        assertThat(named(List.of(base, Lines.read(5.6, 0.02)))).containsExactly("1 WRONG_WAY false");
        assertThat(named(List.of(base, Lines.read(6.9, 0.02)))).containsExactly("1 TOO_FAR false");
    }

    @Test
    void readingsWithNothingBetweenThemAreNotCompared() {
        assertThat(named(List.of(
                        Lines.read(5.81, 0.02), Lines.added(20), Lines.read(5.7, 0.02), Lines.read(5.71, 0.02))))
                .containsExactly("2 AS_EXPECTED true");
        assertThat(named(List.of(Lines.added(20), Lines.added(20)))).isEmpty();
    }

    @Test
    void twoAdditionsBeforeOneReadingCountTogether() {
        Comparison together = BufferLearning.of(
                        Lines.CURVE,
                        Lines.PRIOR,
                        START,
                        0,
                        List.of(Lines.added(19), Lines.added(19), Lines.read(5.6, 0.03)))
                .comparisons()
                .get(0);
        assertThat(together.expectedPh()).isCloseTo(5.6, within(0.002));
        assertThat(together.index()).isEqualTo(2);
        assertThat(together.readPh()).isEqualTo(5.6);
    }

    @Test
    void aReadingThatSurprisesIsBelievedOnlyInPart() {
        double[] surprised = BufferLearning.of(
                        Lines.CURVE,
                        Lines.PRIOR,
                        new PhReading(5.8, 0.02),
                        0,
                        List.of(Lines.added(57), Lines.read(5.8, 0.02)))
                .now()
                .logScaleMoments();
        assertThat(Math.exp(surprised[0])).isBetween(1.15, 1.5);
        assertThat(surprised[1]).isGreaterThan(0.2);
        double[] expected = BufferLearning.of(
                        Lines.CURVE,
                        Lines.PRIOR,
                        new PhReading(5.8, 0.02),
                        0,
                        List.of(Lines.added(57), Lines.read(5.6, 0.02)))
                .now()
                .logScaleMoments();
        assertThat(Math.exp(expected[0])).isBetween(1.3, 1.55);
        assertThat(expected[1]).isLessThan(0.15);
    }

    @Test
    void absurdAmountsStillHaveAnAnswer() {
        Knowledge now = BufferLearning.of(
                        Lines.CURVE, Lines.PRIOR, START, 0, List.of(Lines.added(1e7), Lines.read(5.2, 0.02)))
                .now();
        assertThat(now.quantile(0.5)).isBetween(2.0, 11.0);
    }
}

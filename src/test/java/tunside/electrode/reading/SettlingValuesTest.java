package tunside.electrode.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** By hand, from the definitions and reading-model.csv. */
class SettlingValuesTest {
    private static final SettlingCriterion USUAL = SettlingCriterion.usual();
    private static final double READING = 0.0085;

    private static double[] times(int n, double step) {
        double[] seconds = new double[n];
        Arrays.setAll(seconds, i -> 100 + i * step);
        return seconds;
    }

    private static double[] approach(int n, double step, double start, double timeConstant) {
        double[] ph = new double[n];
        Arrays.setAll(ph, i -> 5.4 + start * Math.exp(-i * step / timeConstant));
        return ph;
    }

    private static Settling settling(double[] seconds, double[] ph) {
        return Settling.of(seconds, ph, 0.0001, READING, USUAL);
    }

    /** Quantiles of the usual tables: 2.015, 1.812, 1.697 over 1.645. */
    @ParameterizedTest
    @CsvSource({"5, 2.015", "10, 1.812", "30, 1.697", "300, 1.650", "301, 1.645", "10000, 1.645"})
    void fewReadingsWidenTheInterval(int freedom, double quantile) {
        assertThat(Settling.studentOverNormal(freedom)).isCloseTo(quantile / 1.6449, within(5e-4));
    }

    @Test
    void halfTheIntervalIsTheNormalQuantile() {
        Settling one = settling(new double[] {0}, new double[] {5.4});
        assertThat(one.halfWidth90()).isCloseTo(1.6449 * 0.05, within(1e-5));
        assertThat(one.noisePh()).isEqualTo(0.05);
        assertThat(one.changePh()).isZero();
        assertThat(one.course()).singleElement().satisfies(point -> {
            assertThat(point.seconds()).isZero();
            assertThat(point.ph()).isEqualTo(5.4);
            assertThat(point.curvePh()).isEmpty();
        });
    }

    @Test
    void theCourseHoldsEveryReadingAndItsCurve() {
        Settling settling = settling(times(20, 5), approach(20, 5, 0.5, 25));
        assertThat(settling.course()).hasSize(20);
        Settling.CoursePoint third = settling.course().get(3);
        assertThat(third.seconds()).isEqualTo(15);
        assertThat(third.ph()).isCloseTo(5.4 + 0.5 * Math.exp(-15 / 25.0), within(1e-12));
        assertThat(third.curvePh().getAsDouble()).isCloseTo(third.ph(), within(1e-6));
        double[] still = new double[10];
        Arrays.fill(still, 5.4);
        assertThat(settling(times(10, 5), still).course())
                .allSatisfy(point -> assertThat(point.curvePh()).isEmpty());
    }

    /** Ten readings over 18 s, shorter than the window of 30 s: the change is that since the first. */
    @Test
    void aShortSeriesChangesSinceItsBeginningAndWaitsForTheWindow() {
        Settling quick = settling(times(10, 2), approach(10, 2, 0.5, 2));
        assertThat(quick.state()).isEqualTo(Settling.State.SETTLING);
        assertThat(quick.changePh()).isCloseTo(0.5 * (Math.exp(-9) - 1), within(1e-6));
        assertThat(quick.stillToComePh()).isCloseTo(-0.5 * Math.exp(-9), within(1e-6));
        assertThat(quick.waitS()).hasValue(12);
        // 0.5 exp(-18/8) = 0.0527 to come, down to 0.01: 8 ln 5.27 s, more than the 12 s of the window
        Settling slow = settling(times(10, 2), approach(10, 2, 0.5, 8));
        assertThat(slow.waitS().getAsDouble()).isCloseTo(8 * Math.log(50 * Math.exp(-18 / 8.0)), within(1e-3));
    }

    /** Just before and just after the change over the last 30 s falls to 0.01. */
    @Test
    void settledIsWhatChangedByNoMoreThanTheCriterion() {
        // 0.5 (exp(30/tau) - 1) exp(-t/tau) = 0.01 at t = 25 ln(50 * 2.3201) = 118.84 s
        Settling before = settling(times(24, 5), approach(24, 5, 0.5, 25)); // to 115 s
        assertThat(before.state()).isEqualTo(Settling.State.SETTLING);
        assertThat(before.waitS().getAsDouble()).isCloseTo(3.84, within(0.01));
        Settling after = settling(times(25, 5), approach(25, 5, 0.5, 25)); // to 120 s
        assertThat(after.state()).isEqualTo(Settling.State.SETTLED);
        assertThat(after.waitS()).hasValue(0);
    }

    /** Twelve seconds with nothing but a slope: it may go on for 60 s, its uncertainty with it. */
    @Test
    void aSlopeMayGoOnForAMinute() {
        double[] seconds = {0, 4, 8, 12};
        double[] ph = {5.5, 5.49, 5.48, 5.47};
        Settling settling = Settling.of(seconds, ph, 0.01, READING, USUAL);
        double noise = READING * Math.sqrt(0.5);
        double slopeUncertainty = noise / Math.sqrt(36 + 4 + 4 + 36);
        assertThat(settling.state()).isEqualTo(Settling.State.TOO_SHORT);
        assertThat(settling.ph()).isEqualTo(5.47);
        assertThat(settling.changePh()).isCloseTo(-0.075, within(1e-12));
        assertThat(settling.stillToComePh()).isCloseTo(60 * (0.0025 + slopeUncertainty), within(1e-9));
        assertThat(settling.standardUncertainty())
                .isCloseTo(Math.hypot(noise, settling.stillToComePh() / Math.sqrt(3)), within(1e-9));
        assertThat(settling.noisePh()).isCloseTo(noise, within(1e-12));
        assertThat(settling.waitS()).isEmpty();
        assertThat(settling.timeConstantS()).isEmpty();
        Settling steep = Settling.of(new double[] {0, 1}, new double[] {9, 7}, 0.01, READING, USUAL);
        assertThat(steep.stillToComePh()).as("no more than the table's bound").isEqualTo(3);
        Settling two = Settling.of(new double[] {0, 1000}, new double[] {5.4, 5.4}, 0.01, READING, USUAL);
        assertThat(two.state()).isEqualTo(Settling.State.SETTLED);
    }

    /** A standing series has its mean, with the scatter that is stated for want of its own. */
    @Test
    void aStandingSeriesIsItsMean() {
        double[] ph = new double[12];
        Arrays.fill(ph, 5.4);
        Settling settling = Settling.of(times(12, 10), ph, 0.01, READING, USUAL);
        double noise = READING * Math.sqrt(2 / 12.0);
        double spread = 100 * 143; // sum of squares of -5.5 to 5.5 is 143
        assertThat(settling.state()).isEqualTo(Settling.State.SETTLED);
        assertThat(settling.ph()).isCloseTo(5.4, within(1e-12));
        assertThat(settling.waitS()).hasValue(0);
        double toCome = 60 * noise / Math.sqrt(spread);
        assertThat(settling.stillToComePh()).isCloseTo(toCome, within(1e-9));
        assertThat(settling.standardUncertainty())
                .isCloseTo(Math.hypot(noise / Math.sqrt(12), toCome / Math.sqrt(3)), within(1e-9));
    }

    @Test
    void aStrayLastReadingIsNotTheValueOfASeriesThatDrifts() {
        double[] seconds = times(10, 2);
        double[] ph = {5.40, 5.41, 5.40, 5.41, 5.40, 5.41, 5.40, 5.41, 5.42, 7.5};
        Settling settling = Settling.of(seconds, ph, 0.01, READING, USUAL);
        assertThat(settling.state()).isEqualTo(Settling.State.TOO_SHORT);
        assertThat(settling.outliers()).extracting(Settling.Outlier::index).containsExactly(9);
        assertThat(settling.outliers().get(0).distancePh()).isCloseTo(7.5 - 5.41, within(0.02));
        assertThat(settling.ph()).isEqualTo(5.42);
        // the same among seven is too few to say
        Settling seven =
                Settling.of(Arrays.copyOfRange(seconds, 3, 10), Arrays.copyOfRange(ph, 3, 10), 0.01, READING, USUAL);
        assertThat(seven.outliers()).isEmpty();
        assertThat(seven.ph()).isEqualTo(7.5);
        double[] early = ph.clone();
        early[9] = 5.41;
        early[2] = 3;
        Settling other = Settling.of(seconds, early, 0.01, READING, USUAL);
        assertThat(other.outliers()).extracting(Settling.Outlier::index).containsExactly(2);
        assertThat(other.ph()).isEqualTo(5.41);
    }
}

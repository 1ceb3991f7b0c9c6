package tunside.electrode.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SettlingTest {
    private static final SettlingCriterion USUAL = SettlingCriterion.usual();

    private static double[] times(int n, double step) {
        double[] seconds = new double[n];
        for (int i = 0; i < n; i++) {
            seconds[i] = i * step;
        }
        return seconds;
    }

    private static double[] approach(double[] seconds, double end, double start, double timeConstant) {
        double[] ph = new double[seconds.length];
        for (int i = 0; i < ph.length; i++) {
            ph[i] = end + start * Math.exp(-seconds[i] / timeConstant);
        }
        return ph;
    }

    @Test
    void anExactApproachIsFound() {
        double[] seconds = times(20, 5);
        Settling settling = Settling.of(seconds, approach(seconds, 5.4, 0.5, 25), 0.0001, 0.0085, USUAL);
        assertThat(settling.ph()).isCloseTo(5.4, within(1e-6));
        assertThat(settling.timeConstantS().orElseThrow()).isCloseTo(25, within(1e-3));
        assertThat(settling.stillToComePh()).isCloseTo(-0.5 * Math.exp(-95 / 25.0), within(1e-6));
        assertThat(settling.changePh()).isCloseTo(0.5 * (Math.exp(-95 / 25.0) - Math.exp(-65 / 25.0)), within(1e-6));
        assertThat(settling.state()).isEqualTo(Settling.State.SETTLING);
    }

    @Test
    void theWaitLeadsToTheCriterion() {
        double[] seconds = times(20, 5);
        Settling settling = Settling.of(seconds, approach(seconds, 5.4, 0.5, 25), 0.0001, 0.0085, USUAL);
        double wait = settling.waitS().orElseThrow();
        double later = 95 + wait;
        double change = 0.5 * (Math.exp(-(later - 30) / 25) - Math.exp(-later / 25));
        assertThat(change).isCloseTo(0.01, within(1e-4));
        double[] longer = times(40, 5);
        assertThat(Settling.of(longer, approach(longer, 5.4, 0.5, 25), 0.0001, 0.0085, USUAL)
                        .state())
                .isEqualTo(Settling.State.SETTLED);
    }

    @Test
    void oneReadingHasTheDoubtOfOneNobodyWatched() {
        Settling settling = Settling.of(new double[] {0}, new double[] {5.4}, 0.01, 0.0085, USUAL);
        assertThat(settling.state()).isEqualTo(Settling.State.TOO_SHORT);
        assertThat(settling.ph()).isEqualTo(5.4);
        assertThat(settling.standardUncertainty()).isEqualTo(0.05);
        assertThat(settling.stillToComePh()).isCloseTo(0.0866, within(1e-4));
        assertThat(settling.waitS()).isEmpty();
    }

    @Test
    void aDriftThatNeverBendsIsTooShortAndCarriesWhatAMinuteMoreWouldBring() {
        double[] seconds = times(10, 4);
        double[] ph = new double[10];
        for (int i = 0; i < 10; i++) {
            ph[i] = 5.9 - 0.02 * i;
        }
        Settling settling = Settling.of(seconds, ph, 0.01, 0.0085, USUAL);
        assertThat(settling.state()).isEqualTo(Settling.State.TOO_SHORT);
        assertThat(settling.ph()).isEqualTo(ph[9]);
        assertThat(settling.changePh()).as("0.005 per s over 30 s").isCloseTo(-0.15, within(1e-9));
        assertThat(settling.stillToComePh()).as("for a minute more").isCloseTo(0.302, within(0.05));
        assertThat(settling.standardUncertainty()).isBetween(0.173, 0.2);
    }

    @Test
    void aStandingReadingIsSettledAtItsMean() {
        double[] ph = {5.41, 5.42, 5.41, 5.41, 5.42, 5.41, 5.42, 5.41};
        Settling settling = Settling.of(times(8, 10), ph, 0.01, 0.0085, USUAL);
        assertThat(settling.state()).isEqualTo(Settling.State.SETTLED);
        assertThat(settling.ph()).isCloseTo(5.414, within(0.002));
        assertThat(settling.standardUncertainty()).isBetween(0.001, 0.006);
        Settling brief = Settling.of(times(8, 2), ph, 0.01, 0.0085, USUAL);
        assertThat(brief.state()).isEqualTo(Settling.State.TOO_SHORT);
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 7, 12, 18})
    void anOutlierIsNamedAndMovesTheValueByLessThanItsUncertainty(int index) {
        double[] seconds = times(20, 6);
        double[] ph = approach(seconds, 5.4, 0.4, 20);
        Random random = new Random(5);
        for (int i = 0; i < ph.length; i++) {
            ph[i] += 0.003 * random.nextGaussian();
        }
        Settling clean = Settling.of(seconds, ph, 0.001, 0.0085, USUAL);
        ph[index] += 0.3;
        Settling hit = Settling.of(seconds, ph, 0.001, 0.0085, USUAL);
        assertThat(hit.outliers()).extracting(Settling.Outlier::index).contains(index);
        assertThat(hit.ph()).isCloseTo(clean.ph(), within(clean.standardUncertainty()));
    }
}

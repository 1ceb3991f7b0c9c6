package tunside.electrode.reading;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.EnumMap;
import java.util.Map;
import java.util.Random;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** How often the 90 % interval of the settled value holds it, over seeded virtual samples. */
class SettlingCoverageMonteCarloTest {
    private static final int SERIES = 2000;

    @ParameterizedTest(name = "{1} readings, {2} to {3} time constants, scatter {4}")
    @CsvSource({
        "1, 12, 3, 6, 0.003",
        "2, 20, 2.5, 6, 0.005",
        "3, 40, 2.5, 8, 0.008",
        "4, 120, 2, 10, 0.005",
        "6, 8, 3, 6, 0.005",
        "7, 15, 3, 6, 0.005",
    })
    void theNinetyPercentIntervalHoldsTheSettledValueNineTimesInTen(
            long seed, int readings, double least, double most, double scatter) {
        Coverage coverage = coverage(seed, readings, least, most, scatter);
        assertThat(coverage.held).as("%s", coverage).isBetween(0.87, 0.93);
        assertThat(coverage.bases.getOrDefault(Settling.State.TOO_SHORT, 0)).isLessThan(SERIES / 100);
    }

    @ParameterizedTest(name = "{1} readings, {2} to {3} time constants, scatter {4}")
    @CsvSource({
        "8, 30, 0.7, 2.5, 0.005",
        "9, 300, 0.7, 2.5, 0.005",
        "10, 10, 0.3, 1, 0.003",
        "13, 7, 3, 6, 0.005",
        "14, 2, 0.3, 1, 0.003"
    })
    void aSeriesThatIsTooShortPromisesNoMore(long seed, int readings, double least, double most, double scatter) {
        Coverage coverage = coverage(seed, readings, least, most, scatter);
        assertThat(coverage.held).as("%s", coverage).isGreaterThan(0.87);
        assertThat(coverage.bases).containsKey(Settling.State.TOO_SHORT);
    }

    private record Coverage(double held, Map<Settling.State, Integer> bases) {}

    private static Coverage coverage(long seed, int readings, double least, double most, double scatter) {
        SplittableRandom random = new SplittableRandom(seed);
        Random normal = new Random(seed);
        int held = 0;
        Map<Settling.State, Integer> bases = new EnumMap<>(Settling.State.class);
        for (int k = 0; k < SERIES; k++) {
            double tau = 8 + 30 * random.nextDouble();
            double span = tau * (least + (most - least) * random.nextDouble());
            double amplitude = (0.1 + 0.9 * random.nextDouble()) * (random.nextBoolean() ? 1 : -1);
            double[] t = new double[readings];
            double[] y = new double[readings];
            for (int i = 0; i < readings; i++) {
                t[i] = 3 + span * i / (readings - 1);
                y[i] = 5.4 + amplitude * Math.exp(-(t[i] - 3) / tau) + scatter * normal.nextGaussian();
            }
            Settling settling = Settling.of(t, y, 0.0001, 0.0085, SettlingCriterion.usual());
            bases.merge(settling.state(), 1, Integer::sum);
            held += Math.abs(settling.ph() - 5.4) <= settling.halfWidth90() ? 1 : 0;
        }
        return new Coverage((double) held / SERIES, bases);
    }
}

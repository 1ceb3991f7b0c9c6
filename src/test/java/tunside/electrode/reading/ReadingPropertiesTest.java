package tunside.electrode.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tunside.electrode.BufferCup;
import tunside.electrode.BufferReading;
import tunside.electrode.Buffers;
import tunside.electrode.Calibration;
import tunside.electrode.CalibrationEvaluation;
import tunside.electrode.CalibrationSession;
import tunside.quantity.Potential;
import tunside.quantity.Temperature;

class ReadingPropertiesTest {
    private static final SettlingCriterion USUAL = SettlingCriterion.usual();

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4})
    void aCalibrationAppliedToItsOwnBuffersReturnsTheirPh(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<BufferReading> buffers = new ArrayList<>();
        for (String id : List.of("iupac-phthalate", "iupac-phosphate")) {
            double ideal = -58 * (Buffers.find(id).orElseThrow().ph(new Temperature(20)) - 7);
            buffers.add(new BufferReading(
                    BufferCup.of(Buffers.find(id).orElseThrow()),
                    new Temperature(20),
                    new Potential(ideal + 4 * (random.nextDouble() - 0.5)),
                    Optional.empty()));
        }
        Calibration calibration = CalibrationEvaluation.of(CalibrationSession.ofPotentials(buffers))
                .calibration()
                .orElseThrow();
        for (BufferReading buffer : buffers) {
            List<SamplePoint> points = new ArrayList<>();
            for (int i = 0; i < 10; i++) {
                points.add(new SamplePoint(10 * i, buffer.potential(), buffer.temperature()));
            }
            ReadingJudgement judged = ReadingJudgement.of(Samples.reading(calibration, points, SampleLiquid.LIQUOR));
            assertThat(judged.ph()).isCloseTo(buffer.buffer().ph(), within(1e-9));
        }
    }

    private static double[] series(long seed, double[] seconds, double scatter) {
        SplittableRandom random = new SplittableRandom(seed);
        Random normal = new Random(seed);
        double tau = 10 + 20 * random.nextDouble();
        double start = 0.2 + 0.4 * random.nextDouble();
        double[] ph = new double[seconds.length];
        for (int i = 0; i < ph.length; i++) {
            ph[i] = 5.4 + start * Math.exp(-seconds[i] / tau) + scatter * normal.nextGaussian();
        }
        return ph;
    }

    private static double[] seconds(int n, double step) {
        double[] seconds = new double[n];
        for (int i = 0; i < n; i++) {
            seconds[i] = step * i;
        }
        return seconds;
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
    void moreScatterNeverShrinksTheUncertainty(long seed) {
        double[] seconds = seconds(30, 5);
        double before = 0;
        for (double scatter : new double[] {0.001, 0.002, 0.004, 0.008, 0.016}) {
            Settling settling = Settling.of(seconds, series(seed, seconds, scatter), 0.0001, 0.0085, USUAL);
            assertThat(settling.standardUncertainty()).as("scatter %s", scatter).isGreaterThan(before);
            before = settling.standardUncertainty();
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void theClockAndTheScaleMayStartAnywhere(long seed) {
        double[] seconds = seconds(24, 5);
        double[] ph = series(seed, seconds, 0.003);
        double[] later = seconds.clone();
        double[] higher = ph.clone();
        for (int i = 0; i < later.length; i++) {
            later[i] += 1000;
            higher[i] += 1;
        }
        Settling here = Settling.of(seconds, ph, 0.001, 0.0085, USUAL);
        Settling there = Settling.of(later, higher, 0.001, 0.0085, USUAL);
        assertThat(there.ph()).isCloseTo(here.ph() + 1, within(1e-6));
        assertThat(there.standardUncertainty()).isCloseTo(here.standardUncertainty(), within(1e-6));
        assertThat(there.state()).isEqualTo(here.state());
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void anOutlierAnywhereMovesTheValueByLessThanTheUncertainty(long seed) {
        double[] seconds = seconds(30, 5);
        double[] clean = series(seed, seconds, 0.003);
        Settling without = Settling.of(seconds, clean, 0.001, 0.0085, USUAL);
        for (int at = 1; at < 29; at += 3) {
            double[] hit = clean.clone();
            hit[at] += at % 2 == 0 ? 0.25 : -0.25;
            Settling with = Settling.of(seconds, hit, 0.001, 0.0085, USUAL);
            assertThat(with.ph()).as("at %d", at).isCloseTo(without.ph(), within(without.standardUncertainty()));
            assertThat(with.outliers()).extracting(Settling.Outlier::index).contains(at);
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {10, 25, 40, 65})
    void bringingToTwentyDegreesAlwaysCostsCertainty(double degC) {
        Calibration calibration = Samples.calibration(tunside.electrode.Verdict.FIT);
        ReadingJudgement here = ReadingJudgement.of(
                Samples.reading(calibration, Samples.standing(calibration, 5.4, degC, 10), SampleLiquid.MASH));
        assertThat(here.standardUncertaintyAt20()).isGreaterThan(here.standardUncertainty());
    }
}

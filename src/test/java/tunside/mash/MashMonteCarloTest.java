package tunside.mash;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Drawing every input at random gives the same uncertainty as carrying it through the implicit solution. */
class MashMonteCarloTest {
    private static final int DRAWS = 20_000;

    static Stream<Mash> mashes() {
        return Stream.of(
                Mashes.pale(), Mashes.porter(), Mashes.porter().plus(Mashes.acid("phosphoric", 40)), Mashes.chalky());
    }

    @ParameterizedTest
    @MethodSource("mashes")
    void propagationAgreesWithRandomDraws(Mash mash) {
        MashPrediction prediction = MashPrediction.of(mash);
        double[] ph = draw(MashEquation.of(mash));
        double mean = Arrays.stream(ph).average().orElseThrow();
        double deviation = Math.sqrt(
                Arrays.stream(ph).map(value -> (value - mean) * (value - mean)).sum() / (DRAWS - 1));
        Arrays.sort(ph);
        double tolerance = 0.05 * prediction.standardUncertainty();
        assertThat(mean).isCloseTo(prediction.ph(), within(2 * tolerance));
        assertThat(deviation).isCloseTo(prediction.standardUncertainty(), within(tolerance));
        assertThat(ph[DRAWS / 20]).isCloseTo(prediction.low90(), within(3 * tolerance));
        assertThat(ph[DRAWS - DRAWS / 20]).isCloseTo(prediction.high90(), within(3 * tolerance));
    }

    private static double[] draw(MashEquation equation) {
        SplittableRandom random = new SplittableRandom(20);
        double[] ph = new double[DRAWS];
        for (int i = 0; i < DRAWS; i++) {
            double[] values = equation.centre();
            for (int j = 0; j < values.length; j++) {
                values[j] += equation.inputs().get(j).standardUncertainty() * random.nextGaussian();
            }
            ph[i] = equation.balance(values).solve();
        }
        return ph;
    }
}

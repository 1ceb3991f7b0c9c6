package tunside.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Collections;
import java.util.List;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.RealMatrix;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** One shift that all brews share: after n readings its variance is t² s² / (n t² + s²). */
class OutlookTest {
    private static final double PRIOR = 0.01;
    private static final double NOISE = 0.0036;

    private static RealMatrix one(double value) {
        return new Array2DRowRealMatrix(new double[][] {{value}});
    }

    private static double learnable(int brews) {
        return PRIOR * NOISE / (brews * PRIOR + NOISE);
    }

    private static Outlook after(int brews, double floor) {
        LinearObservation reading = new LinearObservation(one(1), new ArrayRealVector(new double[] {0.1}), one(NOISE));
        NormalBelief belief = NormalBelief.of(one(PRIOR), Collections.nCopies(brews, reading));
        return Outlook.of(belief, one(PRIOR), List.of(one(1), one(1)), List.of(floor, floor), reading.information());
    }

    @Test
    void theUncertaintyIsWhatIsLeftToLearnOnTopOfTheFloor() {
        Outlook outlook = after(3, 0.0009);
        assertThat(outlook.floor()).isCloseTo(0.03, within(1e-12));
        assertThat(outlook.published()).isCloseTo(Math.sqrt(0.0009 + PRIOR), within(1e-12));
        assertThat(outlook.now()).isCloseTo(Math.sqrt(0.0009 + learnable(3)), within(1e-12));
        assertThat(outlook.steps()).extracting(Outlook.Step::moreBrews).containsExactly(1, 3, 5, 10, 20);
        for (Outlook.Step step : outlook.steps()) {
            assertThat(step.standardUncertainty())
                    .isCloseTo(Math.sqrt(0.0009 + learnable(3 + step.moreBrews())), within(1e-12));
        }
    }

    /** Solved by hand: the fewest more brews with t² s² / ((n + m) t² + s²) at or below a quarter less of the floor. */
    @ParameterizedTest
    @CsvSource({
        // from n t² + s² = 0.0136 to four times that: 4.08 more
        "1, 0, 5, 5",
        // 0.0336 to 0.1344: 10.08 more
        "3, 0, 11, 11",
        // the floor of 0.0001: (0.0001 + 0.0026471) / 4 - 0.0001 = 0.00058676, so 0.061354 / 0.01 - 1.36
        "1, 0.0001, 5, 5",
        // the floor of 0.0005: 0.00028676 asks for 0.12554, 11.19 more
        "1, 0.0005, 12, 5"
    })
    void theBrewsToHalveAreTheFewestThatDo(int brews, double floor, int toHalve, int toHalveTheLearnable) {
        Outlook outlook = after(brews, floor);
        assertThat(outlook.brewsToHalve()).hasValue(toHalve);
        assertThat(outlook.brewsToHalveTheLearnable()).hasValue(toHalveTheLearnable);
        double target = (floor + learnable(brews)) / 4;
        assertThat(floor + learnable(brews + toHalve)).isLessThanOrEqualTo(target);
        assertThat(floor + learnable(brews + toHalve - 1)).isGreaterThan(target);
    }

    @Test
    void whereTheFloorForbidsItNoNumberHalves() {
        assertThat(after(1, 0.001).brewsToHalve()).isEmpty();
        assertThat(after(1, 0.001).brewsToHalveTheLearnable()).hasValue(5);

        // three times as many and 1.08 more
        assertThat(after(332, 0).brewsToHalve()).hasValue(998);
        assertThat(after(333, 0).brewsToHalve()).isEmpty();
    }
}

package tunside.dosing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tunside.chemistry.Acids;
import tunside.chemistry.ChargeCurve;
import tunside.quantity.Temperature;

class TabulatedCurveTest {
    private static double fifth(double ph) {
        return 2 + ph * (-1 + ph * (0.5 + ph * (0.1 + ph * (-0.03 + ph * 0.002))));
    }

    private static double slopeOfFifth(double ph) {
        return -1 + ph * (1 + ph * (0.3 + ph * (-0.12 + ph * 0.01)));
    }

    @ParameterizedTest
    @ValueSource(doubles = {3, 3.01, 3.13, 3.151, 4.999, 5, 6.87, 6.96, 7})
    void aPolynomialOfFifthDegreeIsExactUpToBothEnds(double ph) {
        TabulatedCurve curve = new TabulatedCurve(TabulatedCurveTest::fifth, 3, 7);
        assertThat(curve.at(ph)).isCloseTo(fifth(ph), within(1e-10));
        assertThat(curve.slope(ph)).isCloseTo(slopeOfFifth(ph), within(1e-8));
    }

    @Test
    void beyondItsEndsItGoesOnLevel() {
        TabulatedCurve curve = new TabulatedCurve(ph -> ph * ph, 3, 7);
        assertThat(curve.at(2)).isCloseTo(9, within(1e-12));
        assertThat(curve.at(8)).isCloseTo(49, within(1e-10));
        assertThat(curve.slope(2.999)).isZero();
        assertThat(curve.slope(7.001)).isZero();
    }

    @Test
    void aShortCurveHasSixPointsAllTheSame() {
        TabulatedCurve curve = new TabulatedCurve(TabulatedCurveTest::fifth, 5, 5.06);
        for (double ph = 5; ph <= 5.06; ph += 0.007) {
            assertThat(curve.at(ph)).isCloseTo(fifth(ph), within(1e-10));
        }
    }

    @Test
    void carbonateIsWithinAMillionthOfItsBuffering() {
        ChargeCurve carbonic = Acids.CARBONIC.at(new Temperature(25));
        TabulatedCurve curve = new TabulatedCurve(carbonic::meanCharge, 2, 11);
        PhCurve exact = carbonic::meanCharge;
        for (double ph = 4; ph < 9; ph += 0.0137) {
            assertThat(curve.at(ph)).isCloseTo(carbonic.meanCharge(ph), within(1e-7));
            assertThat(curve.slope(ph)).isCloseTo(exact.slope(ph), within(1e-6));
        }
    }

    @Test
    void aPointIsComputedWhenItIsFirstNeededAndOnlyOnce() {
        int[] asked = {0};
        TabulatedCurve curve = new TabulatedCurve(
                ph -> {
                    asked[0]++;
                    return ph;
                },
                2,
                11);
        assertThat(asked[0]).isZero();
        curve.at(5.42);
        curve.slope(5.43);
        assertThat(asked[0]).isEqualTo(6);
        curve.at(5.47);
        assertThat(asked[0]).isEqualTo(7);
    }
}

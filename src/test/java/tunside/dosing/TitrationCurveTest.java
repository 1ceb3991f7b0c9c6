package tunside.dosing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class TitrationCurveTest {
    private static final Reagent WEAK =
            new Reagent("weak", "weak acid", true, ph -> 1 / (1 + Math.pow(10, 5 - ph)), 0, OptionalDouble.empty());

    private static Given given(Reagent reagent, double grams) {
        return Given.NOTHING.plus(reagent, grams);
    }

    @Test
    void bothPartsCount() {
        TitrationCurve curve = TitrationCurve.tabulated(ph -> -2 * ph, ph -> -3 * ph);
        assertThat(curve.at(5).meq(10)).isCloseTo(-115, within(1e-9));
        assertThat(curve.at(5).bufferingMeqPerPh(10)).isCloseTo(23, within(1e-6));
    }

    @Test
    void thePhIsWhereWhatWasGivenIsTakenUp() {
        double startMeq = Lines.CURVE.at(5.8).meq(2);
        assertThat(Lines.CURVE.ph(2, startMeq, Given.NOTHING, 9)).isCloseTo(5.8, within(1e-9));
        assertThat(Lines.CURVE.ph(2, startMeq, given(Lines.ACID, 76), 5.8)).isCloseTo(5.6, within(1e-9));
        assertThat(Lines.CURVE.ph(2, startMeq, given(Lines.BASE, 76), 5.8)).isCloseTo(6, within(1e-9));
    }

    @Test
    void theFirstGuessHardlyMatters() {
        double startMeq = Lines.CURVE.at(5.8).meq(1);
        double ph = Lines.CURVE.ph(1, startMeq, given(WEAK, 100), 5.5);
        assertThat(Lines.CURVE.at(ph).meq(1) - startMeq).isCloseTo(100 * WEAK.meqPerGram(ph), within(1e-4));
        for (double near : new double[] {-5, 2, 4, 8, 11, 20}) {
            assertThat(Lines.CURVE.ph(1, startMeq, given(WEAK, 100), near)).isCloseTo(ph, within(1e-6));
        }
    }

    @Test
    void beyondTheCurveItEnds() {
        double startMeq = Lines.CURVE.at(5.8).meq(1);
        assertThat(Lines.CURVE.ph(1, startMeq, given(Lines.ACID, 1e6), 5.8)).isCloseTo(2, within(1e-3));
        assertThat(Lines.CURVE.ph(1, startMeq, given(Lines.BASE, 1e6), 5.8)).isCloseTo(11, within(1e-3));
    }

    @Test
    void eachReagentStandsOnceWithAllOfIt() {
        Given given = given(Lines.ACID, 3).plus(Lines.BASE, 5).plus(Lines.ACID.withoutUncertainty(), 4);
        assertThat(given.portions()).hasSize(2);
        assertThat(given.portions().get(0).grams()).isEqualTo(7);
        assertThat(given.meq(5)).isEqualTo(2);
        assertThat(given.plus(WEAK, 0)).isSameAs(given);
        assertThat(given.plus(WEAK, 2).slope(5)).isCloseTo(2 * Math.log(10) / 4, within(1e-5));
    }
}

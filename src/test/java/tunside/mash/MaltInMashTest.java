package tunside.mash;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import tunside.quantity.Volume;

/** How measured values of a malt take the place of its class. */
class MaltInMashTest {
    private static double uptake(Malt malt, double ratio, double ph) {
        return Mash.of(new Grist(List.of(Mashes.part(malt, 2))), Liquor.distilled(new Volume(2 * ratio)))
                .maltBalance()
                .uptakeMeq(ph);
    }

    private static MeasuredMalt measured(Double ph, Double ratio, BufferCurve curve, Double acidity) {
        return new MeasuredMalt(
                Optional.ofNullable(ph).map(value -> new Estimate(value, 0.04)),
                ratio == null ? OptionalDouble.empty() : OptionalDouble.of(ratio),
                Optional.ofNullable(curve),
                Optional.ofNullable(acidity).map(value -> new Estimate(value, 1)));
    }

    @Test
    void theClassStandsWhereNothingWasMeasured() {
        assertThat(uptake(Malt.of("munich"), 4, 5.2)).isCloseTo(2 * 38 * (5.40 - 5.2), within(1e-9));
        double caramel = 6.425 - 0.728 * Math.log10(150);
        assertThat(uptake(Malt.of("caramel", 150), 8, 5.4)).isCloseTo(2 * 43 * (caramel - 5.4), within(1e-9));
    }

    @Test
    void dilutionRaisesTheOwnPhByThreeTenthsADecade() {
        assertThat(uptake(Malt.of("munich"), 40, 5.2)).isCloseTo(2 * 38 * (5.70 - 5.2), within(1e-9));
        Malt malt = Malt.of("munich").with(measured(5.5, 8.0, null, null));
        assertThat(uptake(malt, 0.8, 5.2)).isCloseTo(2 * 38 * (5.2 - 5.2), within(1e-9));
    }

    @Test
    void measuredPhAndBufferingReplaceTheClass() {
        Malt malt = Malt.of("munich").with(measured(5.6, null, BufferCurve.linear(33, 0.1), null));
        assertThat(uptake(malt, 4, 5.2)).isCloseTo(2 * 33 * 0.4, within(1e-9));
    }

    @Test
    void threeCoefficientsAreFollowed() {
        Malt malt = Malt.of("wheat").with(measured(6.07, null, new BufferCurve(-44.9, -6.0, 0, 0.05), null));
        double d = 5.5 - 6.07;
        assertThat(uptake(malt, 4, 5.5)).isCloseTo(2 * (-44.9 * d - 6.0 * d * d), within(1e-9));
    }

    @Test
    void anAcidityHoldsAtPh57AndTheClassBuffersFromThere() {
        Malt malt = Malt.of("caramel", 120).with(measured(null, null, null, 49.0));
        assertThat(uptake(malt, 8, 5.7)).isCloseTo(-2 * 49, within(1e-9));
        assertThat(uptake(malt, 8, 5.2)).isCloseTo(2 * (43 * 0.5 - 49), within(1e-9));
    }

    @Test
    void anAcidityWithAPhGivesTheChord() {
        Malt malt = Malt.of("caramel", 120).with(measured(4.71, null, null, 49.0));
        assertThat(uptake(malt, 8, 5.7)).isCloseTo(-2 * 49, within(1e-9));
        assertThat(uptake(malt, 8, 4.71)).isCloseTo(0, within(1e-9));
        assertThat(uptake(malt, 8, 5.2)).isCloseTo(-2 * 49 / 0.99 * 0.49, within(1e-9));
    }

    @Test
    void aPhTooNearTo57GivesNoChord() {
        Malt near = Malt.of("pale").with(measured(5.41, null, null, 10.0));
        assertThat(uptake(near, 4, 5.2)).isCloseTo(2 * (38 * 0.5 - 10), within(1e-9));
        Malt far = Malt.of("pale").with(measured(5.39, null, null, 10.0));
        assertThat(uptake(far, 4, 5.2)).isCloseTo(2 * 10 / 0.31 * 0.19, within(1e-9));
    }

    @Test
    void anAcidityWithABufferingUsesBoth() {
        Malt malt = Malt.of("caramel", 120).with(measured(null, null, BufferCurve.linear(50, 0), 49.0));
        assertThat(uptake(malt, 8, 5.2)).isCloseTo(2 * (50 * 0.5 - 49), within(1e-9));
    }

    @Test
    void phAndBufferingWinOverAnAcidity() {
        Malt malt = Malt.of("caramel", 120).with(measured(4.9, null, BufferCurve.linear(50, 0), 99.0));
        assertThat(uptake(malt, 8, 5.2)).isCloseTo(2 * 50 * -0.3, within(1e-9));
    }

    /** At a gap of 1.2 mm 0.571 of the buffering; of what was measured as well. */
    @Test
    void aCoarseCrushWeakensWhatWasMeasuredToo() {
        for (MeasuredMalt measured : List.of(
                measured(null, null, null, 49.0),
                measured(4.71, null, null, 49.0),
                measured(4.9, null, BufferCurve.linear(50, 0.1), null))) {
            Malt malt = Malt.of("caramel", 120).with(measured);
            Mash coarse = new Mash(
                    new Grist(List.of(Mashes.part(malt, 2))),
                    Liquor.distilled(new Volume(16)),
                    List.of(),
                    new MashConditions(OptionalDouble.of(1.2), Optional.empty(), false),
                    MashModel.standard());
            assertThat(coarse.maltBalance().uptakeMeq(5.2) / uptake(malt, 8, 5.2))
                    .isCloseTo(0.571, within(1e-9));
        }
    }

    @Test
    void dilutionShiftsAChordToo() {
        Malt malt = Malt.of("caramel", 120).with(measured(4.71, null, null, 49.0));
        assertThat(uptake(malt, 80, 5.2)).isCloseTo(2 * 49 / 0.99 * (4.71 + 0.3 - 5.2), within(1e-9));
    }

    @Test
    void acidulatedMaltIsPilsnerMaltWithItsLacticAcid() {
        Malt malt = new Malt(
                MaltClasses.get("acidulated"),
                Optional.empty(),
                MeasuredMalt.NOTHING,
                Optional.of(new Estimate(2, 0.1)),
                Optional.empty());
        double lactic = 2 * 20 / 90.078 * 1000 / (1 + Math.pow(10, 3.8600 - 5.4));
        assertThat(uptake(malt, 4, 5.4)).isCloseTo(2 * 38 * 0.32 - lactic, within(0.05));
        assertThat(malt.countedLacticAcidPercent()).contains(new Estimate(2, 0.1));
        assertThat(Malt.of("acidulated")
                        .countedLacticAcidPercent()
                        .orElseThrow()
                        .value())
                .isEqualTo(3);
    }

    @Test
    void acidulatedMaltThatWasMeasuredIsAMaltLikeAnyOther() {
        Malt malt = Malt.of("acidulated").with(measured(3.5, null, null, null));
        assertThat(malt.countedLacticAcidPercent()).isEmpty();
        assertThat(uptake(malt, 8, 5.4)).isCloseTo(2 * 148 * (3.5 - 5.4), within(1e-9));
        Malt buffering = Malt.of("acidulated").with(measured(null, null, BufferCurve.linear(140, 0.1), null));
        assertThat(uptake(buffering, 8, 5.4)).isCloseTo(2 * 140 * (3.43 - 5.4), within(1e-9));
    }

    @Test
    void lacticAcidNeverCountsTwice() {
        MaltClass acidulated = MaltClasses.get("acidulated");
        Optional<Estimate> three = Optional.of(new Estimate(3, 0.2));
        MeasuredMalt ph = measured(3.5, null, null, null);
        assertThatThrownBy(() -> new Malt(acidulated, Optional.empty(), ph, three, Optional.empty()))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("never both");
        assertThatThrownBy(() -> new Malt(
                        MaltClasses.get("pale"), Optional.empty(), MeasuredMalt.NOTHING, three, Optional.empty()))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("no lactic acid");
        for (double percent : new double[] {0.09, 10.1}) {
            assertThatThrownBy(() -> new Malt(
                            acidulated,
                            Optional.empty(),
                            MeasuredMalt.NOTHING,
                            Optional.of(Estimate.exactly(percent)),
                            Optional.empty()))
                    .isInstanceOf(IllegalArgumentException.class);
        }
        for (double percent : new double[] {0.1, 10}) {
            assertThat(new Malt(
                                    acidulated,
                                    Optional.empty(),
                                    MeasuredMalt.NOTHING,
                                    Optional.of(Estimate.exactly(percent)),
                                    Optional.empty())
                            .label())
                    .isEqualTo("acidulated");
        }
    }

    @Test
    void theBufferingScaleAndTheBiasOfTypesActOnClassesOnly() {
        MashModel model = MashModel.standard()
                .withBufferingScale(Estimate.exactly(1.5))
                .withBiasOfMaltTypes(Estimate.exactly(-0.2));
        Liquor liquor = Liquor.distilled(new Volume(4));
        Mash byClass = Mash.of(new Grist(List.of(Mashes.part(Malt.of("pale"), 1))), liquor)
                .withModel(model);
        Mash byMeasurement = Mash.of(new Grist(List.of(Mashes.part(Mashes.measured("pale", 5.72, 38), 1))), liquor)
                .withModel(model);
        assertThat(byClass.ph()).isCloseTo(5.52, within(1e-9));
        assertThat(byClass.maltBalance().bufferingMeqPerPh(5.5)).isCloseTo(57, within(1e-6));
        assertThat(byMeasurement.ph()).isCloseTo(5.72, within(1e-9));
        assertThat(byMeasurement.maltBalance().bufferingMeqPerPh(5.5)).isCloseTo(38, within(1e-6));
    }
}

package tunside.electrode.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tunside.electrode.BufferCup;
import tunside.electrode.Calibration;
import tunside.electrode.ReadingUncertainty;
import tunside.electrode.Verdict;
import tunside.quantity.Temperature;

class DriftTest {
    private static final Calibration CALIBRATION = Samples.calibration(Verdict.FIT);
    private static final Temperature AT_25 = new Temperature(25);
    private static final double HOUR = 3600;
    private static final double NODE = Math.hypot(0.01, 0.5 / 58);

    private static Recheck recheck(double hours, double read) {
        return new Recheck(hours * HOUR, BufferCup.ofPh(5), CALIBRATION.potential(read, AT_25), AT_25);
    }

    private static Drift at(double hours, Recheck... rechecks) {
        return Drift.at(hours * HOUR, List.of(rechecks), CALIBRATION, ReadingUncertainty.USUAL);
    }

    @ParameterizedTest
    @CsvSource({"0, 0", "2, 0.01", "4, 0.02", "8, 0.04"})
    void driftGrowsEvenlyInTime(double hours, double ph) {
        Drift drift = at(hours, recheck(8, 5.04));
        double share = hours / 8;
        assertThat(drift.ph()).isCloseTo(ph, within(1e-12));
        assertThat(drift.largestPh()).isCloseTo(0.04, within(1e-12));
        assertThat(drift.standardUncertainty())
                .isCloseTo(Math.sqrt(share * share * NODE * NODE + 0.04 * 0.04 * share * (1 - share)), within(1e-12));
    }

    @Test
    void betweenTwoRechecksItGoesFromOneToTheOther() {
        Drift drift = at(5, recheck(4, 5.02), recheck(8, 4.94));
        assertThat(drift.ph()).isCloseTo(0.02 - 0.02, within(1e-12));
        assertThat(drift.largestPh()).isCloseTo(-0.06, within(1e-12));
        assertThat(drift.standardUncertainty())
                .isCloseTo(
                        Math.sqrt((0.75 * 0.75 + 0.25 * 0.25) * NODE * NODE + 0.08 * 0.08 * 0.25 * 0.75),
                        within(1e-12));
    }

    @Test
    void theOrderOfTheRechecksDoesNotMatter() {
        assertThat(at(5, recheck(8, 4.94), recheck(4, 5.02))).isEqualTo(at(5, recheck(4, 5.02), recheck(8, 4.94)));
    }

    @Test
    void afterTheLastRecheckItStaysAndWhatGoesUnseenGrows() {
        Drift drift = at(20, recheck(8, 5.04));
        assertThat(drift.ph()).isCloseTo(0.04, within(1e-12));
        assertThat(drift.standardUncertainty()).isCloseTo(Math.hypot(NODE, 0.05 * 0.5 / Math.sqrt(3)), within(1e-12));
        assertThat(Drift.unseen(24 * HOUR)).isCloseTo(0.0288675, within(1e-7));
        assertThat(Drift.unseen(0)).isZero();
    }

    @Test
    void aRecheckIsLaterThanTheCalibrationAndWithinItsTable() {
        assertThatThrownBy(() -> recheck(0, 5))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("must be above 0 s but is 0.0 s");
        assertThatThrownBy(() -> new Recheck(
                        1,
                        BufferCup.of(
                                tunside.electrode.Buffers.find("technical-7.00").orElseThrow()),
                        Samples.millivolts(0),
                        new Temperature(50.1)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("must be from 0.0 to 50.0 degC");
    }
}

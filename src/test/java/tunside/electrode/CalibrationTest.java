package tunside.electrode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static tunside.electrode.Sessions.AT_25;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.aggregator.ArgumentsAccessor;
import org.junit.jupiter.params.provider.CsvSource;
import tunside.quantity.Potential;
import tunside.quantity.Temperature;

/** A stored calibration: what it accepts, and how sure a pH is that is read back through it. */
class CalibrationTest {
    private static Calibration calibration(
            double slope,
            double offset,
            double slopeVariance,
            double offsetVariance,
            double covariance,
            double lowestPh,
            double highestPh) {
        return new Calibration(
                CalibrationSignal.POTENTIAL,
                AT_25,
                slope,
                offset,
                slopeVariance,
                offsetVariance,
                covariance,
                IsothermalPoint.OFFSET_KEPT,
                MeterCompensation.automatic(),
                lowestPh,
                highestPh,
                Verdict.FIT,
                Calibration.MODEL);
    }

    @ParameterizedTest
    @CsvSource({
        "slope, 0.9, 0, 0, 0, 0, 4, 7",
        "slope, 121, 0, 0, 0, 0, 4, 7",
        "offset, 58, -1001, 0, 0, 0, 4, 7",
        "offset, 58, 1001, 0, 0, 0, 4, 7",
        "slope variance, 58, 0, -1, 0, 0, 4, 7",
        "offset variance, 58, 0, 0, -1, 0, 4, 7",
        "covariance of slope and offset, 58, 0, 0.04, 0.25, 0.11, 4, 7",
        "covariance of slope and offset, 58, 0, 0.04, 0.25, -0.11, 4, 7",
        "lowest pH, 58, 0, 0, 0, 0, -1, 7",
        "highest pH, 58, 0, 0, 0, 0, 7, 4",
        "highest pH, 58, 0, 0, 0, 0, 4, 15",
        "slope, NaN, 0, 0, 0, 0, 4, 7"
    })
    void aValueOutsideItsRangeIsNamed(ArgumentsAccessor row) {
        assertThatThrownBy(() -> calibration(
                        row.getDouble(1),
                        row.getDouble(2),
                        row.getDouble(3),
                        row.getDouble(4),
                        row.getDouble(5),
                        row.getDouble(6),
                        row.getDouble(7)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith(row.getString(0) + " of the calibration must be from ");
    }

    @Test
    void everyRangeIncludesItsEnds() {
        assertThat(calibration(1, -1000, 0, 0, 0, 0, 0).brackets(0)).isTrue();
        Calibration widest = calibration(120, 1000, 1e4, 1e6, 1e5, 0, 14);
        assertThat(widest.brackets(0)).isTrue();
        assertThat(widest.brackets(14)).isTrue();
        assertThat(widest.brackets(14.01)).isFalse();
    }

    @Test
    void theSlopeIsAPercentageOfTheIdealOne() {
        Calibration calibration = calibration(58, 3, 0.04, 0.25, -0.02, 4, 9);
        assertThat(calibration.slopePercent()).isCloseTo(100 * 58 / 59.159, within(1e-3));
        assertThat(calibration.slopePercentUncertainty()).isCloseTo(100 * 0.2 / 59.159, within(1e-5));
        assertThat(calibration.zeroPointPh()).isCloseTo(7 + 3.0 / 58, within(1e-12));
    }

    /** GUM-2008: each cause by its derivative, the covariance of slope and offset with its sign, all as a root of squares. */
    @Test
    void everyCauseOfUncertaintyCounts() {
        Calibration calibration = calibration(58, 30, 0.04, 0.25, -0.02, 4, 9);
        CalibratedPh read =
                calibration.read(new Potential(120), new Temperature(35), new ReadingUncertainty(0.6, 0.8, 0.012));
        double slope = 58 * 308.15 / 298.15;
        double ph = 7 - 90 / slope;
        assertThat(read.ph()).isCloseTo(ph, within(1e-12));
        double bySlope = (7 - ph) / 58;
        double line = bySlope * bySlope * 0.04 + 0.25 / (slope * slope) - 2 * bySlope / slope * 0.02;
        assertThat(read.fromLine()).isCloseTo(Math.sqrt(line), within(1e-12));
        assertThat(read.fromPotential()).isCloseTo(0.6 / slope, within(1e-12));
        assertThat(read.fromTemperature()).isCloseTo((7 - ph) * 0.8 / 308.15, within(1e-12));
        assertThat(read.fromLiquidJunction()).isEqualTo(0.012);
        double other = 7 + 30.0 / 58 - 120 / slope;
        assertThat(read.fromIsothermalPoint()).isCloseTo(Math.abs(other - ph) / Math.sqrt(3), within(1e-12));
        double variance = line
                + 0.6 * 0.6 / (slope * slope)
                + Math.pow((7 - ph) * 0.8 / 308.15, 2)
                + 0.012 * 0.012
                + (other - ph) * (other - ph) / 3;
        assertThat(read.standardUncertainty()).isCloseTo(Math.sqrt(variance), within(1e-12));
        assertThat(read.fromLineAndPotential()).isCloseTo(Math.sqrt(line + 0.6 * 0.6 / (slope * slope)), within(1e-12));
    }

    @Test
    void aDisplayedPhHasThePotentialThatItsMeterReckonedWith() {
        Calibration ideal = Calibration.ideal(MeterCompensation.manual(AT_25));
        assertThat(ideal.potentialBehind(5, new Temperature(60)).millivolts()).isCloseTo(2 * 59.159, within(1e-3));
        assertThat(ideal.verdict()).isEqualTo(Verdict.UNFIT);
    }

    @ParameterizedTest
    @CsvSource({"-0.1, 0, 0", "100.1, 0, 0", "0, -0.1, 0", "0, 50.1, 0", "0, 0, -0.1", "0, 0, 1.1"})
    void anUncertaintyOutsideItsRangeIsRefused(double potential, double temperature, double junction) {
        assertThatThrownBy(() -> new ReadingUncertainty(potential, temperature, junction))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageMatching("uncertainty of the [a-z ]+ must be from 0 to [0-9.]+ but is .*");
        assertThat(new ReadingUncertainty(100, 50, 1).potentialMv()).isEqualTo(100);
    }
}

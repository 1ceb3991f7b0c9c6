package tunside.electrode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import tunside.quantity.Potential;
import tunside.quantity.Temperature;

class CalibrationPublishedValuesTest {
    @ParameterizedTest(name = "{0}")
    @CsvFileSource(resources = "/published/electrode/calibrated-reading.csv", useHeadersInDisplayName = true)
    void readsTheSample(
            String name,
            double slopePercent,
            double offsetMv,
            double calibratedAtDegC,
            IsothermalPoint point,
            double potentialMv,
            double sampleDegC,
            double ph,
            double tolerance,
            String source) {
        Temperature calibratedAt = new Temperature(calibratedAtDegC);
        Calibration calibration = new Calibration(
                CalibrationSignal.POTENTIAL,
                calibratedAt,
                slopePercent / 100 * NernstSlope.millivoltsPerPh(calibratedAt),
                offsetMv,
                0,
                0,
                0,
                point,
                MeterCompensation.automatic(),
                4,
                7,
                Verdict.FIT,
                Calibration.MODEL);
        assertThat(calibration.ph(new Potential(potentialMv), new Temperature(sampleDegC)))
                .as(source)
                .isCloseTo(ph, within(tolerance));
        assertThat(calibration
                        .potential(
                                calibration.ph(new Potential(potentialMv), new Temperature(sampleDegC)),
                                new Temperature(sampleDegC))
                        .millivolts())
                .isCloseTo(potentialMv, within(1e-9));
    }
}

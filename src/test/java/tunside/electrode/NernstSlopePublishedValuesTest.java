package tunside.electrode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import tunside.quantity.Potential;
import tunside.quantity.Temperature;

class NernstSlopePublishedValuesTest {
    @ParameterizedTest(name = "{0} degC, {3}")
    @CsvFileSource(resources = "/published/electrode/nernst-slope.csv", useHeadersInDisplayName = true)
    void agreesWithTheTable(double temperatureDegC, double slopeMvPerPh, double tolerance, String source) {
        assertThat(NernstSlope.millivoltsPerPh(new Temperature(temperatureDegC)))
                .as(source)
                .isCloseTo(slopeMvPerPh, within(tolerance));
    }

    @ParameterizedTest(name = "{0} at {1} degC shows {2}")
    @CsvFileSource(resources = "/published/electrode/no-compensation.csv", useHeadersInDisplayName = true)
    void aMeterWithoutCompensationShows(
            double truePh, double sampleDegC, double displayedPh, double tolerance, String source) {
        Temperature sample = new Temperature(sampleDegC);
        Potential ideal = new Potential((7 - truePh) * NernstSlope.millivoltsPerPh(sample));
        assertThat(MeterCompensation.none().displayedPh(ideal, sample)).isCloseTo(displayedPh, within(tolerance));
        assertThat(MeterCompensation.automatic().displayedPh(ideal, sample)).isCloseTo(truePh, within(1e-12));
        assertThat(MeterCompensation.none()
                        .potentialBehind(MeterCompensation.none().displayedPh(ideal, sample), sample)
                        .millivolts())
                .isCloseTo(ideal.millivolts(), within(1e-9));
    }
}

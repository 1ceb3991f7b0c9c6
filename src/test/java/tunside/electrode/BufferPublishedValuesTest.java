package tunside.electrode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import tunside.quantity.Temperature;

class BufferPublishedValuesTest {
    @ParameterizedTest(name = "{0} at {1} degC, {4}")
    @CsvFileSource(
            resources = {
                "/published/electrode/buffer-values.csv",
                "/published/electrode/buffer-values-pharmacopoeia.csv"
            },
            useHeadersInDisplayName = true)
    void agreesWithTheTable(String buffer, double temperatureDegC, double ph, double tolerance, String source) {
        assertThat(Buffers.get(buffer).ph(new Temperature(temperatureDegC)))
                .as(source)
                .isCloseTo(ph, within(tolerance));
    }
}

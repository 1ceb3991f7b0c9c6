package tunside.electrode.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import tunside.quantity.Temperature;

class TemperatureEffectTest {

    @ParameterizedTest(name = "{0}")
    @CsvFileSource(resources = "/published/electrode/temperature-shift.csv", useHeadersInDisplayName = true)
    void thePublishedShiftsLieWithinTheSpread(
            String named, double roomDegC, double hotDegC, double shiftPh, double deviations, String source) {
        TemperatureEffect effect = TemperatureEffect.of(SampleLiquid.MASH);
        Temperature room = new Temperature(roomDegC);
        Temperature hot = new Temperature(hotDegC);
        double shift = effect.brought(5.3, hot, room) - 5.3;
        assertThat(shift).as(source).isCloseTo(shiftPh, within(deviations * effect.uncertainty(hot, room)));
    }

    @Test
    void aHotReadingIsBroughtToRoomTemperature() {
        double cold = TemperatureEffect.of(SampleLiquid.MASH).brought(5.30, new Temperature(65), new Temperature(18));
        assertThat(cold).as("PALMER-KAMINSKI-2013").isCloseTo(5.5585, within(1e-4));
        assertThat(TemperatureEffect.of(SampleLiquid.BEER).standardUncertainty())
                .isEqualTo(0.0026);
    }
}

package tunside.electrode.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import tunside.quantity.Temperature;

class TemperatureEffectTest {

    @Test
    void aHotReadingIsBroughtToRoomTemperature() {
        double cold = TemperatureEffect.of(SampleLiquid.MASH).brought(5.30, new Temperature(65), new Temperature(18));
        assertThat(cold).as("PALMER-KAMINSKI-2013").isCloseTo(5.5585, within(1e-4));
        assertThat(TemperatureEffect.of(SampleLiquid.BEER).standardUncertainty())
                .isEqualTo(0.0026);
    }
}

package tunside.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

/** Every unit against its published definition. */
class UnitsPublishedValuesTest {
    @ParameterizedTest(name = "{2} {1}")
    @CsvFileSource(resources = "/published/quantity/units.csv", useHeadersInDisplayName = true)
    void unitsConvertByTheirDefinition(
            String kind, String symbol, double value, double base, double tolerance, String source) {
        Unit[] units = switch (kind) {
            case "mass" -> MassUnit.values();
            case "volume" -> VolumeUnit.values();
            case "temperature" -> TemperatureUnit.values();
            case "time" -> TimeUnit.values();
            case "alkalinity" -> EquivalentUnit.values();
            default -> ColourUnit.values();
        };
        Unit unit = Arrays.stream(units)
                .filter(candidate -> candidate.symbol().equals(symbol))
                .findFirst()
                .orElseThrow();
        assertThat(unit.toBase(value)).isCloseTo(base, within(tolerance));
    }

    @Test
    void dissolvedIonsConvertByTheirMolarMassOrElement() {
        assertThat(96.056 * new Dissolved(25, DissolvedUnit.MG_PER_L_AS_S).mmolPerL(96.056, -2))
                .isCloseTo(74.9, within(0.05));
        assertThat(62.004 * new Dissolved(10, DissolvedUnit.MG_PER_L_AS_N).mmolPerL(62.004, -1))
                .isCloseTo(44.3, within(0.05));
        assertThat(new Dissolved(3, DissolvedUnit.MEQ_PER_L).mmolPerL(40.078, 2))
                .isEqualTo(1.5);
        assertThat(new Dissolved(40.078, DissolvedUnit.MG_PER_L).mmolPerL(40.078, 2))
                .isEqualTo(1);
    }

    @Test
    void nonsenseIsRefused() {
        assertThatThrownBy(() -> new Mass(-1)).hasMessageContaining("mass (-1.0 kg)");
        assertThatThrownBy(() -> new Volume(Double.NaN)).hasMessageContaining("volume (NaN L)");
        assertThatThrownBy(() -> new Temperature(-300)).hasMessageContaining("-273.15");
        assertThatThrownBy(() -> Strength.percent(100.1)).hasMessageContaining("at most 100");
        assertThatThrownBy(() -> new Strength(0, StrengthUnit.MOL_PER_L)).hasMessageContaining("above 0");
        assertThatThrownBy(() -> new Potential(Double.POSITIVE_INFINITY)).hasMessageContaining("finite");
    }

    @Test
    void temperatureKnowsKelvin() {
        assertThat(Temperature.of(77, TemperatureUnit.DEG_F).kelvin()).isCloseTo(298.15, within(1e-9));
    }
}

package tunside.electrode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static tunside.electrode.Sessions.AT_25;
import static tunside.electrode.Sessions.cup;
import static tunside.electrode.Sessions.prepared;

import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tunside.quantity.Temperature;
import tunside.quantity.TimeSpan;

class BufferCupTest {
    private static Preparation aged(double days, BufferState state) {
        return new Preparation(OptionalDouble.empty(), Optional.of(new TimeSpan(days * 86_400)), state);
    }

    private static Preparation water(double ratio) {
        return new Preparation(OptionalDouble.of(ratio), Optional.empty(), BufferState.MADE_UP);
    }

    @Test
    void aFreshCupIsWhatItsTableSays() {
        BufferValue value = cup("iupac-borax").value(AT_25);
        assertThat(value.ph()).isEqualTo(9.18);
        assertThat(value.standardUncertainty()).isEqualTo(0.01);
        assertThat(value.changeByAge()).isZero();
        assertThat(value.changeByWater()).isZero();
        assertThat(cup("iupac-borax").label()).isEqualTo("iupac-borax");
    }

    @Test
    void tooMuchWaterShiftsAndWidens() {
        BufferValue value = prepared("iupac-phosphate", water(1.5)).value(AT_25);
        assertThat(value.changeByWater()).isEqualTo(0.0485);
        assertThat(value.ph()).isCloseTo(6.865 + 0.0485, within(1e-12));
        assertThat(value.standardUncertainty()).isCloseTo(Math.hypot(0.01, 0.25 * 0.0485), within(1e-12));
    }

    /** An alkaline buffer takes up 0.5 mmol/kg of carbon dioxide in one shelf life; all age beyond it widens. */
    @Test
    void ageShiftsAnAlkalineBufferAndWidensEvery() {
        BufferValue one = prepared("iupac-borax", aged(14, BufferState.MADE_UP)).value(AT_25);
        assertThat(one.changeByAge()).isCloseTo(-0.0237, within(1e-9));
        assertThat(one.standardUncertainty()).isCloseTo(Math.hypot(0.01, 0.0237), within(1e-9));
        BufferValue three =
                prepared("iupac-borax", aged(42, BufferState.MADE_UP)).value(AT_25);
        assertThat(three.changeByAge()).isCloseTo(-0.0707, within(1e-9));
        assertThat(three.standardUncertainty()).isCloseTo(Math.sqrt(1e-4 + 0.0707 * 0.0707 + 4e-4), within(1e-9));
        BufferValue opened =
                prepared("iupac-borax", aged(90, BufferState.OPENED)).value(AT_25);
        assertThat(opened.changeByAge()).isCloseTo(-0.0237, within(1e-9));
        BufferValue acid =
                prepared("iupac-phthalate", aged(56, BufferState.MADE_UP)).value(AT_25);
        assertThat(acid.changeByAge()).isBetween(-0.0005, 0.0);
        assertThat(acid.standardUncertainty()).isCloseTo(Math.hypot(0.01, 0.01), within(1e-5));
    }

    @Test
    void afterTenShelfLivesNothingMoreIsAssumed() {
        assertThat(prepared("iupac-borax", aged(140, BufferState.MADE_UP)).value(AT_25))
                .isEqualTo(
                        prepared("iupac-borax", aged(1400, BufferState.MADE_UP)).value(AT_25));
    }

    @ParameterizedTest
    @CsvSource({
        "4.01, PHTHALATE",
        "3.89, PHTHALATE",
        "4.11, PHTHALATE",
        "6.86, PHOSPHATE",
        "6.74, PHOSPHATE",
        "6.92, PHOSPHATE",
        "6.93, TECHNICAL_PHOSPHATE",
        "7.00, TECHNICAL_PHOSPHATE",
        "7.12, TECHNICAL_PHOSPHATE",
        "8.8, BORAX",
        "9.18, BORAX",
        "9.5, BORAX",
        "9.6, CARBONATE",
        "10.01, CARBONATE",
        "10.35, CARBONATE",
    })
    void anOwnBufferNearACommonOneIsTakenForIt(double ph, BufferSubstance substance) {
        assertThat(BufferCup.ofPh(ph).substance()).contains(substance);
        assertThat(BufferCup.ofPh(ph).label()).isEqualTo("pH " + ph);
    }

    @ParameterizedTest
    @ValueSource(doubles = {3.87, 4.13, 6.73, 7.13, 8.79, 9.51, 9.59, 10.36, 1, 14})
    void anOwnBufferFarFromAllIsNot(double ph) {
        assertThat(BufferCup.ofPh(ph).substance()).isEmpty();
        assertThat(BufferCup.ofPh(ph).value(AT_25)).isEqualTo(new BufferValue(ph, 0.01, 0, 0));
    }

    @Test
    void aStatedUncertaintyCounts() {
        BufferCup stated =
                new BufferCup(Optional.empty(), OptionalDouble.of(5), OptionalDouble.of(0.03), Preparation.fresh());
        assertThat(stated.value(AT_25).standardUncertainty()).isEqualTo(0.03);
    }

    @Test
    void aCupAtAnotherTemperatureMovesAsItsTable() {
        assertThat(cup("iupac-borax").phIf(AT_25, new Temperature(50)).orElseThrow())
                .isCloseTo(9.011, within(1e-12));
        assertThat(cup("iupac-borax").phIf(AT_25, new Temperature(51))).isEmpty();
        assertThat(BufferCup.ofPh(9.2).phIf(AT_25, new Temperature(50)).orElseThrow())
                .isCloseTo(9.2 + 9.011 - 9.18, within(1e-12));
        assertThat(BufferCup.ofPh(5).phIf(AT_25, new Temperature(50))).isEmpty();
    }

    @Test
    void everySubstanceHasATable() {
        for (BufferSubstance substance : BufferSubstance.values()) {
            assertThat(BufferCup.tableOf(substance).substance()).isEqualTo(substance);
        }
    }

    @Test
    void nonsenseIsRefused() {
        assertThatThrownBy(() -> new BufferCup(
                        Optional.empty(), OptionalDouble.empty(), OptionalDouble.empty(), Preparation.fresh()))
                .hasMessageContaining("one of both");
        assertThatThrownBy(() -> new BufferCup(
                        Optional.of(Buffers.get("iupac-borax")),
                        OptionalDouble.of(9),
                        OptionalDouble.empty(),
                        Preparation.fresh()))
                .hasMessageContaining("one of both");
        for (double ph : new double[] {-0.1, 14.1, Double.NaN}) {
            assertThatThrownBy(() -> BufferCup.ofPh(ph)).hasMessageContaining("from 0 to 14");
        }
        for (double uncertainty : new double[] {-0.01, 0.51, Double.NaN}) {
            assertThatThrownBy(() -> new BufferCup(
                            Optional.empty(),
                            OptionalDouble.of(7),
                            OptionalDouble.of(uncertainty),
                            Preparation.fresh()))
                    .hasMessageContaining("from 0 to 0.5");
        }
        for (double ratio : new double[] {0.49, 2.01, Double.NaN}) {
            assertThatThrownBy(() -> water(ratio)).hasMessageContaining("from 0.5 to 2 times");
        }
        assertThat(water(0.5).excessWater()).isEqualTo(-0.5);
        assertThat(water(2).excessWater()).isEqualTo(1);
        assertThatThrownBy(() -> Sessions.reading(cup("technical-7.00"), 51, 0))
                .hasMessageContaining("from 0.0 to 50.0 degC")
                .hasMessageContaining("51.0");
    }
}

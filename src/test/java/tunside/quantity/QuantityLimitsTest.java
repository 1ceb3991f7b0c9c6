package tunside.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleFunction;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

class QuantityLimitsTest {
    static Stream<DoubleFunction<?>> notNegative() {
        return Stream.of(
                Mass::new,
                Volume::new,
                TimeSpan::new,
                Colour::new,
                Hardness::new,
                Conductivity::new,
                value -> new Dissolved(value, DissolvedUnit.MG_PER_L));
    }

    static Stream<DoubleFunction<?>> signed() {
        return Stream.of(Alkalinity::new, Potential::new);
    }

    private static void refused(DoubleFunction<?> quantity, double value) {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> quantity.apply(value))
                .withMessageContaining("finite");
    }

    @ParameterizedTest
    @MethodSource("notNegative")
    void nothingIsAnAmountAndLessIsNone(DoubleFunction<?> quantity) {
        assertThat(quantity.apply(0)).isNotNull();
        assertThat(quantity.apply(1e-300)).isNotNull();
        refused(quantity, -1e-300);
        refused(quantity, Double.NaN);
        refused(quantity, Double.POSITIVE_INFINITY);
    }

    @ParameterizedTest
    @MethodSource("signed")
    void whatHasASignMayBeBelowZero(DoubleFunction<?> quantity) {
        assertThat(quantity.apply(-1e9)).isNotEqualTo(quantity.apply(1e9));
        refused(quantity, Double.NaN);
        refused(quantity, Double.NEGATIVE_INFINITY);
        refused(quantity, Double.POSITIVE_INFINITY);
    }

    @Test
    void absoluteZeroIsTheColdest() {
        assertThat(new Temperature(-273.15).kelvin()).isZero();
        refused(Temperature::new, -273.16);
        refused(Temperature::new, Double.POSITIVE_INFINITY);
    }

    @Test
    void aStrengthIsAboveNothingAndAtMostAll() {
        assertThat(Strength.percent(100).value()).isEqualTo(100);
        assertThat(new Strength(101, StrengthUnit.EQ_PER_L).unit()).isEqualTo(StrengthUnit.EQ_PER_L);
        refused(value -> new Strength(value, StrengthUnit.MOL_PER_L), 0);
        refused(value -> new Strength(value, StrengthUnit.MOL_PER_L), Double.POSITIVE_INFINITY);
    }

    @Test
    void eachQuantityIsStatedInItsUnits() {
        assertThat(Mass.of(250, MassUnit.G)).isEqualTo(new Mass(0.25));
        assertThat(new Mass(0.25).grams()).isEqualTo(250);
        assertThat(Volume.of(250, VolumeUnit.ML)).isEqualTo(new Volume(0.25));
        assertThat(new Volume(0.25).millilitres()).isEqualTo(250);
        assertThat(TimeSpan.of(1.5, TimeUnit.H)).isEqualTo(new TimeSpan(5400));
        assertThat(new TimeSpan(5400).minutes()).isEqualTo(90);
        assertThat(Colour.of(10, ColourUnit.SRM).ebc()).isCloseTo(19.7, within(1e-9));
        assertThat(Hardness.of(5, EquivalentUnit.MEQ_PER_L)).isEqualTo(new Hardness(5));
        assertThat(Alkalinity.of(-5, EquivalentUnit.MEQ_PER_L)).isEqualTo(new Alkalinity(-5));
        assertThat(Conductivity.of(500, ConductivityUnit.US_PER_CM)).isEqualTo(new Conductivity(500));
        assertThat(Potential.of(-57, PotentialUnit.MV)).isEqualTo(new Potential(-57));
        assertThat(new Dissolved(1.5, DissolvedUnit.MMOL_PER_L).mmolPerL(40.078, 2))
                .isEqualTo(1.5);
    }

    /** Lovibond's scale ends below pale beers: what it makes negative is colourless. */
    @Test
    void aColourIsNeverBelowNone() {
        assertThat(ColourUnit.DEG_L.toBase(0.1)).isZero();
        assertThat(ColourUnit.DEG_L.toBase(2)).isCloseTo(4.1, within(1e-9));
    }

    @ParameterizedTest
    @EnumSource(DissolvedUnit.class)
    void aUnitIsKnownByItsSign(DissolvedUnit unit) {
        assertThat(unit.symbol()).isNotBlank();
        assertThat(List.of(DissolvedUnit.values()))
                .filteredOn(other -> other.symbol().equals(unit.symbol()))
                .hasSize(1);
    }

    @Test
    void strengthsAreKnownByTheirSigns() {
        assertThat(Arrays.stream(StrengthUnit.values()).map(StrengthUnit::symbol))
                .containsExactly("%w/w", "mol/L", "eq/L");
        assertThat(ConductivityUnit.US_PER_CM.symbol()).isEqualTo("uS/cm");
        assertThat(PotentialUnit.MV.symbol()).isEqualTo("mV");
    }
}

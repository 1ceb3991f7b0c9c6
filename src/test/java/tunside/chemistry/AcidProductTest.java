package tunside.chemistry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tunside.quantity.Strength;
import tunside.quantity.StrengthUnit;

class AcidProductTest {
    private static AcidProduct percent(String acid, double percent) {
        return AcidProduct.of(Acids.get(acid), Strength.percent(percent));
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource({"lactic,1", "phosphoric,3", "hydrochloric,1", "sulfuric,2", "citric,3", "acetic,1"})
    void equivalentsCountEveryProtonOfTheFormula(String acid, int protons) {
        AcidProduct tenPercent = percent(acid, 10);
        for (Strength strength : new Strength[] {
            new Strength(tenPercent.molPerL(), StrengthUnit.MOL_PER_L),
            new Strength(protons * tenPercent.molPerL(), StrengthUnit.EQ_PER_L)
        }) {
            AcidProduct product = AcidProduct.of(Acids.get(acid), strength);
            assertThat(product.massPercent()).isCloseTo(10, within(1e-9));
            assertThat(product.labelled()).isEqualTo(strength);
            assertThat(product.solid()).isFalse();
            assertThat(product.directShare()).isEqualTo(1);
        }
    }

    @Test
    void betweenTwoRowsTheLessCertainOneSpeaks() {
        AcidProduct between = percent("phosphoric", 45);
        assertThat(between.densityGPerMl()).isCloseTo((1.2536 + 1.335) / 2, within(1e-12));
        assertThat(between.densityUncertaintyGPerMl()).isEqualTo(0.004);
        assertThat(between.densitySource()).isEqualTo("PERRY");
        AcidProduct printed = percent("phosphoric", 40);
        assertThat(printed.densityGPerMl()).isEqualTo(1.2536);
        assertThat(printed.densityUncertaintyGPerMl()).isEqualTo(0.0005);
        assertThat(printed.densitySource()).isEqualTo("CRC-102");
        assertThat(percent("phosphoric", 72).densityUncertaintyGPerMl()).isEqualTo(0.004);
        assertThat(percent("phosphoric", 80).densitySource()).isEqualTo("PERRY");
        assertThat(percent("citric", 40).densitySource()).isEqualTo("COMMON-PRACTICE");
        assertThat(percent("hydrochloric", 39).densityGPerMl()).isCloseTo((1.1886 + 1.1977) / 2, within(1e-12));
    }

    @ParameterizedTest(name = "{0} {1} %")
    @CsvFileSource(resources = "/published/chemistry/independent-densities.csv", useHeadersInDisplayName = true)
    void densityAgreesWithAnIndependentModel(
            String acid, double massPercent, double density, double tolerance, String source) {
        assertThat(percent(acid, massPercent).densityGPerMl()).isCloseTo(density, within(tolerance));
    }

    @Test
    void anAcidSoldAsPowderIsWeighed() {
        AcidProduct citric = percent("citric", 100);
        assertThat(citric.solid()).isTrue();
        assertThat(citric.molPerKg()).isCloseTo(1000 / 192.123, within(1e-12));
        assertThat(citric.densityGPerMl()).isEqualTo(1.665);
        assertThat(citric.densitySource()).isEqualTo("CRYSTAL-DENSITIES");
        assertThat(percent("malic", 100).solid()).isTrue();
        assertThat(percent("tartaric", 100).densityGPerMl()).isEqualTo(1.76);
        assertThat(percent("sulfuric", 100).solid()).isFalse();
    }

    @Test
    void oligomersCountOnlyAboveThirtyPercent() {
        assertThat(LacticOligomers.lowestPercent()).isEqualTo(30);
        assertThat(percent("lactic", 30).directShare()).isEqualTo(1);
        assertThat(percent("lactic", 30.01).directShare()).isCloseTo(0.9833, within(1e-4));
        assertThat(percent("phosphoric", 85).directShare()).isEqualTo(1);
    }

    @Test
    void aStrengthBeyondTheTableIsRefusedWithItsEnd() {
        assertThat(percent("lactic", 90).densityGPerMl()).isEqualTo(1.211);
        assertThatThrownBy(() -> percent("lactic", 90.1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("lactic acid must be from 0 to 90.0 %w/w, where its density is known, but is 90.1 %w/w");
        assertThatThrownBy(() -> percent("malic", 50))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("powder of 100 %w/w only");
        assertThatThrownBy(() -> percent("hydrochloric", 100)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> AcidProduct.of(Acids.get("hydrochloric"), new Strength(13.2, StrengthUnit.MOL_PER_L)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("ends at 40.0 %w/w, 13.14 mol/L");
        assertThatThrownBy(() -> AcidProduct.of(Acids.get("malic"), new Strength(1, StrengthUnit.EQ_PER_L)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("ends at 0.0 %w/w");
        assertThatThrownBy(() -> AcidDensities.at(Acids.get("lactic"), Double.NaN))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> AcidDensities.at(Acids.get("lactic"), -0.1))
                .isInstanceOf(IllegalArgumentException.class);
        assertThat(AcidDensities.at(Acids.get("lactic"), 0).gPerMl()).isEqualTo(0.9982);
    }

    @Test
    void theStrongestOfATableCanBeStatedInMoles() {
        double strongest = percent("hydrochloric", 40).molPerL();
        assertThat(AcidProduct.of(Acids.get("hydrochloric"), new Strength(strongest, StrengthUnit.MOL_PER_L))
                        .massPercent())
                .isCloseTo(40, within(1e-9));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -1, Double.NaN, Double.POSITIVE_INFINITY, 100.5})
    void aProductWithANumberThatIsNoneIsRefused(double wrong) {
        AcidProduct good = percent("lactic", 80);
        for (int member = 0; member < 4; member++) {
            double[] values = {good.massPercent(), good.densityGPerMl(), good.molPerKg(), good.directShare()};
            values[member] = wrong;
            assertThatThrownBy(() -> new AcidProduct(
                            good.acid(),
                            good.labelled(),
                            values[0],
                            values[1],
                            good.densityUncertaintyGPerMl(),
                            "CRC-102",
                            values[2],
                            false,
                            values[3]))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageContaining("but is " + wrong);
        }
        assertThatThrownBy(() ->
                        new AcidProduct(good.acid(), good.labelled(), 80, 1.18, Double.NaN, "CRC-102", 8.88, false, 1))
                .isInstanceOf(IllegalArgumentException.class);
    }
}

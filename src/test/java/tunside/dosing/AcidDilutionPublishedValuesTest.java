package tunside.dosing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import tunside.chemistry.AcidProduct;
import tunside.chemistry.Acids;
import tunside.quantity.Mass;
import tunside.quantity.Temperature;

/** Heat and temperature of sulfuric acid poured into water of 20 degC, against an independent estimate. */
class AcidDilutionPublishedValuesTest {
    private static final AcidDilutionConditions ROOM =
            new AcidDilutionConditions(new Temperature(20), new Temperature(20), 50, 0.01);

    private static AcidDilutionStage inOneGo(AcidDilution dilution) {
        return AcidDilutionPlan.of(dilution, ROOM).inOneGo().orElseThrow();
    }

    @ParameterizedTest(name = "96 % to {0} %: {2} kJ, {4} degC")
    @CsvFileSource(resources = "/published/dosing/sulfuric-dilution-heat.csv", useHeadersInDisplayName = true)
    void sulfuricAcidHeatsWater(
            double massPercent,
            double millilitresPer100MlOfWater,
            double heatKj,
            double heatTolerance,
            double finalCelsius,
            double tolerance,
            String source) {
        AcidProduct strong = Doses.acid("sulfuric", 96);
        AcidDilution dilution = AcidDilution.using(strong, Doses.acid("sulfuric", massPercent), new Mass(0.1));
        AcidDilutionHeats heats = AcidDilutionHeats.of(Acids.get("sulfuric")).orElseThrow();
        assertThat(100 * heats.heatKjPerGram(96) - dilution.weakGrams() * heats.heatKjPerGram(massPercent))
                .isCloseTo(heatKj, within(heatTolerance));
        assertThat(inOneGo(dilution).endCelsius()).isCloseTo(finalCelsius, within(tolerance));
        assertThat(100 * dilution.strongMillilitres() / dilution.waterMillilitres())
                .isCloseTo(millilitresPer100MlOfWater, within(0.0051));
    }

    /** Equal volumes come to 135 to 140 degC, give or take 10 (THOMSEN-HEAT). */
    @Test
    void equalVolumesOfSulfuricAcidAndWaterWouldBoil() {
        AcidDilutionHeats heats = AcidDilutionHeats.of(Acids.get("sulfuric")).orElseThrow();
        AcidDilutionMixture mixed =
                AcidDilutionMixture.water(heats, 99.82, 20).with(Doses.acid("sulfuric", 96), 183.55, 20);
        assertThat(mixed.percent()).isCloseTo(62.2, within(0.05));
        assertThat(mixed.celsius()).isBetween(125.0, 150.0);
    }

    /** Integral heat about 62 kJ per 100 g of 96 % acid to 10 % (THOMSEN-HEAT). */
    @Test
    void theIntegralHeatToTenPercentIsSixtyTwoKilojoules() {
        AcidDilutionHeats heats = AcidDilutionHeats.of(Acids.get("sulfuric")).orElseThrow();
        assertThat(100 * heats.heatKjPerGram(96) - 960 * heats.heatKjPerGram(10))
                .isCloseTo(62, within(0.5));
    }
}

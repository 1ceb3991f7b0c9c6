package tunside.safety;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import tunside.chemistry.AcidProduct;
import tunside.chemistry.Acids;
import tunside.chemistry.Salts;
import tunside.quantity.Strength;

/** Hazards, supply limits, food status and spill amounts as published; limits change exactly at their strengths. */
class SafetyPublishedValuesTest {
    @ParameterizedTest(name = "{0} {1} %: {2}")
    @CsvFileSource(resources = "/published/safety/hazards.csv", useHeadersInDisplayName = true, emptyValue = "")
    void hazardsByStrength(String substance, double percent, String hazards, String source) {
        assertThat(String.join(" ", Hazards.of(substance, percent))).isEqualTo(hazards == null ? "" : hazards);
    }

    @ParameterizedTest(name = "{0} {1} %: {2}")
    @CsvFileSource(resources = "/published/safety/supply-limits.csv", useHeadersInDisplayName = true)
    void supplyLimitsAreHigherThan(String substance, double percent, String regions, String source) {
        List<String> found = Hazards.supplyLimits(substance, percent).stream()
                .map(Hazards.SupplyLimit::region)
                .toList();
        assertThat(String.join(";", found)).isEqualTo(regions == null ? "" : regions);
    }

    @ParameterizedTest(name = "{2} mL of {0} {1} %: {5} g")
    @CsvFileSource(resources = "/published/safety/spill-neutraliser.csv", useHeadersInDisplayName = true)
    void bicarbonateNeutralisesASpill(
            String acid,
            double percent,
            double millilitres,
            double equivalents,
            double equivalentsTolerance,
            double bicarbonateGrams,
            double tolerance,
            String source) {
        AcidProduct product = AcidProduct.of(Acids.get(acid), Strength.percent(percent));
        double grams = SpillNeutraliser.sodiumBicarbonateGrams(product, millilitres * product.densityGPerMl());
        assertThat(grams).isCloseTo(bicarbonateGrams, within(tolerance));
        assertThat(grams / 84.006).isCloseTo(equivalents, within(equivalentsTolerance));
    }

    /** Half the bicarbonate in moles, each of 105.988 g instead of 84.006 g. */
    @Test
    void carbonateNeutralisesTheSameSpillWithLess() {
        AcidProduct sulfuric = AcidProduct.of(Acids.get("sulfuric"), Strength.percent(96));
        assertThat(SpillNeutraliser.sodiumCarbonateGrams(sulfuric, 183.55)).isCloseTo(190.4, within(0.1));
        assertThat(SpillNeutraliser.sodiumCarbonateGrams(sulfuric, 50)
                        / SpillNeutraliser.sodiumBicarbonateGrams(sulfuric, 50))
                .isCloseTo(105.988 / 2 / 84.006, within(1e-12));
    }

    @ParameterizedTest(name = "{0} g of bicarbonate: {1} g, {3} L of gas")
    @CsvFileSource(resources = "/published/safety/bicarbonate-gas.csv", useHeadersInDisplayName = true)
    void bicarbonateGivesOffGas(
            double bicarbonateGrams,
            double carbonDioxideGrams,
            double gramsTolerance,
            double carbonDioxideLitres,
            double litresTolerance,
            String source) {
        assertThat(SpillNeutraliser.carbonDioxideGrams(bicarbonateGrams))
                .isCloseTo(carbonDioxideGrams, within(gramsTolerance));
        assertThat(SpillNeutraliser.carbonDioxideLitres(bicarbonateGrams))
                .isCloseTo(carbonDioxideLitres, within(litresTolerance));
    }

    /** What suppliers add by themselves is marked so, whatever else holds at that strength. */
    @ParameterizedTest(name = "{0} {1} %: {2} by {3}")
    @CsvFileSource(resources = "/published/safety/hazard-sources.csv", useHeadersInDisplayName = true)
    void everyHazardKnowsWhetherItIsSelfClassification(
            String substance, double percent, String code, String bandSource, String source) {
        assertThat(Hazards.bands(substance, percent))
                .filteredOn(band -> band.codes().contains(code))
                .extracting(Hazards.Band::source)
                .containsExactly(bandSource);
    }

    @Test
    void aHundredGramsOfBicarbonateFillABucketWithGas() {
        assertThat(SpillNeutraliser.carbonDioxideLitres(100)).isCloseTo(28.6, within(0.05));
    }

    @ParameterizedTest(name = "{0}: {1}, {2}")
    @CsvFileSource(resources = "/published/safety/food-status.csv", useHeadersInDisplayName = true)
    void foodStatusAsListed(String substance, String europeanUnion, String unitedStates, String source) {
        assertThat(FoodStatus.of(substance))
                .extracting(FoodStatus::region, FoodStatus::number)
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple("European Union", europeanUnion),
                        org.assertj.core.groups.Tuple.tuple("United States", unitedStates));
    }

    @Test
    void everySubstanceOfTheTablesIsKnown() {
        Acids.all().keySet().forEach(acid -> {
            assertThat(Hazards.bands(acid)).as(acid).isNotEmpty();
            assertThat(FoodStatus.of(acid)).as(acid).hasSize(2);
        });
        Salts.all()
                .keySet()
                .forEach(salt -> assertThat(Hazards.bands(salt)).as(salt).isNotEmpty());
        Acids.all()
                .values()
                .forEach(acid -> assertThat(FoodStatus.of(acid.id()).get(0).number())
                        .as(acid.id())
                        .isEqualTo(acid.eNumber()));
        assertThat(Hazards.bands("table-sugar")).isEmpty();
        assertThat(FoodStatus.of("table-sugar")).isEmpty();
        assertThat(Hazards.supplyLimits("lactic")).isEmpty();
    }

    @Test
    void codesHaveAMeaning() {
        assertThat(HazardStatements.find("H314")).hasValueSatisfying(statement -> {
            assertThat(statement.precaution()).isFalse();
            assertThat(statement.meaning()).isEqualTo("burns skin and eyes badly");
            assertThat(statement.source()).isEqualTo("CLP-1272-2008");
        });
        assertThat(HazardStatements.find("P280"))
                .hasValueSatisfying(
                        statement -> assertThat(statement.precaution()).isTrue());
        assertThat(HazardStatements.find("H999")).isEmpty();
        assertThat(HazardStatements.sentence(List.of())).isEmpty();
        assertThat(HazardStatements.sentence(List.of("H315"))).isEqualTo("irritates skin");
        assertThat(HazardStatements.sentence(List.of("H315", "H319", "H290")))
                .isEqualTo("irritates skin, irritates eyes strongly and attacks metals");
        assertThat(HazardStatements.all())
                .extracting(HazardStatement::code)
                .startsWith("H226")
                .endsWith("P501")
                .doesNotHaveDuplicates();
    }
}

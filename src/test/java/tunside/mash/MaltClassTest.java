package tunside.mash;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tunside.quantity.Colour;

class MaltClassTest {
    private static final MaltClass CARAMEL = MaltClasses.get("caramel");

    @Test
    void theClassesStandInTheTablesOrder() {
        assertThat(MaltClasses.all().keySet()).startsWith("pale", "pilsner", "wheat", "vienna", "munich", "caramel");
        assertThat(MaltClasses.all()).hasSize(24);
    }

    @Test
    void anUnknownClassIsNotFound() {
        assertThat(MaltClasses.find("chocolate-cake")).isEmpty();
        assertThat(MaltClasses.find("pale")).contains(MaltClasses.get("pale"));
        assertThatThrownBy(() -> MaltClasses.get("chocolate-cake"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("no malt class 'chocolate-cake'");
    }

    @Test
    void classesWithoutPublishedDataAreMarkedAndWide() {
        for (MaltClass maltClass : MaltClasses.all().values()) {
            Estimate ph = maltClass.distilledWaterPh(Optional.empty());
            if (maltClass.measured()) {
                assertThat(maltClass.distilledWaterPh().n()).as(maltClass.id()).isPositive();
                assertThat(maltClass.source()).isEqualTo("TROESTER-2009");
            } else {
                assertThat(maltClass.distilledWaterPh().n()).as(maltClass.id()).isZero();
                assertThat(maltClass.source()).isEqualTo("COMMON-PRACTICE");
                assertThat(ph.standardUncertainty()).as(maltClass.id()).isGreaterThanOrEqualTo(0.15);
            }
        }
        assertThat(MaltClasses.all().values().stream().filter(MaltClass::measured))
                .hasSize(9);
    }

    @Test
    void onlyCaramelFollowsItsColourAndOnlyAcidulatedCarriesLacticAcid() {
        assertThat(MaltClasses.all().values().stream().filter(MaltClass::followsColour))
                .containsExactly(CARAMEL);
        assertThat(MaltClasses.all().values().stream()
                        .filter(maltClass -> maltClass.lacticAcidPercent().isPresent()))
                .extracting(MaltClass::id)
                .containsExactly("acidulated");
    }

    @Test
    void oneMoreLotIsLessSureThanTheScatterOfThoseMeasured() {
        assertThat(new ClassValue(5.72, 0.09, 5, "DERIVED").lotUncertainty())
                .isCloseTo(0.09 * Math.sqrt(1.2), within(1e-12));
        assertThat(new ClassValue(5.72, 0.09, 0, "DERIVED").lotUncertainty()).isEqualTo(0.09);
    }

    @ParameterizedTest
    @CsvSource({"25, 0", "100, 0", "400, 0", "250, 0", "40, 0"})
    void caramelInsideTheMeasuredColoursIsAsSureAsTheFormula(double ebc, double extra) {
        Estimate ph = CARAMEL.distilledWaterPh(Optional.of(new Colour(ebc)));
        assertThat(ph.value()).isCloseTo(6.425 - 0.728 * Math.log10(ebc), within(1e-12));
        assertThat(ph.standardUncertainty()).isCloseTo(0.12 * Math.sqrt(12.0 / 11) + extra, within(1e-12));
        assertThat(CARAMEL.covers(new Colour(ebc))).isTrue();
    }

    @ParameterizedTest
    @CsvSource({"2.5, 1", "4000, 1", "250, 0"})
    void caramelOutsideTheMeasuredColoursIsLessSure(double ebc, double decades) {
        Estimate ph = CARAMEL.distilledWaterPh(Optional.of(new Colour(ebc)));
        assertThat(ph.standardUncertainty())
                .isCloseTo(Math.hypot(0.12 * Math.sqrt(12.0 / 11), 0.364 * decades), within(1e-9));
        assertThat(CARAMEL.covers(new Colour(ebc))).isEqualTo(decades == 0);
    }

    @Test
    void caramelWithoutColourIsTheMiddleAndWide() {
        Estimate ph = CARAMEL.distilledWaterPh(Optional.empty());
        assertThat(ph.value()).isCloseTo(6.425 - 0.728 * 2, within(1e-9));
        assertThat(ph.standardUncertainty())
                .isCloseTo(
                        Math.hypot(0.12 * Math.sqrt(12.0 / 11), 0.728 * Math.log10(16) / Math.sqrt(12)), within(1e-9));
    }

    @Test
    void colourBelowOneEbcCountsAsOne() {
        assertThat(CARAMEL.distilledWaterPh(Optional.of(new Colour(0))).value()).isCloseTo(6.425, within(1e-12));
    }

    @Test
    void labelsNameTheColour() {
        assertThat(Malt.of("caramel", 59.6).label()).isEqualTo("caramel (60 EBC)");
        assertThat(Malt.of("pale").label()).isEqualTo("pale");
    }
}

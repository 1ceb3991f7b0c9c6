package tunside.safety;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import tunside.chemistry.AcidProduct;
import tunside.chemistry.Acids;
import tunside.quantity.Strength;

/** Hazards and supply limits change exactly at their strengths, and notes follow them. */
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

    private static List<SafetyNote> notes(String acid, double percent) {
        return SafetyNotes.work(List.of(AcidProduct.of(Acids.get(acid), Strength.percent(percent))), true);
    }

    @Test
    void theDeferralAlwaysStandsLast() {
        for (List<SafetyNote> notes :
                List.of(SafetyNotes.general(), SafetyNotes.calibration(), SafetyNotes.all(), notes("lactic", 80))) {
            assertThat(notes.get(notes.size() - 1).code()).isEqualTo("defer.label-and-codes");
        }
    }

    @Test
    void theWarningFollowsTheStrength() {
        assertThat(notes("lactic", 80).get(0))
                .isEqualTo(new SafetyNote(
                        "acid.corrosive",
                        notes("lactic", 80).get(0).message(),
                        "lactic acid 80.0 %w/w",
                        List.of("H314", "H318", "EUH071"),
                        "CLP-1272-2008"));
        assertThat(notes("phosphoric", 10).get(0).code()).isEqualTo("acid.irritant");
        assertThat(notes("phosphoric", 5).get(0).code()).isEqualTo("acid.mild");
        assertThat(notes("hydrochloric", 31.45)).extracting(SafetyNote::code).contains("acid.supply-limit");
    }

    @Test
    void everyDoseSaysAcidIntoWaterNoChlorineFoodGradeAndNoSampleBack() {
        assertThat(notes("lactic", 80))
                .extracting(SafetyNote::code)
                .contains(
                        "acid.into-water",
                        "acid.never-with-chlorine-cleaner",
                        "acid.food-grade",
                        "sample.hot",
                        "sample.not-back",
                        "electrode.glass");
        assertThat(SafetyNotes.calibration())
                .extracting(SafetyNote::code)
                .containsExactly("electrode.glass", "buffer.not-food", "defer.label-and-codes");
    }
}

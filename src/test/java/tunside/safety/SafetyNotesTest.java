package tunside.safety;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tunside.chemistry.AcidProduct;
import tunside.chemistry.Acids;
import tunside.chemistry.Salts;
import tunside.quantity.Strength;
import tunside.reference.Sources;

class SafetyNotesTest {
    private static Chemical acid(String acid, double percent) {
        if (percent < 100 && List.of("malic", "tartaric").contains(acid)) {
            // the density table has these as powders only
            return new Chemical(acid, acid + " acid", percent, Chemical.Kind.ACID_SOLUTION, 1);
        }
        return Chemical.of(AcidProduct.of(Acids.get(acid), Strength.percent(percent)));
    }

    private static Chemical salt(String salt) {
        return Chemical.of(Salts.get(salt));
    }

    private static List<SafetyNote> notes(Chemical... chemicals) {
        return SafetyNotes.of(Set.of(), List.of(chemicals));
    }

    private static List<String> codes(Chemical... chemicals) {
        return notes(chemicals).stream().map(SafetyNote::code).toList();
    }

    /** Every kind of work, and every substance weak and strong. */
    private static List<List<SafetyNote>> many() {
        List<List<SafetyNote>> many = new ArrayList<>(
                List.of(SafetyNotes.general(), SafetyNotes.calibration(), SafetyNotes.reading(), SafetyNotes.all()));
        for (String acid : Acids.all().keySet()) {
            for (double percent : new double[] {0.5, 4, 12, 30}) {
                many.add(notes(acid(acid, percent)));
                many.add(SafetyNotes.of(Set.of(Handling.values()), List.of(acid(acid, percent), salt("gypsum"))));
            }
        }
        Salts.all().keySet().forEach(salt -> many.add(notes(salt(salt))));
        return many;
    }

    @Test
    void theDeferralToLabelCodesAndPracticeStandsOnceAndLast() {
        assertThat(many()).allSatisfy(notes -> {
            assertThat(notes)
                    .filteredOn(note -> note.code().equals("defer.label-and-codes"))
                    .hasSize(1);
            SafetyNote last = notes.get(notes.size() - 1);
            assertThat(last.code()).isEqualTo("defer.label-and-codes");
            assertThat(last.message()).contains("label", "local codes", "licensed practice");
        });
    }

    @Test
    void everyNoteHasWordsWithoutPlaceholdersASubjectAndAKnownSource() {
        List<List<SafetyNote>> answers = many();
        answers.remove(SafetyNotes.all());
        assertThat(answers)
                .allSatisfy(notes -> assertThat(notes).isNotEmpty().allSatisfy(note -> {
                    assertThat(note.message()).matches("[A-Z][^{}]*[.]");
                    assertThat(note.appliesTo()).isNotBlank();
                    assertThat(Sources.all()).containsKey(note.source());
                }));
    }

    @Test
    void theTableShowsEveryNoteOnceWithItsPlaceholders() {
        assertThat(SafetyNotes.all())
                .hasSize(37)
                .anySatisfy(note -> assertThat(note.message()).startsWith("{substance} {hazards}."));
    }

    @Test
    void noChemicalNoParticularWorkLeavesTheGeneralNotes() {
        assertThat(SafetyNotes.general())
                .extracting(SafetyNote::code)
                .containsExactly("work.general", "defer.label-and-codes");
    }

    @Test
    void anElectrodeIsGlassAndBuffersAreNoDrink() {
        assertThat(SafetyNotes.calibration())
                .extracting(SafetyNote::code)
                .containsExactly("electrode.glass", "buffer.not-food", "buffer.powder", "defer.label-and-codes");
    }

    @Test
    void aSampleIsHotAndDoesNotGoBack() {
        assertThat(SafetyNotes.reading())
                .extracting(SafetyNote::code)
                .containsExactly("electrode.glass", "sample.hot", "sample.not-back", "defer.label-and-codes");
    }

    @Test
    void theWarningFollowsTheStrength() {
        assertThat(codes(acid("phosphoric", 25))).startsWith("substance.corrosive");
        assertThat(codes(acid("phosphoric", 24.9))).startsWith("substance.irritant");
        assertThat(codes(acid("phosphoric", 9.9))).startsWith("acid.mild");
        assertThat(codes(acid("tartaric", 5))).startsWith("substance.eye-damage");
        assertThat(codes(acid("hydrochloric", 5))).startsWith("acid.mild");
        assertThat(codes(salt("gypsum"))).containsExactly("salt.food-grade", "defer.label-and-codes");
    }

    @Test
    void theWarningSaysWhatTheCodesMean() {
        assertThat(notes(acid("lactic", 80)).get(0))
                .isEqualTo(new SafetyNote(
                        "substance.corrosive",
                        "Lactic acid 80 %w/w burns skin and eyes badly and burns the airways."
                                + " Wear splash goggles or a face shield, acid-proof gloves and long sleeves. Have"
                                + " running water within reach, and nobody small nearby.",
                        "lactic acid 80 %w/w",
                        List.of("H314", "H318", "EUH071"),
                        "CLP-1272-2008"));
        assertThat(notes(acid("malic", 12)).get(0).source()).isEqualTo("CLP-SELF");
        assertThat(notes(acid("hydrochloric", 5)).get(0).hazards()).containsExactly("H290");
        assertThat(notes(acid("hydrochloric", 5)).get(0).source()).isEqualTo("CLP-1272-2008");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "acid.into-water",
                "acid.never-with-chlorine-cleaner",
                "acid.never-seal-with-carbonate",
                "acid.not-on-metal",
                "acid.food-grade",
                "acid.storage",
                "acid.spill"
            })
    void everyAcidCarriesTheRulesOfAcid(String code) {
        for (String acid : Acids.all().keySet()) {
            assertThat(codes(acid(acid, 1))).as(acid).contains(code);
        }
        assertThat(codes(salt("gypsum"))).doesNotContain(code);
    }

    @Test
    void firstAidComesWithWhateverIsClassed() {
        assertThat(codes(acid("lactic", 88))).contains("chemical.first-aid");
        assertThat(codes(salt("calcium-hydroxide"))).contains("chemical.first-aid");
        assertThat(codes(acid("citric", 5))).doesNotContain("chemical.first-aid");
        assertThat(codes(salt("sodium-bicarbonate"))).doesNotContain("chemical.first-aid");
    }

    @Test
    void someSubstancesHaveTheirOwnTricks() {
        assertThat(codes(acid("hydrochloric", 25))).contains("acid.fumes");
        assertThat(codes(acid("hydrochloric", 24.9))).doesNotContain("acid.fumes");
        assertThat(codes(acid("hydrochloric", 25))).contains("acid.air-limit");
        assertThat(codes(acid("hydrochloric", 24.9))).doesNotContain("acid.air-limit");
        assertThat(codes(acid("sulfuric", 70))).contains("acid.attacks-gloves", "acid.spill-concentrated");
        assertThat(codes(acid("lactic", 80))).contains("acid.purity");
        assertThat(codes(acid("sulfuric", 69.9))).doesNotContain("acid.attacks-gloves", "acid.spill-concentrated");
        assertThat(codes(acid("phosphoric", 84.9))).doesNotContain("acid.crystallises");
        assertThat(codes(acid("phosphoric", 85))).contains("acid.crystallises");
        assertThat(codes(salt("calcium-hydroxide")))
                .containsExactly(
                        "substance.eye-damage",
                        "base.lime-dust",
                        "base.handling",
                        "base.never-with-acid",
                        "base.food-grade",
                        "base.storage",
                        "chemical.first-aid",
                        "defer.label-and-codes");
        assertThat(codes(salt("sodium-hydroxide"))).contains("substance.corrosive", "base.heats-water");
        assertThat(codes(salt("sodium-bicarbonate"))).containsExactly("base.never-with-acid", "defer.label-and-codes");
    }

    @Test
    void aLicenceIsNamedOnlyAboveTheLimit() {
        assertThat(codes(acid("phosphoric", 30))).doesNotContain("acid.supply-limit");
        assertThat(notes(acid("sulfuric", 35)))
                .filteredOn(note -> note.code().equals("acid.supply-limit"))
                .extracting(SafetyNote::message)
                .containsExactly(
                        "In Great Britain, sulfuric acid above 15 %w/w needs a Home Office licence.",
                        "In the European Union, sulfuric acid above 15 %w/w is not for the public; a state may grant a"
                                + " licence, up to 40 %w/w.");
    }

    @Test
    void theSpillAmountIsRoundedUpToAHeap() {
        assertThat(notes(acid("sulfuric", 96)))
                .filteredOn(note -> note.code().equals("acid.spill-amount"))
                .extracting(SafetyNote::message)
                .containsExactly(
                        "About 170 g of sodium bicarbonate neutralise a spill of 100 g of sulfuric acid 96 %w/w. It"
                                + " foams: that makes about 50 L of gas.");
        assertThat(notes(acid("lactic", 10)))
                .filteredOn(note -> note.code().equals("acid.spill-amount"))
                .extracting(SafetyNote::message)
                .containsExactly(
                        "About 10 g of sodium bicarbonate neutralise a spill of 100 g of lactic acid 10 %w/w. It"
                                + " foams: that makes about 3 L of gas.");
        assertThat(codes(acid("citric", 100))).doesNotContain("acid.spill-amount");
    }

    @Test
    void aChemicalThatStandsTwiceCountsOnce() {
        assertThat(codes(acid("lactic", 80), acid("lactic", 80))).isEqualTo(codes(acid("lactic", 80)));
        assertThat(codes(acid("lactic", 80), acid("lactic", 10)))
                .filteredOn("substance.corrosive"::equals)
                .hasSize(2);
    }

    @Test
    void chemicalsKnowTheirKindAndTitle() {
        assertThat(acid("lactic", 80).kind()).isEqualTo(Chemical.Kind.ACID_SOLUTION);
        assertThat(acid("citric", 100).kind()).isEqualTo(Chemical.Kind.ACID_POWDER);
        assertThat(acid("citric", 100).acid()).isTrue();
        assertThat(salt("sodium-carbonate").kind()).isEqualTo(Chemical.Kind.BASE);
        assertThat(salt("epsom-salt").kind()).isEqualTo(Chemical.Kind.SALT);
        assertThat(salt("epsom-salt").acid()).isFalse();
        assertThat(acid("hydrochloric", 31.45).title()).isEqualTo("hydrochloric acid 31.45 %w/w");
        assertThat(acid("phosphoric", 30).title()).isEqualTo("phosphoric acid 30 %w/w");
        assertThat(acid("citric", 100).title()).isEqualTo("citric acid");
        assertThat(salt("gypsum").title()).isEqualTo("gypsum");
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -1, 100.1, Double.NaN})
    void anImpossibleStrengthIsRefused(double percent) {
        assertThatThrownBy(() -> new Chemical("lactic", "lactic acid", percent, Chemical.Kind.ACID_SOLUTION, 1))
                .hasMessageContaining("must be above 0 and at most 100");
    }

    @ParameterizedTest
    @ValueSource(doubles = {-1, Double.NaN, Double.POSITIVE_INFINITY})
    void anImpossibleAmountOfBicarbonateIsRefused(double grams) {
        assertThatThrownBy(() -> new Chemical("lactic", "lactic acid", 80, Chemical.Kind.ACID_SOLUTION, grams))
                .hasMessageContaining("sodium bicarbonate");
    }
}

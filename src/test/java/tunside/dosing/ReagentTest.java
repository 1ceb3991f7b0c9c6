package tunside.dosing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import tunside.chemistry.Acids;
import tunside.chemistry.NeatAcidLimits;
import tunside.chemistry.Salts;
import tunside.finding.Finding;
import tunside.finding.Outcome;
import tunside.mash.PhRanges;
import tunside.quantity.Mass;

class ReagentTest {
    @Test
    void anAcidGivesWhatActsOfIt() {
        Reagent strong = Reagent.of(Doses.acid("hydrochloric", 10));
        assertThat(strong.meqPerGram(5.4)).isCloseTo(2.7429, within(1e-4));
        assertThat(strong.relativeUncertainty()).isCloseTo(0.03, within(0.0005));
        assertThat(strong.acid()).isTrue();
        assertThat(strong.name()).isEqualTo("hydrochloric acid");
        assertThat(strong.millilitres(10.476).orElseThrow()).isCloseTo(10, within(1e-3));
        Reagent phosphoric = Reagent.of(Doses.acid("phosphoric", 10));
        assertThat(phosphoric.meqPerGram(5.4)).isCloseTo(1.0205 * 1.014, within(0.003));
        Reagent lactic = Reagent.of(Doses.acid("lactic", 88));
        assertThat(lactic.meqPerGram(14)).isCloseTo(9.769 * (1 + 0.834) / 2, within(0.01));
        assertThat(lactic.relativeUncertainty()).isCloseTo(0.061, within(0.002));
        assertThat(Reagent.actingMillimolesPerGram(Doses.acid("lactic", 88)))
                .isCloseTo(9.769 * (1 + 0.834) / 2, within(0.01));
        assertThat(lactic.withoutUncertainty().relativeUncertainty()).isZero();
        assertThat(lactic.withoutUncertainty().meqPerGram(5)).isEqualTo(lactic.meqPerGram(5));
    }

    @Test
    void aPowderHasNoVolume() {
        Reagent citric = Reagent.of(Doses.acid("citric", 100));
        assertThat(citric.gramsPerMl()).isEmpty();
        assertThat(citric.millilitres(5)).isEmpty();
        assertThat(citric.relativeUncertainty()).isCloseTo(0.03, within(1e-9));
    }

    @Test
    void aBaseTakesProtonsUp() {
        Reagent bicarbonate = Reagent.of(Salts.get("sodium-bicarbonate"), true);
        assertThat(bicarbonate.acid()).isFalse();
        assertThat(bicarbonate.meqPerGram(4)).isCloseTo(-11.904, within(0.06));
        assertThat(bicarbonate.meqPerGram(6.352)).isCloseTo(-11.904 / 2, within(0.01));
        assertThat(bicarbonate.relativeUncertainty()).isEqualTo(0.03);
        Reagent lime = Reagent.of(Salts.get("calcium-hydroxide"), true);
        assertThat(lime.meqPerGram(5.4)).isCloseTo(-26.993 * (1 - 1 / 3.5), within(0.01));
        assertThat(Reagent.of(Salts.get("calcium-hydroxide"), false).meqPerGram(5.4))
                .isCloseTo(-26.993, within(0.01));
        Reagent chalk = Reagent.of(Salts.get("calcium-carbonate"), false);
        assertThat(chalk.meqPerGram(4)).isCloseTo(-0.33 * 19.98, within(0.05));
        assertThat(chalk.relativeUncertainty()).isCloseTo(Math.hypot(0.03, 0.15 / 0.33), within(1e-9));
        assertThat(chalk.millilitres(3)).isEmpty();
    }

    @Test
    void basesThatMayBeDosed() {
        assertThat(Bases.all().keySet())
                .containsExactly(
                        "sodium-bicarbonate",
                        "potassium-bicarbonate",
                        "sodium-carbonate",
                        "calcium-hydroxide",
                        "calcium-carbonate");
        assertThat(Bases.find("sodium-hydroxide")).isEmpty();
        assertThat(Bases.find("calcium-carbonate").orElseThrow().forLiquor()).isFalse();
        assertThat(Bases.find("calcium-hydroxide").orElseThrow().forLiquor()).isTrue();
        assertThat(DoseChecks.base(Bases.find("calcium-hydroxide").orElseThrow()))
                .isEqualTo(Finding.of("dose.base", Outcome.CAUTION, "/base").about("calcium hydroxide, slaked lime"));
        assertThat(DoseChecks.base(Bases.find("sodium-bicarbonate").orElseThrow())
                        .outcome())
                .isEqualTo(Outcome.PASS);
    }

    @Test
    void theUncertaintyOfAnAcidActsLikeThatOfTheBuffering() {
        BufferingPrior widened = new BufferingPrior(38, "x", 0.28, "y").widened(0.06);
        assertThat(widened.logStandardDeviation()).isCloseTo(Math.hypot(0.28, 0.06), within(1e-12));
        assertThat(widened.median()).isEqualTo(38);
        assertThat(new BufferingPrior(38, "x", 0.9, "y").widened(0.9).logStandardDeviation())
                .isEqualTo(1);
        DoseQuestion question = Doses.question(Doses.pale(), Doses.acid("lactic", 88), 5.7, 0.03, Lines.AIM);
        assertThat(question.prior().logStandardDeviation()).isCloseTo(Math.hypot(0.28, 0.061), within(0.001));
        assertThat(question.acid().orElseThrow().reagent().relativeUncertainty())
                .isZero();
        assertThat(question.acid().orElseThrow().stepGrams()).isCloseTo(0.1206, within(1e-4));
    }

    @Test
    void whatAnAcidLeavesIsHeldAgainstTaste() {
        AnionTaste lactate = AnionTaste.of(Acids.get("lactic"), 100, 20);
        assertThat(lactate.mgPerL()).isCloseTo(445.35, within(0.01));
        assertThat(lactate.thresholdMgPerL()).hasValue(400);
        assertThat(lactate.kind()).isEqualTo("taste-threshold");
        assertThat(lactate.source()).isEqualTo("BRIGGS-2004");
        assertThat(lactate.finding().outcome()).isEqualTo(Outcome.CAUTION);
        assertThat(lactate.finding().expected()).hasValue(400);
        assertThat(new AnionTaste("lactate", 400, OptionalDouble.of(400), "", "")
                        .finding()
                        .outcome())
                .isEqualTo(Outcome.PASS);
        AnionTaste phosphate = AnionTaste.of(Acids.get("phosphoric"), 20, 20);
        assertThat(phosphate.thresholdMgPerL()).isEmpty();
        assertThat(phosphate.finding().outcome()).isEqualTo(Outcome.NOTE);
        assertThat(phosphate.finding().observed().orElseThrow()).isCloseTo(94.971, within(1e-3));
        assertThat(AnionTaste.of(Acids.get("hydrochloric"), 1, 1).kind()).isEqualTo("usual-limit");
        assertThat(AnionTaste.of(Acids.get("sulfuric"), 1, 1).thresholdMgPerL()).hasValue(350);
    }

    @Test
    void strongMineralAcidIsDilutedFirst() {
        assertThat(NeatAcidLimits.reachedBy(Doses.acid("hydrochloric", 24.9))).isFalse();
        assertThat(NeatAcidLimits.reachedBy(Doses.acid("hydrochloric", 25))).isTrue();
        assertThat(NeatAcidLimits.reachedBy(Doses.acid("sulfuric", 14.9))).isFalse();
        assertThat(NeatAcidLimits.reachedBy(Doses.acid("sulfuric", 15))).isTrue();
        assertThat(NeatAcidLimits.reachedBy(Doses.acid("phosphoric", 85))).isFalse();
        assertThat(NeatAcidLimits.reachedBy(Doses.acid("lactic", 88))).isFalse();
        assertThat(DoseChecks.product(Doses.acid("sulfuric", 93)))
                .extracting(Finding::code, Finding::outcome)
                .containsExactly(org.assertj.core.groups.Tuple.tuple("dose.dilute-first", Outcome.STOP));
        assertThat(DoseChecks.product(Doses.acid("lactic", 80)))
                .extracting(Finding::code)
                .containsExactly("dose.strength", "dose.lactic-oligomers");
        assertThat(DoseChecks.product(Doses.acid("lactic", 80))
                        .get(1)
                        .expected()
                        .orElseThrow())
                .isCloseTo(88.4, within(0.1));
        assertThat(DoseChecks.product(Doses.acid("phosphoric", 10)))
                .extracting(Finding::code)
                .containsExactly("dose.strength");
    }

    @Test
    void aDilutionKeepsTheAcid() {
        AcidDilution dilution = AcidDilution.of(Doses.acid("hydrochloric", 31.45), 10, new Mass(1));
        assertThat(dilution.strongMass().grams()).isCloseTo(1000 * 10 / 31.45, within(1e-9));
        assertThat(dilution.strongMass().grams() + dilution.waterMass().grams()).isCloseTo(1000, within(1e-9));
        assertThat(dilution.weakMillilitres()).isCloseTo(1000 / 1.0476, within(0.1));
        assertThat(dilution.strongMillilitres()).isCloseTo(1000 * 10 / 31.45 / 1.157, within(0.5));
        assertThatThrownBy(() -> AcidDilution.of(Doses.acid("sulfuric", 10), 10, new Mass(1)))
                .hasMessageContaining("below the one in hand");
        assertThatThrownBy(() -> AcidDilution.of(Doses.acid("sulfuric", 10), 0, new Mass(1)))
                .hasMessageContaining("above 0");
    }

    @Test
    void readingsAreJudgedByTheirUncertainty() {
        assertThat(reading(0.05, true)).isEqualTo(Outcome.PASS);
        assertThat(reading(0.1, true)).isEqualTo(Outcome.PASS);
        assertThat(reading(0.05, false)).isEqualTo(Outcome.NOTE);
        assertThat(reading(0.101, true)).isEqualTo(Outcome.CAUTION);
        assertThat(reading(0.3, true)).isEqualTo(Outcome.CAUTION);
        assertThat(reading(0.301, true)).isEqualTo(Outcome.STOP);
        assertThat(DoseChecks.usualUncertainty()).isEqualTo(0.05);
        assertThat(DoseChecks.reading(new PhReading(5, 0.2), true).expected()).hasValue(0.1);
        assertThat(DoseChecks.reading(new PhReading(5, 0.4), true).expected()).hasValue(0.3);
        assertThat(DoseChecks.reading(new PhReading(5, 0.4), true).pointer()).isEqualTo("/phUncertainty");
        assertThat(DoseChecks.reading(new PhReading(5, 0.05), false).pointer()).isEmpty();
    }

    private static Outcome reading(double uncertainty, boolean stated) {
        return DoseChecks.reading(new PhReading(5, uncertainty), stated).outcome();
    }

    @Test
    void targetsBeyondWhatIsUsualAreCautioned() {
        assertThat(DoseChecks.target(DosedLiquid.MASH, 5.1).outcome()).isEqualTo(Outcome.PASS);
        assertThat(DoseChecks.target(DosedLiquid.MASH, 5.05).outcome()).isEqualTo(Outcome.CAUTION);
        assertThat(DoseChecks.target(DosedLiquid.MASH, 5.8).outcome()).isEqualTo(Outcome.PASS);
        assertThat(DoseChecks.target(DosedLiquid.MASH, 5.85).outcome()).isEqualTo(Outcome.CAUTION);
        assertThat(DoseChecks.target(DosedLiquid.MASH, 5.05).expected()).hasValue(5.2);
        assertThat(DoseChecks.target(DosedLiquid.MASH, 5.85).expected()).hasValue(5.7);
        assertThat(DoseChecks.target(DosedLiquid.BEER, 4.3).outcome()).isEqualTo(Outcome.PASS);
        assertThat(DoseChecks.target(DosedLiquid.BEER, 5.3).outcome()).isEqualTo(Outcome.CAUTION);
        for (DosedLiquid liquid : DosedLiquid.values()) {
            assertThat(liquid.lowestTargetPh()).isLessThan(liquid.highestTargetPh());
        }
        assertThat(DosedLiquid.LIQUOR.halfWidthPh()).isEqualTo(0.3);
        assertThat(DosedLiquid.WORT.lowestTargetPh())
                .isEqualTo(PhRanges.find("boiled-wort").orElseThrow().lowPh().orElseThrow());
        assertThat(DoseChecks.range(true, 0.1).outcome()).isEqualTo(Outcome.PASS);
        assertThat(DoseChecks.range(false, 0.1).outcome()).isEqualTo(Outcome.NOTE);
        assertThat(DoseChecks.range(false, 0.1).observed()).hasValue(0.1);
        assertThat(DoseChecks.prior(new BufferingPrior(38, "", 0.28, ""))
                        .observed()
                        .orElseThrow())
                .isCloseTo(1.585, within(0.001));
    }

    @Test
    void aReadingAloneAddsNothing() {
        PastAddition read = PastAddition.read(new PhReading(5.4, 0.02));
        assertThat(read.grams()).isZero();
        assertThat(read.reagent().meqPerGram(5)).isZero();
        assertThat(read.after()).isEqualTo(Optional.of(new PhReading(5.4, 0.02)));
        assertThat(List.of(read.reagent().id())).containsExactly("nothing");
    }
}

package tunside.dosing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tunside.chemistry.AcidProduct;
import tunside.chemistry.Acids;
import tunside.finding.Finding;
import tunside.finding.Outcome;
import tunside.quantity.Mass;
import tunside.quantity.Strength;
import tunside.quantity.StrengthUnit;
import tunside.quantity.Temperature;
import tunside.safety.Jurisdiction;

class AcidDilutionTest {
    private static AcidDilutionConditions at(double water, double acid, double limit) {
        return new AcidDilutionConditions(new Temperature(water), new Temperature(acid), limit, 0.01);
    }

    private static final AcidDilutionConditions ROOM = at(20, 20, 50);

    private static AcidDilution kilogram(String acid, double strong, double weak) {
        return AcidDilution.making(Doses.acid(acid, strong), Doses.acid(acid, weak), new Mass(1));
    }

    private static AcidDilutionPlan plan(String acid, double strong, double weak) {
        return AcidDilutionPlan.of(kilogram(acid, strong, weak), ROOM);
    }

    private static List<Finding> findings(AcidDilutionPlan plan) {
        return AcidDilutionChecks.of(plan, false, Optional.empty());
    }

    private static Finding finding(AcidDilutionPlan plan, String code) {
        return findings(plan).stream()
                .filter(finding -> finding.code().equals(code))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no finding " + code));
    }

    @Test
    void phosphoricAcidOf85IsMadeInto10() {
        AcidDilution dilution = kilogram("phosphoric", 85, 10);
        assertThat(dilution.strongMass().grams()).isCloseTo(117.647, within(0.001));
        assertThat(dilution.waterMass().grams()).isCloseTo(882.353, within(0.001));
        assertThat(dilution.strongMillilitres()).isCloseTo(69.655, within(0.001));
        assertThat(dilution.waterMillilitres()).isCloseTo(883.944, within(0.001));
        assertThat(dilution.weakGrams()).isCloseTo(1000, within(1e-9));
        assertThat(dilution.weakMillilitres()).isCloseTo(949.577, within(0.001));
        assertThat(dilution.lostMillilitres()).isCloseTo(4.022, within(0.001));
    }

    @Test
    void usingUpTakesAllOfTheAcid() {
        AcidDilution dilution =
                AcidDilution.using(Doses.acid("hydrochloric", 30), Doses.acid("hydrochloric", 10), new Mass(0.5));
        assertThat(dilution.strongMass().grams()).isEqualTo(500);
        assertThat(dilution.waterMass().grams()).isCloseTo(1000, within(1e-9));
    }

    @ParameterizedTest
    @CsvSource({"10,10", "10,30"})
    void whatIsNotWeakerIsRefused(double strong, double weak) {
        assertThatThrownBy(() -> kilogram("phosphoric", strong, weak))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("the strength wanted (%s %%w/w) must be above 0 and below the one in hand (%s %%w/w)"
                        .formatted(weak, strong));
        assertThatThrownBy(() -> AcidDilution.using(
                        Doses.acid("phosphoric", strong), Doses.acid("phosphoric", weak), new Mass(1)))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -1, Double.NaN})
    void aStrengthThatIsNoneIsRefused(double wanted) {
        assertThatThrownBy(() -> AcidDilution.of(Doses.acid("sulfuric", 10), wanted, new Mass(1)))
                .hasMessageContaining("must be above 0");
    }

    @ParameterizedTest(name = "water {0}, acid {1}, limit {2}, label {3}: {4}")
    @CsvSource({
        "-0.1,20,50,0.01,temperature of the water (degC) must be from 0.0 to 100.0 but is -0.1",
        "100.1,20,50,0.01,temperature of the water (degC) must be from 0.0 to 100.0 but is 100.1",
        "20,-0.1,50,0.01,temperature of the acid (degC) must be from 0.0 to 35.0 but is -0.1",
        "20,35.1,50,0.01,temperature of the acid (degC) must be from 0.0 to 35.0 but is 35.1",
        "20,20,39.9,0.01,temperature that the mixture may reach (degC) must be from 40.0 to 60.0 but is 39.9",
        "20,20,60.1,0.01,temperature that the mixture may reach (degC) must be from 40.0 to 60.0 but is 60.1",
        "20,20,NaN,0.01,temperature that the mixture may reach (degC) must be from 40.0 to 60.0 but is NaN",
        "20,20,50,-0.01,uncertainty of the label (share) must be from 0.0 to 0.2 but is -0.01",
        "20,20,50,0.21,uncertainty of the label (share) must be from 0.0 to 0.2 but is 0.21"
    })
    void conditionsThatMakeNoSenseAreRefused(double water, double acid, double limit, double label, String message) {
        assertThatThrownBy(
                        () -> new AcidDilutionConditions(new Temperature(water), new Temperature(acid), limit, label))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage(message);
    }

    @Test
    void conditionsAtTheirBoundsAreTaken() {
        assertThat(new AcidDilutionConditions(new Temperature(0), new Temperature(0), 40, 0).labelShare())
                .isZero();
        assertThat(new AcidDilutionConditions(new Temperature(100), new Temperature(35), 60, 0.2).warmLimitCelsius())
                .isEqualTo(60);
    }

    @Test
    void tenPercentSulfuricAcidIsMadeInOneGo() {
        AcidDilutionPlan plan = plan("sulfuric", 96, 10);
        AcidDilutionStage stage = plan.inOneGo().orElseThrow();
        assertThat(plan.staged()).isFalse();
        assertThat(plan.nearBoilingInOneGo()).isFalse();
        assertThat(plan.stages()).containsExactly(stage);
        assertThat(stage.startCelsius()).isEqualTo(20);
        assertThat(stage.endCelsius()).isCloseTo(36.96, within(0.01));
        assertThat(stage.hottestCelsius()).isEqualTo(stage.endCelsius());
        assertThat(stage.halfWidthKelvin()).isCloseTo(16.96 / 2, within(0.01));
        assertThat(stage.percentAfter()).isCloseTo(10, within(1e-9));
        assertThat(stage.acidGrams()).isCloseTo(104.1667, within(1e-4));
        assertThat(finding(plan, "dilution.heat"))
                .isEqualTo(Finding.of("dilution.heat", Outcome.PASS, "/wantedStrength", 46, 50)
                        .about("sulfuric acid"));
    }

    @Test
    void thirtyPercentSulfuricAcidIsMadeInStages() {
        AcidDilutionPlan plan = plan("sulfuric", 96, 30);
        assertThat(plan.stages()).hasSize(4);
        assertThat(plan.nearBoilingInOneGo()).isFalse();
        assertThat(plan.stages().get(0).startCelsius()).isEqualTo(20);
        assertThat(plan.stages().get(0).surelyBelowCelsius()).isCloseTo(50, within(1e-6));
        assertThat(plan.stages().get(1).startCelsius()).isEqualTo(25);
        assertThat(plan.stages().get(1).surelyBelowCelsius()).isCloseTo(50, within(1e-6));
        assertThat(plan.stages().get(3).surelyBelowCelsius()).isLessThan(50);
        assertThat(finding(plan, "dilution.heat").outcome()).isEqualTo(Outcome.CAUTION);
        assertThat(finding(plan, "dilution.heat").observed()).hasValue(85);
    }

    @Test
    void fortyPercentSulfuricAcidIsNeverMadeInOneGo() {
        AcidDilutionPlan plan = plan("sulfuric", 96, 40);
        assertThat(plan.nearBoilingInOneGo()).isTrue();
        assertThat(plan.staged()).isTrue();
        assertThat(finding(plan, "dilution.heat").outcome()).isEqualTo(Outcome.STOP);
        assertThat(finding(plan, "dilution.heat").observed()).hasValue(106);
        assertThat(finding(plan, "dilution.heat").expected()).hasValue(50);
    }

    @Test
    void muchAcidInLittleWaterIsHottestOnTheWay() {
        AcidDilutionStage stage = plan("sulfuric", 96, 85).inOneGo().orElseThrow();
        assertThat(stage.endCelsius()).isCloseTo(103.5, within(0.05));
        assertThat(stage.hottestCelsius()).isCloseTo(141.4, within(0.2));
        assertThat(stage.halfWidthKelvin()).isEqualTo(10);
        assertThat(stage.surelyBelowCelsius()).isEqualTo(stage.hottestCelsius() + 10);
    }

    @Test
    void hydrochloricAcidWarmsByAFewKelvin() {
        AcidDilutionPlan plan = plan("hydrochloric", 37, 10);
        assertThat(plan.warmth()).isEqualTo(AcidDilutionWarmth.COMPUTED);
        assertThat(plan.inOneGo().orElseThrow().endCelsius()).isCloseTo(30.1, within(0.1));
        assertThat(plan("hydrochloric", 40, 25).inOneGo().orElseThrow().halfWidthKelvin())
                .isEqualTo(5);
        assertThat(plan.staged()).isFalse();
    }

    @Test
    void otherAcidsGetWordsAndNoFigure() {
        for (String acid : List.of("phosphoric", "lactic", "citric", "acetic")) {
            AcidDilutionPlan plan = plan(acid, 40, 10);
            assertThat(plan.inOneGo()).isEmpty();
            assertThat(plan.stages()).isEmpty();
            assertThat(plan.staged()).isFalse();
            assertThat(plan.nearBoilingInOneGo()).isFalse();
        }
        assertThat(finding(plan("phosphoric", 85, 10), "dilution.heat-mild"))
                .isEqualTo(
                        Finding.of("dilution.heat-mild", Outcome.NOTE, "/acid").about("phosphoric acid"));
        assertThat(finding(plan("lactic", 88, 10), "dilution.heat-near-none").outcome())
                .isEqualTo(Outcome.NOTE);
        assertThat(AcidDilutionWarmth.of(Acids.get("malic"))).isEqualTo(AcidDilutionWarmth.NEAR_NONE);
    }

    /** The heats of water and acid, weighed, and the heat of mixing at 20 degC, over the heat capacity of the mixture. */
    @Test
    void waterAndAcidBringTheirOwnWarmth() {
        AcidDilutionHeats heats = AcidDilutionHeats.of(Acids.get("sulfuric")).orElseThrow();
        AcidDilutionMixture cold = AcidDilutionMixture.water(heats, 760, 5);
        double apart = cold.with(Doses.acid("sulfuric", 100), 190, 30).celsius()
                - AcidDilutionMixture.water(heats, 760, 20)
                        .with(Doses.acid("sulfuric", 100), 190, 20)
                        .celsius();
        assertThat(apart).isCloseTo((-15 * 760 * 4.18 + 10 * 190 * 1.40) / (950 * 3.53), within(1e-9));
        assertThat(cold.cooledTo(25)).isEqualTo(cold);
        assertThat(cold.cooledTo(4).celsius()).isEqualTo(4);
    }

    @Test
    void stagesStartFromWaterThatHasCooled() {
        AcidDilution dilution = kilogram("sulfuric", 96, 20);
        AcidDilutionPlan warm = AcidDilutionPlan.of(dilution, at(60, 20, 50));
        assertThat(warm.stages().get(0).startCelsius()).isEqualTo(25);
        assertThat(warm.inOneGo().orElseThrow().startCelsius()).isEqualTo(60);
        assertThat(AcidDilutionPlan.of(dilution, at(4, 20, 50)).stages().get(0).startCelsius())
                .isEqualTo(4);
        assertThat(AcidDilutionPlan.of(dilution, at(4, 20, 60)).staged()).isFalse();
        AcidDilutionPlan onceCooled = AcidDilutionPlan.of(kilogram("sulfuric", 96, 8), at(60, 20, 50));
        assertThat(onceCooled.staged()).isTrue();
        assertThat(onceCooled.stages()).hasSize(1);
        assertThat(onceCooled.stages().get(0).startCelsius()).isEqualTo(25);
    }

    @Test
    void theHottestCaseStillEndsInAFewDozenStages() {
        assertThat(AcidDilutionPlan.of(kilogram("sulfuric", 100, 98), at(100, 35, 40))
                        .stages())
                .hasSizeBetween(10, 60);
    }

    @Test
    void heatsEndWhereTheTableEnds() {
        AcidDilutionHeats heats =
                AcidDilutionHeats.of(Acids.get("hydrochloric")).orElseThrow();
        assertThat(heats.capacityJPerGK(0)).isEqualTo(4.18);
        assertThat(heats.capacityJPerGK(40)).isEqualTo(2.40);
        assertThat(heats.capacityJPerGK(7.5)).isCloseTo(3.66, within(1e-12));
        assertThat(heats.heatKjPerGram(0)).isZero();
        assertThat(heats.heatKjPerGram(40)).isCloseTo(0.4 / 36.458 * 18.34, within(1e-4));
        for (double wrong : new double[] {-0.1, 40.1, Double.NaN}) {
            assertThatThrownBy(() -> heats.capacityJPerGK(wrong)).hasMessageContaining("beyond the table of heats");
        }
        assertThat(AcidDilutionHeats.of(Acids.get("lactic"))).isEmpty();
        assertThatThrownBy(() -> AcidDilutionLimits.of("nothing")).hasMessageContaining("nothing");
        assertThat(AcidDilutionLimits.usualLabelShare()).isEqualTo(0.01);
        assertThat(AcidDilutionLimits.usualWarmLimitCelsius()).isEqualTo(50);
        assertThat(AcidDilutionLimits.coldWaterCelsius()).isEqualTo(25);
        assertThat(AcidDilutionLimits.cooledToCelsius()).isEqualTo(25);
    }

    @Test
    void aHalfWidthIsHalfOfASmallRiseAndNeverNegative() {
        assertThat(AcidDilutionStage.halfWidth(4, 10)).isEqualTo(2);
        assertThat(AcidDilutionStage.halfWidth(40, 10)).isEqualTo(10);
        assertThat(AcidDilutionStage.halfWidth(-3, 10)).isZero();
    }

    @Test
    void theStrengthInHandIsAsGoodAsItsLabel() {
        AcidProduct byMass = Doses.acid("phosphoric", 85);
        AcidDilutionStrength known = AcidDilutionStrength.ofLabel(byMass, 0.01);
        assertThat(known.percentUncertainty()).isCloseTo(0.85, within(1e-12));
        // 1 % times 1 + d ln(density)/d ln(strength) = 1.564, and 0.18 % of the density
        assertThat(known.molPerLUncertainty() / byMass.molPerL())
                .isCloseTo(Math.hypot(0.015637, 0.003 / 1.689), within(2e-5));
        AcidProduct byVolume =
                AcidProduct.of(Acids.get("phosphoric"), new Strength(byMass.molPerL(), StrengthUnit.MOL_PER_L));
        AcidDilutionStrength molar = AcidDilutionStrength.ofLabel(byVolume, 0.01);
        assertThat(molar.molPerLUncertainty() / byVolume.molPerL()).isCloseTo(0.01, within(1e-9));
        assertThat(molar.percentUncertainty() / 85).isCloseTo(Math.hypot(0.01, 0.003 / 1.689) / 1.5637, within(2e-5));
        AcidDilutionStrength powder = AcidDilutionStrength.ofLabel(Doses.acid("citric", 100), 0.01);
        assertThat(powder.percentUncertainty()).isEqualTo(1);
    }

    @Test
    void whatIsMadeIsKnownFromLabelAndMeasuring() {
        AcidDilution dilution = kilogram("hydrochloric", 30, 10);
        AcidDilutionStrength weighed = AcidDilutionStrength.whenWeighed(dilution, 0.01);
        // label 1 %, and two weighings of 0.5 %, of which the share of water, 2/3, counts
        assertThat(weighed.percentUncertainty() / 10)
                .isCloseTo(Math.hypot(0.01, Math.hypot(0.005, 0.005) * 2 / 3), within(1e-9));
        assertThat(weighed.molPerLUncertainty() / dilution.weak().molPerL())
                .isCloseTo(
                        Math.hypot(
                                0.0005 / 1.0476,
                                weighed.percentUncertainty() / 10 * (1 + (1.0476 - 1.0426) * 10 / 1.0476)),
                        within(1e-4));
        AcidDilutionStrength measured = AcidDilutionStrength.whenMeasured(dilution, 0.01);
        double density = 0.0005 / dilution.strong().densityGPerMl();
        assertThat(measured.percentUncertainty() / 10)
                .isCloseTo(Math.hypot(0.01, Math.hypot(Math.hypot(0.01, density), 0.01) * 2 / 3), within(1e-9));
    }

    @Test
    void everyCheckThatRanIsReported() {
        assertThat(findings(plan("lactic", 88, 10)))
                .extracting(Finding::code)
                .containsExactly(
                        "dilution.weaker",
                        "dilution.label",
                        "dilution.heat-near-none",
                        "dilution.cold-water",
                        "dilution.lactic-oligomers",
                        "dilution.density",
                        "dilution.small-amount",
                        "dilution.hazard-made",
                        "dilution.dosable",
                        "dilution.supply-great-britain",
                        "dilution.supply-great-britain",
                        "dilution.supply-european-union",
                        "dilution.supply-european-union");
        assertThat(findings(plan("citric", 100, 10)))
                .extracting(Finding::code)
                .contains("dilution.powder-dissolves")
                .doesNotContain("dilution.cold-water", "dilution.lactic-oligomers");
        assertThat(findings(plan("lactic", 30, 10)))
                .extracting(Finding::code)
                .doesNotContain("dilution.powder-dissolves", "dilution.lactic-oligomers");
    }

    @Test
    void theChecksCarryTheirNumbers() {
        AcidDilutionPlan plan = plan("lactic", 88, 10);
        assertThat(finding(plan, "dilution.weaker"))
                .isEqualTo(Finding.of("dilution.weaker", Outcome.PASS, "/wantedStrength", 10, 88));
        assertThat(finding(plan, "dilution.label"))
                .isEqualTo(Finding.of("dilution.label", Outcome.NOTE, "/strength", 1, 1));
        assertThat(AcidDilutionChecks.of(plan, true, Optional.empty()))
                .contains(Finding.of("dilution.label", Outcome.PASS, "/labelUncertaintyPercent", 1, 1));
        assertThat(finding(plan, "dilution.lactic-oligomers").observed().orElseThrow())
                .isCloseTo(83.4, within(0.05));
        assertThat(finding(plan, "dilution.density"))
                .isEqualTo(Finding.of("dilution.density", Outcome.NOTE, "/strength", 0.006, 0.002));
        assertThat(finding(plan("hydrochloric", 31, 10), "dilution.density"))
                .isEqualTo(Finding.of("dilution.density", Outcome.PASS, "/strength", 0.0005, 0.002));
        assertThat(finding(plan("citric", 100, 10), "dilution.density").outcome())
                .isEqualTo(Outcome.PASS);
        assertThat(finding(plan("citric", 50, 35), "dilution.density").outcome())
                .isEqualTo(Outcome.NOTE);
    }

    @ParameterizedTest
    @CsvSource({"25,PASS", "25.1,CAUTION", "4,PASS"})
    void acidIsPouredIntoColdWater(double celsius, Outcome outcome) {
        AcidDilutionPlan plan = AcidDilutionPlan.of(kilogram("phosphoric", 85, 10), at(celsius, 20, 50));
        assertThat(finding(plan, "dilution.cold-water"))
                .isEqualTo(Finding.of("dilution.cold-water", outcome, "/waterTemperature", celsius, 25));
    }

    @ParameterizedTest
    @CsvSource({"5,PASS", "4.99,CAUTION"})
    void aFewGramsAreTooLittleForKitchenScales(double grams, Outcome outcome) {
        AcidDilution dilution =
                AcidDilution.using(Doses.acid("phosphoric", 85), Doses.acid("phosphoric", 10), new Mass(grams / 1000));
        assertThat(finding(AcidDilutionPlan.of(dilution, ROOM), "dilution.small-amount"))
                .isEqualTo(Finding.of("dilution.small-amount", outcome, "", grams, 5));
    }

    @ParameterizedTest
    @CsvSource({
        "phosphoric,9.9,PASS",
        "phosphoric,10,NOTE",
        "phosphoric,25,CAUTION",
        "hydrochloric,9.9,PASS",
        "hydrochloric,10,NOTE",
        "hydrochloric,25,CAUTION",
        "sulfuric,4.9,PASS",
        "sulfuric,5,NOTE",
        "sulfuric,15,CAUTION",
        "lactic,0.9,PASS",
        "lactic,1,NOTE",
        "lactic,3,CAUTION"
    })
    void whatIsMadeIsHeldAgainstItsHazards(String acid, double percent, Outcome outcome) {
        Finding finding = finding(plan(acid, 35, percent), "dilution.hazard-made");
        assertThat(finding.outcome()).isEqualTo(outcome);
        assertThat(finding.subject()).isEqualTo(acid + " acid");
        assertThat(finding.observed()).hasValue(percent);
        assertThat(finding.expected()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({
        "sulfuric,14.9,PASS",
        "sulfuric,15,CAUTION",
        "hydrochloric,24.9,PASS",
        "hydrochloric,25,CAUTION",
        "phosphoric,30,PASS"
    })
    void strongMineralAcidIsNotForDosing(String acid, double percent, Outcome outcome) {
        Finding finding = finding(plan(acid, 40, percent), "dilution.dosable");
        assertThat(finding.outcome()).isEqualTo(outcome);
        assertThat(finding.observed()).hasValue(percent);
        assertThat(finding.expected().isPresent()).isEqualTo(!acid.equals("phosphoric"));
    }

    @ParameterizedTest
    @CsvSource({
        "GREAT_BRITAIN,hydrochloric,10,PASS,10",
        "GREAT_BRITAIN,hydrochloric,10.1,CAUTION,10",
        "GREAT_BRITAIN,phosphoric,30,PASS,30",
        "GREAT_BRITAIN,phosphoric,30.1,CAUTION,30",
        "GREAT_BRITAIN,sulfuric,15,PASS,15",
        "GREAT_BRITAIN,sulfuric,15.1,CAUTION,15",
        "EUROPEAN_UNION,sulfuric,15,PASS,15",
        "EUROPEAN_UNION,sulfuric,15.1,CAUTION,15",
        "EUROPEAN_UNION,hydrochloric,35,PASS,",
        "GREAT_BRITAIN,lactic,35,PASS,"
    })
    void supplyLimitsAreLookedUpBeforeAndAfter(
            Jurisdiction where, String acid, double percent, Outcome outcome, Double limit) {
        List<Finding> findings = AcidDilutionChecks.of(plan(acid, 36, percent), false, Optional.of(where)).stream()
                .filter(finding -> finding.code().startsWith("dilution.supply-"))
                .toList();
        assertThat(findings).hasSize(2);
        assertThat(findings.get(0).pointer()).isEqualTo("/strength");
        assertThat(findings.get(0).subject()).isEqualTo("the " + acid + " acid in hand");
        assertThat(findings.get(0).outcome()).isEqualTo(limit == null ? Outcome.PASS : Outcome.CAUTION);
        Finding made = findings.get(1);
        assertThat(made.code())
                .isEqualTo(
                        where == Jurisdiction.GREAT_BRITAIN
                                ? "dilution.supply-great-britain"
                                : "dilution.supply-european-union");
        assertThat(made.pointer()).isEqualTo("/wantedStrength");
        assertThat(made.subject()).isEqualTo("the " + acid + " acid as you make it");
        assertThat(made.outcome()).isEqualTo(outcome);
        assertThat(made.observed()).hasValue(percent);
        if (limit == null) {
            assertThat(made.expected()).isEmpty();
        } else {
            assertThat(made.expected()).hasValue(limit);
        }
    }
}

package tunside.water;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tunside.chemistry.AcidProduct;
import tunside.chemistry.Acids;
import tunside.chemistry.CarbonateState;
import tunside.chemistry.Ion;
import tunside.chemistry.Salts;
import tunside.chemistry.Solution;
import tunside.finding.Finding;
import tunside.finding.Outcome;
import tunside.quantity.Mass;
import tunside.quantity.Strength;
import tunside.quantity.Temperature;
import tunside.quantity.Volume;

class WaterBoundariesTest {
    private static final Volume LITRE = new Volume(1);

    @ParameterizedTest(name = "{0} against {1} mEq/L")
    @CsvSource({
        "3.19, 3, water.ion-balance-soft, PASS, 0.2",
        "2.79, 3, water.ion-balance-soft, CAUTION, 0.2",
        "3.21, 3, water.ion-balance-soft, CAUTION, 0.2",
        "5.19, 5, water.ion-balance, PASS, 2",
        "5.22, 5, water.ion-balance, NOTE, 2",
        "5.52, 5, water.ion-balance, NOTE, 2",
        "5.53, 5, water.ion-balance, CAUTION, 5",
        "4.52, 5, water.ion-balance, CAUTION, 5",
        "13.2, 12, water.ion-balance, PASS, 5",
        "13.3, 12, water.ion-balance, CAUTION, 5"
    })
    void ionBalanceKeepsTheStandardsLimits(
            double cations, double anions, String code, Outcome outcome, double expected) {
        Finding finding = new IonBalance(cations, anions).finding();
        assertThat(finding.code()).isEqualTo(code);
        assertThat(finding.outcome()).isEqualTo(outcome);
        assertThat(finding.expected().getAsDouble()).isEqualTo(expected);
    }

    @ParameterizedTest(name = "conductivity {0} on 1.2 mEq/L: {1}")
    @CsvSource({"95.9, CAUTION", "96.1, PASS", "149.9, PASS", "150.1, CAUTION"})
    void softWaterHasWiderLimitsOfConductivity(double conductivity, Outcome outcome) {
        WaterReport report = Waters.with(Waters.report(0.3, 0.1, 0.4, 0.2, 0.1, 0.8), null, conductivity, null);
        assertThat(Waters.finding(WaterChecks.of(report), "water.conductivity").outcome())
                .isEqualTo(outcome);
    }

    @ParameterizedTest(name = "conductivity {0} on 5 mEq/L: {1}")
    @CsvSource({"449, CAUTION", "451, PASS", "549, PASS", "551, CAUTION"})
    void otherWaterHasTheStandardsLimitsOfConductivity(double conductivity, Outcome outcome) {
        WaterReport report = Waters.with(Waters.report(1.5, 0.5, 1, 1, 0.5, 3), null, conductivity, null);
        assertThat(Waters.finding(WaterChecks.of(report), "water.conductivity").outcome())
                .isEqualTo(outcome);
    }

    @Test
    void aConductivityOfNextToNothingIsACautionWithARatioThatCanBeWritten() {
        WaterReport report = Waters.with(Waters.report(1.5, 0.5, 1, 1, 0.5, 3), null, 1e-300, 398.0);
        Finding finding = Waters.finding(WaterChecks.of(report), "water.solids-against-conductivity");
        assertThat(finding.outcome()).isEqualTo(Outcome.CAUTION);
        assertThat(finding.observed().getAsDouble()).isEqualTo(1e6);
    }

    @ParameterizedTest(name = "hardness {0} against 4 mEq/L: {1}")
    @CsvSource({"4.21, PASS", "4.22, CAUTION", "3.81, PASS", "3.80, CAUTION"})
    void hardnessIsHeldAgainstCalciumAndMagnesium(double hardness, Outcome outcome) {
        WaterReport report = Waters.with(Waters.report(1.5, 0.5, 1, 1, 0.5, 3), hardness, null, null);
        assertThat(Waters.finding(WaterChecks.of(report), "water.hardness").outcome())
                .isEqualTo(outcome);
    }

    @Test
    void dissolvedSolidsAreSixTenthsOfTheAlkalinityAndTheIons() {
        double solids = DissolvedSolids.mgPerL(Map.of(Ion.CALCIUM, 1.0), 2);
        assertThat(solids).isCloseTo(40.078 + 0.6 * 100.086, within(1e-9));
        assertThat(DissolvedSolids.mgPerL(Map.of(Ion.CALCIUM, 1.0), -2)).isEqualTo(40.078);
        WaterReport base = Waters.report(1.5, 0.5, 1, 1, 0.5, 3);
        double sum = DissolvedSolids.mgPerL(base.mmolPerL(), 3);
        double[] ratios = {0.99, 1.01, 1.19, 1.21};
        Outcome[] outcomes = {Outcome.CAUTION, Outcome.PASS, Outcome.PASS, Outcome.CAUTION};
        for (int i = 0; i < ratios.length; i++) {
            WaterReport report = Waters.with(base, null, null, ratios[i] * sum);
            assertThat(Waters.finding(WaterChecks.of(report), "water.dissolved-solids")
                            .outcome())
                    .isEqualTo(outcomes[i]);
        }
    }

    @Test
    void lawIsANoteOnlyBeyondItsValue() {
        WaterReport within = Waters.report(1, 0.5, 1, 1, 249 / 96.056, 1);
        assertThat(Waters.finding(WaterChecks.of(within), "water.legal-limit").outcome())
                .isEqualTo(Outcome.PASS);
        WaterReport beyond = Waters.report(1, 0.5, 1, 1, 251 / 96.056, 1);
        Finding finding = Waters.finding(WaterChecks.of(beyond), "water.legal-limit");
        assertThat(finding.outcome()).isEqualTo(Outcome.NOTE);
        assertThat(finding.subject()).isEqualTo("SO4 (European Union)");
        assertThat(Waters.finding(WaterChecks.of(within.withPh(6.4)), "water.legal-limit")
                        .expected()
                        .getAsDouble())
                .isEqualTo(6.5);
    }

    @Test
    void usualBoilLeavesOneMilliequivalentAndNoMoreThanThereWas() {
        TreatmentStep step = Boiling.usual().applied(Waters.model(110, 5.4, 40), LITRE);
        assertThat(step.water().alkalinityMeqPerL()).isCloseTo(1, within(1e-9));
        assertThat(Waters.finding(step.findings(), "water.boiling").outcome()).isEqualTo(Outcome.PASS);
        TreatmentStep soft = Boiling.usual().applied(Waters.model(30, 0.9, 40), LITRE);
        assertThat(soft.water().alkalinityMeqPerL()).isCloseTo(0.9, within(1e-9));
        assertThat(soft.calciumCarbonateMolPerKg()).isZero();
        assertThat(Waters.finding(soft.findings(), "water.boiling").outcome()).isEqualTo(Outcome.CAUTION);
        TreatmentStep sodic = Boiling.usual().applied(Waters.model(20, 5, 40), LITRE);
        assertThat(Waters.finding(sodic.findings(), "water.boiling-calcium").outcome())
                .isEqualTo(Outcome.CAUTION);
        TreatmentStep distilled = Boiling.usual().applied(Water.distilled(), LITRE);
        assertThat(distilled.water().ph()).isCloseTo(Water.distilled().ph(), within(1e-9));
    }

    @Test
    void limingSaysWhenItIsTooMuchOrUseless() {
        Water moderate = Waters.moderate();
        TreatmentStep usual = Liming.usual().applied(moderate, LITRE);
        assertThat(usual.water().alkalinityMeqPerL()).isCloseTo(0.7, within(1e-9));
        assertThat(Waters.finding(usual.findings(), "water.liming").outcome()).isEqualTo(Outcome.PASS);
        TreatmentStep much = new Liming(Optional.of(new Mass(0.0004)), OptionalDouble.of(0.3), OptionalDouble.empty())
                .applied(moderate, LITRE);
        assertThat(Waters.finding(much.findings(), "water.liming").outcome()).isEqualTo(Outcome.CAUTION);
        assertThat(Waters.finding(much.findings(), "water.liming-ph").outcome()).isEqualTo(Outcome.STOP);
        TreatmentStep sodic = new Liming(Optional.empty(), OptionalDouble.of(0.3), OptionalDouble.empty())
                .applied(Waters.model(20, 5, 40), LITRE);
        assertThat(Waters.finding(sodic.findings(), "water.liming-calcium").outcome())
                .isEqualTo(Outcome.CAUTION);
        assertThat(sodic.water().alkalinityMeqPerL()).isGreaterThan(3.9);
    }

    @Test
    void chalkDissolvesOnlyAsFarAsTheWaterTakesIt() {
        TreatmentStep step =
                new SaltTreatment(Salts.get("calcium-carbonate"), new Mass(0.0002)).applied(Water.distilled(), LITRE);
        assertThat(Waters.finding(step.findings(), "water.chalk").outcome()).isEqualTo(Outcome.CAUTION);
        assertThat(step.water().solution().ion(Ion.CALCIUM)).isCloseTo(0.00012, within(0.000006));
        assertThat(step.calciumCarbonateMolPerKg() + step.water().solution().ion(Ion.CALCIUM))
                .isCloseTo(0.2 / 100.086, within(1e-12));
        Solution fizzy = Solution.ofCarbon(0.01);
        TreatmentStep all = new SaltTreatment(Salts.get("calcium-carbonate"), new Mass(0.0002))
                .applied(Water.closed(fizzy, Waters.ROOM, 5, List.of()), LITRE);
        assertThat(Waters.finding(all.findings(), "water.chalk").outcome()).isEqualTo(Outcome.PASS);
        assertThat(all.calciumCarbonateMolPerKg()).isZero();
    }

    @Test
    void gypsumBeyondItsSolubilityIsACaution() {
        double atLimit = Saturation.gypsumMolPerKg(Waters.ROOM) * 172.164 / 1000;
        assertThat(gypsum(0.99 * atLimit)).isEqualTo(Outcome.PASS);
        assertThat(gypsum(1.01 * atLimit)).isEqualTo(Outcome.CAUTION);
        assertThat(Saturation.gypsumMolPerKg(new Temperature(10)) * 172.164).isCloseTo(2.53, within(1e-9));
        assertThat(Saturation.gypsumMolPerKg(new Temperature(60)) * 172.164).isCloseTo(2.495, within(1e-9));
        assertThat(Saturation.gypsumMolPerKg(new Temperature(100)) * 172.164).isCloseTo(2.04, within(1e-9));
    }

    private static Outcome gypsum(double kilograms) {
        TreatmentStep step =
                new SaltTreatment(Salts.get("gypsum"), new Mass(kilograms)).applied(Water.distilled(), LITRE);
        return Waters.finding(step.findings(), "water.gypsum").outcome();
    }

    @Test
    void calciumChlorideTellsBothHydrates() {
        TreatmentStep step = new SaltTreatment(Salts.get("calcium-chloride-dihydrate"), new Mass(0.001))
                .applied(Water.distilled(), LITRE);
        Finding finding = Waters.finding(step.findings(), "water.calcium-chloride-hydrate");
        assertThat(finding.observed().getAsDouble()).isCloseTo(272.6, within(0.05));
        assertThat(finding.expected().getAsDouble()).isCloseTo(361.1, within(0.05));
        assertThat(new SaltTreatment(Salts.get("gypsum"), new Mass(1)).mistakenFor())
                .isEmpty();
    }

    @Test
    void strongAcidIsStoppedAndOligomersCountHalf() {
        AcidProduct strong = AcidProduct.of(Acids.get("lactic"), Strength.percent(80));
        TreatmentStep step = new AcidTreatment(strong, new Mass(0.001)).applied(Water.distilled(), LITRE);
        assertThat(step.findings()).isEmpty(); // lactic acid has no strength from which it must be diluted
        double acid = step.water().solution().acids().values().iterator().next();
        assertThat(1000 * acid).isCloseTo(8.881 * (1 + strong.directShare()) / 2, within(0.002));
        AcidProduct neat = AcidProduct.of(Acids.get("hydrochloric"), Strength.percent(36));
        assertThat(Waters.finding(
                                new AcidTreatment(neat, new Mass(0.001))
                                        .applied(Water.distilled(), LITRE)
                                        .findings(),
                                "water.acid-strength")
                        .outcome())
                .isEqualTo(Outcome.STOP);
    }

    @Test
    void amountsBeyondAllSenseAreRefused() {
        assertThatThrownBy(() -> new SaltTreatment(Salts.get("sodium-chloride"), new Mass(0.015))
                        .applied(Water.distilled(), LITRE))
                .hasMessageContaining("at most 250.0 mmol per litre");
        AcidProduct acid = AcidProduct.of(Acids.get("hydrochloric"), Strength.percent(10));
        assertThatThrownBy(() -> new AcidTreatment(acid, new Mass(0.1)).applied(Water.distilled(), LITRE))
                .hasMessageContaining("at most 250.0 mmol per litre");
        assertThatThrownBy(
                        () -> new Liming(Optional.of(new Mass(0.008)), OptionalDouble.empty(), OptionalDouble.empty())
                                .applied(Waters.moderate(), LITRE))
                .hasMessageContaining("at most 100.0 mmol per litre");
        assertThatThrownBy(() -> Boiling.of(OptionalDouble.of(2.01), OptionalDouble.empty(), false))
                .hasMessageContaining("supersaturation");
        assertThatThrownBy(() -> Boiling.of(OptionalDouble.empty(), OptionalDouble.of(10.01), false))
                .hasMessageContaining("residual alkalinity");
        assertThatThrownBy(() -> WaterSource.distilled(new Volume(0))).hasMessageContaining("above 0");
    }

    @Test
    void aTitrationThatCannotBeIsRefused() {
        assertThatThrownBy(() -> Water.of(Waters.titrated(2, 4.4)))
                .hasMessageContaining("must lie above the end point");
        assertThat(Water.of(Waters.titrated(0, 4.4)).ph()).isCloseTo(4.4, within(1e-6));
    }

    @Test
    void reverseOsmosisKeepsTheCarbonDioxide() {
        Water feed = Waters.moderate();
        double free = CarbonateState.closed(feed.solution(), Waters.ROOM).carbonDioxideMolPerKg();
        Water left = feed.afterReverseOsmosis(0.03);
        assertThat(left.alkalinityMeqPerL()).isCloseTo(0.03 * 2.3, within(1e-9));
        assertThat(left.solution().carbon())
                .isCloseTo(free + 0.03 * (feed.solution().carbon() - free), within(1e-12));
        assertThat(left.ph()).isLessThan(feed.ph());
        assertThatThrownBy(() -> feed.afterReverseOsmosis(1.01)).hasMessageContaining("from 0 to 1");
        assertThatThrownBy(() -> feed.afterReverseOsmosis(-0.01)).hasMessageContaining("from 0 to 1");
        assertThat(feed.afterReverseOsmosis(1).ph()).isCloseTo(feed.ph(), within(1e-9));
        assertThat(feed.afterReverseOsmosis(0).alkalinityMeqPerL()).isZero();
    }

    @Test
    void profileSplitsTheHardness() {
        WaterProfile profile = WaterProfile.of(Waters.moderate(), Waters.ROOM);
        double hardness = 100 / 40.078 + 16 / 24.305;
        assertThat(profile.hardnessMeqPerL()).isCloseTo(hardness, within(1e-9));
        assertThat(profile.carbonateHardnessMeqPerL()).isCloseTo(2.3, within(1e-9));
        assertThat(profile.nonCarbonateHardnessMeqPerL()).isCloseTo(hardness - 2.3, within(1e-9));
        assertThat(profile.residualAlkalinityMeqPerL())
                .isCloseTo(2.3 - 100 / 40.078 / 3.5 - 16 / 24.305 / 7, within(1e-9));
        assertThat(profile.balance().percent()).isCloseTo(0, within(1e-9));
        assertThat(profile.alkalinityMgPerLAsCaCO3()).isCloseTo(2.3 * 50.043, within(1e-6));
        WaterProfile distilled = WaterProfile.of(Water.distilled(), Waters.ROOM);
        assertThat(distilled.calciteIndex()).isEqualTo(Double.NEGATIVE_INFINITY);
        assertThat(distilled.langelierIndex()).isEqualTo(Double.NEGATIVE_INFINITY);
        assertThat(distilled.gypsumIndex()).isEqualTo(Double.NEGATIVE_INFINITY);
    }

    /** Acid leaves of the alkalinity what bicarbonate is left, not the lactate. */
    @Test
    void alkalinityAfterAWeakAcidIsThatOfTheCarbonate() {
        AcidProduct lactic = AcidProduct.of(Acids.get("lactic"), Strength.percent(20));
        double moles = 0.001;
        Water acid = new AcidTreatment(lactic, new Mass(moles / lactic.actingMolPerKg()))
                .applied(Waters.moderate(), LITRE)
                .water();
        WaterProfile profile = WaterProfile.of(acid, Waters.ROOM);
        assertThat(profile.alkalinityMeqPerL()).isCloseTo(2.3 - 1.0 + 0.005, within(0.01));
        assertThat(profile.balance().percent()).isCloseTo(0, within(1e-9));
    }

    @Test
    void uncertaintyOfThePhIsThatOfTheSampleWhereNothingIsDone() {
        PreparedLiquor liquor = PreparedLiquor.of(
                List.of(WaterSource.of(new Volume(10), Waters.report(1, 0.5, 1, 1, 0.5, 2))), List.of());
        WaterProfile profile = WaterProfile.of(liquor.treated(), Waters.ROOM);
        List<WaterProfile> varied = liquor.varied().stream()
                .map(other -> WaterProfile.of(other.treated(), Waters.ROOM))
                .toList();
        assertThat(varied).hasSize(4);
        assertThat(profile.standardUncertainty(varied, WaterProfile::closedPh)).isCloseTo(0.1, within(0.002));
        assertThat(profile.standardUncertainty(varied, WaterProfile::alkalinityMeqPerL))
                .isCloseTo(Math.hypot(0.1, 0.05), within(0.002));
        assertThat(profile.standardUncertainty(List.of(profile), WaterProfile::closedPh))
                .isZero();
    }
}

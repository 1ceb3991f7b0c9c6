package tunside.water;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import tunside.chemistry.AcidProduct;
import tunside.chemistry.AcidSystem;
import tunside.chemistry.Acids;
import tunside.chemistry.Ion;
import tunside.chemistry.Solution;
import tunside.quantity.Mass;
import tunside.quantity.Strength;
import tunside.quantity.Temperature;
import tunside.quantity.Volume;

/** The moderate water: Ca 50, Mg 8, Cl 25, SO4 40 mg/kg, alkalinity 2.3 mEq/kg, pH 7.6 at 20 degC. */
class WaterProfileTest {
    private static final WaterProfile MODERATE = WaterProfile.of(Waters.moderate(), Waters.ROOM);

    @Test
    void everyIonStandsInMilligramsAndMilliequivalents() {
        Map<String, WaterProfile.Amount> ions = MODERATE.ions();
        assertThat(ions.keySet()).containsExactly("Ca", "Mg", "Na", "K", "Cl", "SO4", "NO3", "HCO3", "CO3");
        assertThat(ions.get("Ca").mgPerL()).isCloseTo(50, within(1e-9));
        assertThat(ions.get("Ca").meqPerL()).isCloseTo(100 / 40.078, within(1e-9));
        assertThat(ions.get("SO4").mgPerL()).isCloseTo(40, within(1e-9));
        assertThat(ions.get("SO4").meqPerL()).isCloseTo(80 / 96.056, within(1e-9));
        WaterProfile.Amount bicarbonate = ions.get("HCO3");
        WaterProfile.Amount carbonate = ions.get("CO3");
        assertThat(bicarbonate.mgPerL()).isCloseTo(61.016 * bicarbonate.meqPerL(), within(1e-9));
        assertThat(carbonate.mgPerL()).isCloseTo(60.008 / 2 * carbonate.meqPerL(), within(1e-9));
        assertThat(bicarbonate.meqPerL() + carbonate.meqPerL()).isCloseTo(2.3, within(0.001));
        assertThat(carbonate.meqPerL()).isBetween(0.005, 0.03);
    }

    /** By hand: pK1 6.381, gamma 0.92 at an ionic strength of 0.0065. */
    @Test
    void freeCarbonDioxideIsWhatThePhLeaves() {
        assertThat(MODERATE.carbonDioxideMmolPerL())
                .isCloseTo(2.29 * 0.92 / Math.pow(10, 7.6 - 6.381), Percentage.withPercentage(2));
        Map<String, WaterProfile.Amount> ions = MODERATE.ions();
        assertThat(MODERATE.carbonMmolPerL())
                .isCloseTo(
                        MODERATE.carbonDioxideMmolPerL()
                                + ions.get("HCO3").meqPerL()
                                + ions.get("CO3").meqPerL() / 2,
                        within(1e-6));
        assertThat(MODERATE.closedPh()).isCloseTo(7.6, within(1e-6));
    }

    /** log(2.3e-3 gamma) + 3.38 + pK1 + pKH with 6.381 and 1.405 at 20 degC. */
    @Test
    void besideTheAirThePhRisesToThatOfItsCarbonDioxide() {
        assertThat(MODERATE.openPh()).isCloseTo(Math.log10(2.3e-3 * 0.92) + 3.38 + 6.381 + 1.405, within(0.03));
    }

    @Test
    void langeliersIndexIsThatOfTheTotals() {
        double calcium = 50 * 100.086 / 40.078;
        double alkalinity = 2.3 * 50.043;
        // sodium balances what the listed ions leave over
        double sodium = 22.990 * (2.3 + 25 / 35.453 + 80 / 96.056 - 100 / 40.078 - 16 / 24.305);
        double solids = 50 + 8 + sodium + 25 + 40 + 0.6 * alkalinity;
        assertThat(MODERATE.dissolvedSolidsMgPerL()).isCloseTo(solids, within(0.01));
        double a = (Math.log10(solids) - 1) / 10;
        double b = 34.55 - 13.12 * Math.log10(293);
        double saturated = 9.3 + a + b - (Math.log10(calcium) - 0.4) - Math.log10(alkalinity);
        assertThat(MODERATE.langelierIndex()).isCloseTo(7.6 - saturated, within(1e-4));
    }

    /** A boil cannot precipitate a soft water's alkalinity as hardness: the smaller of both is carbonate hardness. */
    @Test
    void carbonateHardnessIsTheSmallerOfHardnessAndAlkalinity() {
        WaterProfile sodic = WaterProfile.of(Waters.model(20, 5, 40), Waters.ROOM);
        double hardness = 40 / 40.078 + 16 / 24.305;
        assertThat(sodic.carbonateHardnessMeqPerL()).isCloseTo(hardness, within(1e-9));
        assertThat(sodic.nonCarbonateHardnessMeqPerL()).isZero();
        assertThat(sodic.hardnessMgPerLAsCaCO3()).isCloseTo(50.043 * hardness, within(1e-6));
        assertThat(sodic.residualAlkalinityMeqPerL()).isCloseTo(5 - 40 / 40.078 / 3.5 - 16 / 24.305 / 7, within(1e-9));
    }

    /** Without other ions the acid's anions are balanced by hydrogen ions alone: a negative alkalinity of their size. */
    @Test
    void anAcidInPureWaterLeavesLessThanNoAlkalinity() {
        AcidProduct lactic = AcidProduct.of(Acids.get("lactic"), Strength.percent(10));
        Water acid = new AcidTreatment(lactic, new Mass(0.001 / lactic.actingMolPerKg()))
                .applied(Water.distilled(), new Volume(1))
                .water();
        WaterProfile profile = WaterProfile.of(acid, Waters.ROOM);
        Map<AcidSystem, Double> acids = profile.acidsMmolPerL();
        assertThat(acids.values())
                .singleElement()
                .satisfies(amount -> assertThat(amount).isCloseTo(1, within(1e-9)));
        double lactate = -profile.meanCharge(acids.keySet().iterator().next());
        assertThat(lactate).isBetween(0.2, 0.4);
        assertThat(profile.alkalinityMeqPerL()).isCloseTo(-lactate, Percentage.withPercentage(3));
        assertThat(profile.balance().anionsMeqPerL()).isCloseTo(0, within(1e-9));
        assertThat(profile.langelierIndex()).isEqualTo(Double.NEGATIVE_INFINITY);
    }

    /** 2 mEq of sodium less 0.5 of lactate: carbonate counts twice, and hydroxide with its activity coefficient. */
    @Test
    void theAnionsOfAnAcidDoNotCountInAnAlkalineWaterEither() {
        Solution solution = Solution.of(Ion.SODIUM, 0.002)
                .plus(Acids.get("lactic").perMole().scaled(0.0005))
                .plus(Solution.ofCarbon(0.0003));
        WaterProfile profile = WaterProfile.of(Water.closed(solution, Waters.ROOM, 11, List.of()), Waters.ROOM);
        assertThat(profile.closedPh()).isGreaterThan(10.5);
        assertThat(profile.alkalinityMeqPerL()).isCloseTo(1.5, within(1e-3));
        assertThat(profile.balance().percent()).isCloseTo(0, within(1e-9));
    }

    @Test
    void theConductivityIsTheEstimateBroughtToWhatIsMeasured() {
        double estimate = Conductivities.microsiemensPerCm(
                Map.of(
                        Ion.CALCIUM, 50 / 40.078,
                        Ion.MAGNESIUM, 8 / 24.305,
                        Ion.SODIUM, 2.3 + 25 / 35.453 + 80 / 96.056 - 100 / 40.078 - 16 / 24.305,
                        Ion.CHLORIDE, 25 / 35.453,
                        Ion.SULFATE, 40 / 96.056),
                2.3);
        assertThat(MODERATE.conductivityMicrosiemensPerCm()).isCloseTo(estimate / 0.94, within(0.01));
    }

    @Test
    void aBlendHasTheTemperatureOfItsPartsAndTellsWhichIsWhich() {
        Water cold = Water.of(Waters.report(1, 0.5, 1, 1, 0.5, 2));
        Water warm = new Water(cold.solution(), cold.ph(), new Temperature(40), cold.findings());
        Water blend = Water.blend(List.of(new WaterPart(new Volume(3), cold), new WaterPart(new Volume(1), warm)));
        assertThat(blend.temperature().celsius()).isCloseTo(25, within(1e-9));
        int each = cold.findings().size();
        assertThat(blend.findings().subList(0, each))
                .allSatisfy(finding -> assertThat(finding.pointer()).startsWith("/0/water"));
        assertThat(blend.findings().subList(each, 2 * each))
                .allSatisfy(finding -> assertThat(finding.pointer()).startsWith("/1/water"));
        assertThat(blend.withFindings(List.of()).findings()).isEmpty();
        assertThat(blend.withFindings(List.of()).ph()).isEqualTo(blend.ph());
    }
}

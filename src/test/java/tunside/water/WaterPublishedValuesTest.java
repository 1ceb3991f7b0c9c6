package tunside.water;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import tunside.chemistry.CarbonateState;
import tunside.chemistry.ChargeBalance;
import tunside.chemistry.Ion;
import tunside.chemistry.Salts;
import tunside.chemistry.Solution;
import tunside.quantity.Alkalinity;
import tunside.quantity.Dissolved;
import tunside.quantity.DissolvedUnit;
import tunside.quantity.Mass;
import tunside.quantity.Temperature;
import tunside.quantity.Volume;

class WaterPublishedValuesTest {
    @ParameterizedTest(name = "{1} degC")
    @CsvFileSource(resources = "/published/water/langelier.csv", useHeadersInDisplayName = true)
    void langeliersShortForm(
            double ph,
            double temperatureDegC,
            double solids,
            double calcium,
            double alkalinity,
            double index,
            double tolerance,
            String source) {
        assertThat(Saturation.langelier(ph, new Temperature(temperatureDegC), solids, calcium, alkalinity))
                .isCloseTo(index, within(tolerance));
    }

    @ParameterizedTest(name = "{0}, gas {1}, {2} degC")
    @CsvFileSource(resources = "/published/water/solubility.csv", useHeadersInDisplayName = true)
    void mineralsDissolve(
            String mineral,
            String gas,
            double temperatureDegC,
            double mmolPerKg,
            double tolerancePercent,
            Double ph,
            Double phTolerance,
            String source) {
        Temperature temperature = new Temperature(temperatureDegC);
        CalciteEquilibrium calcite = new CalciteEquilibrium(temperature, 0);
        double pressure = gas.equals("pure") ? 1 : CarbonateState.AIR_PARTIAL_PRESSURE_ATM;
        double dissolved = mineral.equals("gypsum")
                ? Saturation.gypsumMolPerKg(temperature)
                : gas.equals("none")
                        ? calcite.dissolved(Solution.WATER, 0.05)
                        : calcite.dissolvedOpen(Solution.WATER, 0.05, pressure);
        assertThat(1000 * dissolved).isCloseTo(mmolPerKg, Percentage.withPercentage(tolerancePercent));
        if (ph != null) {
            Solution saturated =
                    CarbonateState.open(CalciteEquilibrium.without(Solution.WATER, -dissolved), temperature, pressure);
            assertThat(ChargeBalance.solve(saturated, temperature).ph()).isCloseTo(ph, within(phTolerance));
        }
    }

    @ParameterizedTest(name = "{0}, index {3}, carbon dioxide stays: {4}")
    @CsvFileSource(resources = "/published/water/boiling.csv", useHeadersInDisplayName = true)
    void boilingLeavesThisAlkalinity(
            String name,
            double calcium,
            double alkalinity,
            double supersaturation,
            boolean stays,
            double left,
            double tolerancePercent,
            String source) {
        Water water = Waters.model(calcium, alkalinity, 40);
        Water boiled = Boiling.of(OptionalDouble.of(supersaturation), OptionalDouble.empty(), stays)
                .applied(water, new Volume(1))
                .water();
        assertThat(boiled.alkalinityMeqPerL()).isCloseTo(left, Percentage.withPercentage(tolerancePercent));
    }

    /** Calcium after the boil of the moderate water, 18.7 mg/kg within 10 % (PHREEQC-3). */
    @Test
    void boilingTakesTheCalciumOfTheModerateWater() {
        Water boiled = Boiling.of(OptionalDouble.of(0.7), OptionalDouble.empty(), false)
                .applied(Waters.moderate(), new Volume(1))
                .water();
        assertThat(boiled.solution().ion(Ion.CALCIUM) * 40078).isCloseTo(18.7, Percentage.withPercentage(10));
    }

    /**
     * Where sulfate is ample the reference (0.17, 0.42, 0.63 mEq/kg at index 0, 0.7, 1.0; PHREEQC-3) leaves more, since
     * calcium sulfate pairs hold calcium back: a known limit of a model without them, and why practice's residual stands.
     */
    @Test
    void withoutIonPairsAGypseousWaterIsSoftenedTooFar() {
        double[] reference = {0.17, 0.42, 0.63};
        double[] indices = {0, 0.7, 1.0};
        for (int i = 0; i < indices.length; i++) {
            Water boiled = Boiling.of(OptionalDouble.of(indices[i]), OptionalDouble.empty(), false)
                    .applied(Waters.model(200, 3.2, 330), new Volume(1))
                    .water();
            assertThat(boiled.alkalinityMeqPerL()).isBetween(0.5 * reference[i], reference[i]);
        }
    }

    /** Moderate water: formula 1.28 mmol/L; 1.25 mmol leaves 0.33 mEq/kg, Ca 10.4 mg/kg, pH 9.98 (PHREEQC-3). */
    @Test
    void limingTheModerateWater() {
        Water water = Waters.moderate();
        assertThat(1000 * Liming.doseMolPerKg(water)).isCloseTo(1.28, within(0.01));
        double grams = 1.25e-3 * Liming.lime().molarMassGPerMol();
        Water limed = new Liming(Optional.of(new Mass(grams / 1000)), OptionalDouble.of(0.3), OptionalDouble.empty())
                .applied(water, new Volume(1))
                .water();
        assertThat(limed.ph()).isCloseTo(9.98, within(0.1));
        assertThat(limed.alkalinityMeqPerL()).isCloseTo(0.33, Percentage.withPercentage(10));
        assertThat(limed.solution().ion(Ion.CALCIUM) * 40078).isCloseTo(10.4, Percentage.withPercentage(10));
    }

    /** HCO3 120, CO3 15 mg/L, pH 9.43 at 25 degC, activities left out: a textbook's problem, quoted second-hand. */
    @Test
    void alkalinityOfBicarbonateAndCarbonate() {
        CarbonateIons ions = new CarbonateIons(120 / 61.016, 15 / 60.008);
        Temperature temperature = new Temperature(25);
        double perMeq = WaterProfile.CALCIUM_CARBONATE_G_PER_MOL / 2;
        assertThat(perMeq * ions.alkalinityMeqPerL()).isCloseTo(123.4, within(0.05));
        assertThat(perMeq * ions.alkalinityMeqPerL(9.43, temperature, 0)).isCloseTo(124.8, within(0.2));
        assertThat(ions.ph(temperature, 0).getAsDouble()).isCloseTo(9.43, within(0.005));
    }

    @ParameterizedTest(name = "{1} mL on {0} mL")
    @CsvFileSource(resources = "/published/water/alkalinity-titrations.csv", useHeadersInDisplayName = true)
    void titratedAlkalinity(
            double sample,
            double acid,
            double normality,
            Double toSecond,
            double meqPerL,
            double asCaCO3,
            double tolerance,
            String source) {
        AlkalinityTitration titration = new AlkalinityTitration(sample, acid, normality, 4.5);
        double found = toSecond == null ? titration.alkalinityMeqPerL() : titration.lowAlkalinityMeqPerL(toSecond);
        assertThat(found).isCloseTo(meqPerL, within(1e-9));
        assertThat(found * WaterProfile.CALCIUM_CARBONATE_G_PER_MOL / 2).isCloseTo(asCaCO3, within(tolerance));
    }

    @ParameterizedTest(name = "{1} {2}")
    @CsvFileSource(resources = "/published/water/elements.csv", useHeadersInDisplayName = true)
    void ionsCountedByTheirElement(
            String symbol, double reported, String unit, double expected, double tolerance, String source) {
        Ion ion = Ion.ofSymbol(symbol);
        DissolvedUnit printed = unit.endsWith("S") ? DissolvedUnit.MG_PER_L_AS_S : DissolvedUnit.MG_PER_L_AS_N;
        double mmolPerL = new Dissolved(reported, printed).mmolPerL(ion.molarMassGPerMol(), ion.charge());
        assertThat(mmolPerL * ion.molarMassGPerMol()).isCloseTo(expected, within(tolerance));
    }

    @ParameterizedTest(name = "{0}")
    @CsvFileSource(resources = "/published/water/hardness.csv", useHeadersInDisplayName = true)
    void hardnessOfAnIon(String symbol, double mgPerL, double asCaCO3, double tolerance, String source) {
        Ion ion = Ion.ofSymbol(symbol);
        Solution solution = Solution.of(ion, mgPerL / 1000 / ion.molarMassGPerMol());
        WaterProfile profile = WaterProfile.of(
                Water.closed(solution.withBase(-solution.fixedCharge()), Waters.ROOM, 7, List.of()), Waters.ROOM);
        assertThat(profile.hardnessMgPerLAsCaCO3()).isCloseTo(asCaCO3, within(tolerance));
    }

    @ParameterizedTest(name = "{1} g/L {0}: {2}")
    @CsvFileSource(resources = "/published/water/salts-in-water.csv", useHeadersInDisplayName = true)
    void saltsInWater(String salt, double gramsPerL, String symbol, double mgPerL, double tolerance, String source) {
        TreatmentStep step = new SaltTreatment(Salts.get(salt), new Mass(20 * gramsPerL / 1000))
                .applied(Water.distilled(), new Volume(20));
        WaterProfile profile = WaterProfile.of(step.water(), Waters.ROOM);
        assertThat(profile.ions().get(symbol).mgPerL()).isCloseTo(mgPerL, within(tolerance));
    }

    @ParameterizedTest(name = "{0} mmol/kg at {1} degC")
    @CsvFileSource(resources = "/published/water/pure-bicarbonate.csv", useHeadersInDisplayName = true)
    void bicarbonateOfSodiumInPureWater(
            double mmolPerKg, double temperatureDegC, double ph, double tolerance, String source) {
        double grams = mmolPerKg / 1000 * Salts.get("sodium-bicarbonate").molarMassGPerMol();
        TreatmentStep step = new SaltTreatment(Salts.get("sodium-bicarbonate"), new Mass(grams / 1000))
                .applied(Water.distilled(), new Volume(1));
        assertThat(WaterProfile.of(step.water(), new Temperature(temperatureDegC))
                        .closedPh())
                .isCloseTo(ph, within(tolerance));
    }

    /** DIC/Alk 1.065 at pH 7.5, 20 degC, I 0.007 (DERIVED); half the last digit. */
    @Test
    void carbonOverAlkalinityAtPh75() {
        WaterReport report = new WaterReport(
                Map.of(Ion.CALCIUM, 1.5, Ion.SODIUM, 1.5, Ion.CHLORIDE, 1.0, Ion.SULFATE, 0.5, Ion.MAGNESIUM, 0.5),
                Optional.of(new Alkalinity(3.5)),
                OptionalDouble.empty(),
                OptionalDouble.of(7.5),
                Waters.ROOM);
        Water water = Water.of(report);
        assertThat(1000 * water.solution().carbon() / water.alkalinityMeqPerL()).isCloseTo(1.065, within(0.0025));
    }

    /** EC of the moderate water is 1.06 of a hundred times its anions; the estimate gives 89 to 99 % of it (PHREEQC-3). */
    @Test
    void conductivityOfTheModerateWater() {
        WaterProfile profile = WaterProfile.of(Waters.moderate(), Waters.ROOM);
        double reference = 106 * profile.balance().anionsMeqPerL();
        double estimate = profile.conductivityMicrosiemensPerCm() * WaterModel.value("conductivity-recovery");
        assertThat(estimate / reference).isBetween(0.89, 0.99);
    }

    /** Taking the dihydrate for the anhydrous salt under-doses calcium by 24.5 % (IUPAC-WEIGHTS). */
    @Test
    void dihydrateTakenForAnhydrous() {
        double dihydrate = Salts.get("calcium-chloride-dihydrate").perGram().ion(Ion.CALCIUM);
        double anhydrous = Salts.get("calcium-chloride").perGram().ion(Ion.CALCIUM);
        assertThat(100 * (1 - dihydrate / anhydrous)).isCloseTo(24.5, within(0.05));
    }
}

package tunside.chemistry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.data.Percentage.withPercentage;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import tunside.quantity.Strength;
import tunside.quantity.StrengthUnit;
import tunside.quantity.Temperature;

/** Constants, strengths and salts against printed tables. */
class ConstantsPublishedValuesTest {
    @ParameterizedTest(name = "{0} at {1} degC")
    @CsvFileSource(resources = "/published/chemistry/constants.csv", useHeadersInDisplayName = true)
    void constantsAgainstTemperature(
            String constant, double celsius, double expected, double tolerance, String source) {
        Temperature temperature = new Temperature(celsius);
        double value = switch (constant) {
            case "pK1" -> CarbonateConstants.pK1(temperature);
            case "pK2" -> CarbonateConstants.pK2(temperature);
            case "pKHenry" -> CarbonateConstants.pKHenry(temperature);
            case "pKWater" -> CarbonateConstants.pKWater(temperature);
            case "pKCalcite" -> CarbonateConstants.pKCalcite(temperature);
            case "slope" -> Activity.debyeHuckelSlope(temperature);
            default ->
                Acids.get(constant.substring(0, constant.indexOf('/')))
                        .system()
                        .pK(Integer.parseInt(constant.substring(constant.indexOf('/') + 1)), temperature);
        };
        assertThat(value).isCloseTo(expected, within(tolerance));
    }

    @Test
    void daviesCoefficientOfASingleChargeAtATenthMolal() {
        double log = -Activity.debyeHuckelSlope(new Temperature(25)) * Activity.daviesFunction(0.1);
        assertThat(Math.pow(10, log)).isCloseTo(0.781, within(0.003)); // DAVIES-1962
    }

    @ParameterizedTest(name = "{0} {1} %")
    @CsvFileSource(resources = "/published/chemistry/acid-strengths.csv", useHeadersInDisplayName = true)
    void commercialStrengths(
            String acid,
            double percent,
            double density,
            double molPerL,
            double mmolPerGram,
            double tolerancePercent,
            String source) {
        AcidProduct product = AcidProduct.of(Acids.get(acid), Strength.percent(percent));
        assertThat(product.densityGPerMl()).isCloseTo(density, withPercentage(tolerancePercent));
        assertThat(product.molPerL()).isCloseTo(molPerL, withPercentage(tolerancePercent));
        assertThat(product.molPerKg()).isCloseTo(mmolPerGram, withPercentage(tolerancePercent));
        assertThat(AcidProduct.of(Acids.get(acid), new Strength(product.molPerL(), StrengthUnit.MOL_PER_L))
                        .massPercent())
                .as("back from mol/L")
                .isCloseTo(percent, within(1e-6));
    }

    @ParameterizedTest(name = "{0} %")
    @CsvFileSource(resources = "/published/chemistry/lactic-oligomers.csv", useHeadersInDisplayName = true)
    void freeAcidShareOfStrongLacticAcid(
            double percent,
            double share,
            double tolerance,
            double monomerPercent,
            double monomerTolerance,
            String source) {
        double free = LacticOligomers.freeAcidShare(percent);
        assertThat(free).isCloseTo(share, within(tolerance));
        assertThat(100 * free * free).isCloseTo(monomerPercent, within(monomerTolerance));
        if (percent > 30 && percent <= 90) {
            AcidProduct product = AcidProduct.of(Acids.get("lactic"), Strength.percent(percent));
            assertThat(product.directShare()).isEqualTo(free);
        }
    }

    @ParameterizedTest(name = "{0}")
    @CsvFileSource(resources = "/published/chemistry/salts.csv", useHeadersInDisplayName = true)
    void ionsOfOneGramOfSalt(
            String id,
            double calcium,
            double magnesium,
            double sodium,
            double potassium,
            double chloride,
            double sulfate,
            double alkalinity,
            double toleranceMg,
            double toleranceMeq,
            String source) {
        Salt salt = Salts.get(id);
        assertThat(mg(salt, Ion.CALCIUM)).isCloseTo(calcium, within(toleranceMg));
        assertThat(mg(salt, Ion.MAGNESIUM)).isCloseTo(magnesium, within(toleranceMg));
        assertThat(mg(salt, Ion.SODIUM)).isCloseTo(sodium, within(toleranceMg));
        assertThat(mg(salt, Ion.POTASSIUM)).isCloseTo(potassium, within(toleranceMg));
        assertThat(mg(salt, Ion.CHLORIDE)).isCloseTo(chloride, within(toleranceMg));
        assertThat(mg(salt, Ion.SULFATE)).isCloseTo(sulfate, within(toleranceMg));
        assertThat(salt.alkalinityMeqPerGram()).isCloseTo(alkalinity, within(toleranceMeq));
    }

    private static double mg(Salt salt, Ion ion) {
        return 1000 * salt.perGram().ion(ion) * ion.molarMassGPerMol();
    }

    @ParameterizedTest(name = "{0} {1} mmol/kg at {2} degC")
    @CsvFileSource(resources = "/published/chemistry/pure-solutions.csv", useHeadersInDisplayName = true)
    void phOfPureSolutions(
            String solute, double mmolPerKg, double celsius, double ph, double tolerance, String source) {
        double amount = mmolPerKg / 1000;
        Solution solution = switch (solute) {
            case "sodium-bicarbonate" -> Solution.of(Ion.SODIUM, amount).withCarbon(amount);
            case "phosphate-buffer" ->
                Solution.of(Ion.POTASSIUM, amount)
                        .plus(Solution.of(Ion.SODIUM, 2 * amount))
                        .plus(Acids.get("phosphoric").perMole().scaled(2 * amount));
            default -> Acids.get(solute).perMole().scaled(amount);
        };
        assertThat(ChargeBalance.solve(solution, new Temperature(celsius)).ph()).isCloseTo(ph, within(tolerance));
    }
}

package tunside.dosing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.data.Percentage.withPercentage;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import tunside.chemistry.AcidProduct;
import tunside.chemistry.Acids;
import tunside.chemistry.Ion;
import tunside.chemistry.Salts;
import tunside.chemistry.Solution;
import tunside.quantity.Temperature;
import tunside.quantity.Volume;

/** Doses for liquor against titrations computed with an independent program, and growers' tables for irrigation water. */
class LiquorDosePublishedValuesTest {
    private static final double LITRES = 25;
    private static final double FLUID_OUNCE_ML = 29.5735295625;
    private static final double HUNDRED_GALLONS_L = 378.5411784;
    private static final double CACO3_MG_PER_MEQ = 50.043;

    /** The whole path of a request: question, knowledge, total dose in grams of a dilute product. */
    @ParameterizedTest(name = "{0} at {1} degC, alkalinity {2}, to pH {3}")
    @CsvFileSource(resources = "/published/chemistry/reference-titrations.csv", useHeadersInDisplayName = true)
    void theTotalDoseIsThatOfTheTitration(
            String acid,
            double celsius,
            double alkalinity,
            double ph,
            double expected,
            double tolerance,
            String source) {
        Solution water = Solution.of(Ion.SODIUM, alkalinity / 1000).withCarbon(alkalinity / 1000);
        LiquorDose liquor = LiquorDose.of(water, new Volume(LITRES), new Temperature(celsius));
        AcidProduct product = Doses.acid(acid, 10);
        DoseQuestion question = DoseQuestion.of(
                liquor,
                new PhReading(liquor.startPh(), 0.001),
                0,
                List.of(),
                new DoseAim(ph, ph - 0.3, ph + 0.3, 0.05),
                Optional.of(liquor.acid(product, 1e-6, 1e9)),
                liquor.base(Salts.get(Bases.USUAL), 0.1));
        double mmolPerKg = Doses.dose(question).totalGrams() * product.molPerKg() / LITRES;
        assertThat(mmolPerKg).isCloseTo(expected, withPercentage(tolerance));
    }

    @ParameterizedTest(name = "{0} {1} %: {2}")
    @CsvFileSource(resources = "/published/dosing/irrigation-water.csv", useHeadersInDisplayName = true)
    void growersTablesAgree(
            String acid,
            double percent,
            String quantity,
            double eqPerMol,
            double published,
            double tolerance,
            String note,
            String source) {
        assertThat(quantity(acid, percent, quantity, eqPerMol)).isCloseTo(published, within(tolerance));
    }

    @ParameterizedTest(name = "{0} {1} %: {2}")
    @CsvFileSource(resources = "/published/dosing/irrigation-water-errors.csv", useHeadersInDisplayName = true)
    void printedErrorsAreNotReproduced(
            String acid,
            double percent,
            String quantity,
            double published,
            double ours,
            double factor,
            double tolerance,
            String cause,
            String source) {
        double protons = -Acids.get(acid).system().meanCharge(5.4, new Temperature(25));
        double computed = quantity.startsWith("mL-relative")
                ? 29.6
                        * Doses.acid("hydrochloric", 32).molPerL()
                        / (Doses.acid(acid, percent).molPerL() * protons)
                : quantity(acid, percent, quantity, 1);
        assertThat(computed).isCloseTo(ours, withPercentage(1));
        assertThat(computed / published).isCloseTo(factor, within(tolerance));
        assertThat(Math.abs(computed / published - 1)).isGreaterThan(0.1);
    }

    private static double quantity(String acid, double percent, String quantity, double eqPerMol) {
        AcidProduct product = Doses.acid(acid, percent);
        double element = acid.equals("sulfuric") ? 32.06 : 30.974;
        double mmolPerLByOunce = product.molPerL() * FLUID_OUNCE_ML / HUNDRED_GALLONS_L;
        double ouncesPer50 = 50 / CACO3_MG_PER_MEQ / (mmolPerLByOunce * eqPerMol);
        return switch (quantity) {
            case "floz-per-50-mg" -> ouncesPer50;
            case "mg-per-floz" -> mmolPerLByOunce * eqPerMol * CACO3_MG_PER_MEQ;
            case "element-per-floz" -> mmolPerLByOunce * element;
            case "element-per-50-mg" -> ouncesPer50 * mmolPerLByOunce * element;
            default -> throw new IllegalArgumentException(quantity);
        };
    }
}

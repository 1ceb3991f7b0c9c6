package tunside.electrode.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import tunside.quantity.Temperature;

class PublishedShiftPublishedValuesTest {

    /** The table's shift against its coefficient, each as printed. */
    @ParameterizedTest(name = "{0}")
    @CsvFileSource(resources = "/published/electrode/temperature-shift-table.csv", useHeadersInDisplayName = true)
    void shiftAndCoefficientAgree(
            String name, double kelvins, double shiftPh, double perK, double tolerance, String source) {
        PublishedShift row = PublishedShift.all().stream()
                .filter(shift -> shift.name().equals(name))
                .findFirst()
                .orElseThrow();
        assertThat(row.shiftPh()).isEqualTo(shiftPh);
        assertThat(row.perK()).isEqualTo(perK);
        assertThat(row.source()).isEqualTo(source);
        assertThat(row.perK() * kelvins).isCloseTo(row.shiftPh(), within(tolerance));
        if (row.roomDegC().isPresent()) {
            assertThat(row.hotDegC().getAsDouble() - row.roomDegC().getAsDouble())
                    .isCloseTo(kelvins, within(1e-9));
        }
    }

    @ParameterizedTest(name = "{0} from {1} to {2} degC")
    @CsvFileSource(resources = "/published/electrode/temperature-shift-fit.csv", useHeadersInDisplayName = true)
    void theFitOf2018GivesItsPublishedShifts(
            double ph, double fromDegC, double toDegC, double changePh, double tolerance, String source) {
        assertThat(PublishedShift.byHosom2018(ph, new Temperature(fromDegC), new Temperature(toDegC)))
                .as(source)
                .isCloseTo(changePh, within(tolerance));
    }

    @Test
    void everyRowIsHeldAgainstItsPrint() {
        assertThat(PublishedShift.all()).hasSize(12);
        assertThat(PublishedShift.lowestPerK()).isEqualTo(0.00326);
        assertThat(PublishedShift.highestPerK()).isEqualTo(0.0088);
    }

    /** Half of the published spread on each side of the value that is taken. */
    @Test
    void theSpreadIsWithinTwoAndAHalfStandardUncertainties() {
        TemperatureEffect mash = TemperatureEffect.of(SampleLiquid.MASH);
        assertThat((PublishedShift.highestPerK() - mash.fallPhPerK()) / mash.standardUncertainty())
                .isBetween(2.0, 2.6);
        assertThat((mash.fallPhPerK() - PublishedShift.lowestPerK()) / mash.standardUncertainty())
                .isBetween(1.5, 2.0);
    }
}

package tunside.mash;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import org.hipparchus.stat.descriptive.DescriptiveStatistics;
import org.hipparchus.stat.regression.SimpleRegression;
import org.junit.jupiter.api.Test;
import tunside.quantity.Volume;

/** The class values against the single malts that they were derived from (TROESTER-2009). */
class MaltClassesPublishedValuesTest {
    private static final List<Map<String, String>> MALTS = PublishedRows.of("mash/malts.csv");

    @Test
    void allMaltsAreThere() {
        assertThat(MALTS).hasSize(28);
    }

    @Test
    void paleAndPilsnerAreTheMeanOfFiveBaseMalts() {
        assertMeanOf("base", "pale", 5);
        assertMeanOf("base", "pilsner", 5);
    }

    @Test
    void munichAndRoastedAreMeans() {
        assertMeanOf("munich", "munich", 3);
        assertMeanOf("roasted", "roasted", 5);
    }

    @Test
    void singleMaltsStandAsMeasured() {
        for (String id : List.of("wheat", "vienna", "biscuit", "acidulated")) {
            assertThat(MaltClasses.get(id).distilledWaterPh().value())
                    .as(id)
                    .isCloseTo(phOf(id).getMean(), within(1e-9));
            assertThat(MaltClasses.get(id).distilledWaterPh().n()).isEqualTo(1);
        }
    }

    @Test
    void caramelFollowsItsColour() {
        SimpleRegression line = new SimpleRegression();
        rows("caramel").forEach(row -> line.addData(Math.log10(number(row, "colour_ebc")), ph(row)));
        MaltClass caramel = MaltClasses.get("caramel");
        assertThat(line.getN()).isEqualTo(11);
        assertThat(caramel.distilledWaterPh().value()).isCloseTo(line.getIntercept(), within(0.0005));
        assertThat(caramel.phPerDecade()).isCloseTo(line.getSlope(), within(0.0005));
    }

    @Test
    void caramelFormulaMissesAMaltThatItHasNotSeenByItsStatedUncertainty() {
        double sum = 0;
        List<Map<String, String>> rows = rows("caramel");
        for (Map<String, String> left : rows) {
            SimpleRegression line = new SimpleRegression();
            rows.stream()
                    .filter(row -> row != left)
                    .forEach(row -> line.addData(Math.log10(number(row, "colour_ebc")), ph(row)));
            double error = line.predict(Math.log10(number(left, "colour_ebc"))) - ph(left);
            sum += error * error;
        }
        assertThat(Math.sqrt(sum / rows.size()))
                .isCloseTo(MaltClasses.get("caramel").distilledWaterPh().standardDeviation(), within(0.005));
    }

    @Test
    void bufferingOfSpecialtyMaltsIsTheChordToPh57() {
        assertChord("caramel", 43.6, 0.05, 9.5);
        assertChord("roasted", 42, 0.5, 3.5);
        assertChord("biscuit", 32.6, 0.05, Double.NaN);
        assertChord("acidulated", 148.2, 0.05, Double.NaN);
        assertThat(MaltClasses.get("caramel").buffering().value()).isCloseTo(43.6, within(0.7));
        assertThat(MaltClasses.get("roasted").buffering().value()).isCloseTo(42.0, within(0.5));
        assertThat(MaltClasses.get("biscuit").buffering().value()).isCloseTo(32.6, within(0.5));
        assertThat(MaltClasses.get("acidulated").buffering().value()).isCloseTo(148.2, within(0.5));
    }

    @Test
    void theLacticAcidOfAcidulatedMaltExplainsItsTitratedAcidity() {
        Mash mash = Mash.of(new Grist(List.of(Mashes.part(Malt.of("acidulated"), 1))), Liquor.distilled(new Volume(8)));
        double acidity = -mash.maltBalance().uptakeMeq(5.7);
        assertThat(acidity).isBetween(315.0, 358.0);
    }

    private static void assertMeanOf(String published, String classId, int n) {
        DescriptiveStatistics statistics = phOf(published);
        ClassValue value = MaltClasses.get(classId).distilledWaterPh();
        assertThat(statistics.getN()).isEqualTo(n);
        assertThat(value.n()).isEqualTo(n);
        assertThat(value.value()).isCloseTo(statistics.getMean(), within(0.005));
        assertThat(value.standardDeviation()).isCloseTo(statistics.getStandardDeviation(), within(0.005));
    }

    private static void assertChord(String classId, double mean, double tolerance, double deviation) {
        DescriptiveStatistics chords = new DescriptiveStatistics();
        rows(classId).forEach(row -> chords.addValue(number(row, "acidity_to_57_meq_per_kg") / (5.7 - ph(row))));
        assertThat(chords.getMean()).isCloseTo(mean, within(tolerance));
        if (!Double.isNaN(deviation)) {
            assertThat(chords.getStandardDeviation()).isCloseTo(deviation, within(0.05));
            assertThat(MaltClasses.get(classId).buffering().standardDeviation()).isEqualTo(deviation);
        }
    }

    private static DescriptiveStatistics phOf(String published) {
        DescriptiveStatistics statistics = new DescriptiveStatistics();
        rows(published).forEach(row -> statistics.addValue(ph(row)));
        return statistics;
    }

    private static List<Map<String, String>> rows(String published) {
        return MALTS.stream().filter(row -> row.get("class").equals(published)).toList();
    }

    private static double ph(Map<String, String> row) {
        return number(row, "distilled_water_ph");
    }

    private static double number(Map<String, String> row, String column) {
        return Double.parseDouble(row.get(column));
    }
}

package tunside.mash;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import tunside.chemistry.Acids;
import tunside.quantity.Mass;
import tunside.quantity.Volume;

/** Measured mashes and values computed once by an independent script; the numbers and their sources stand in the files. */
class MashPublishedValuesTest {
    /** Buffering of the jars' malt by its own titration with sodium hydroxide, mEq/(kg pH); not fitted to the jars. */
    private static final double JAR_BUFFERING = 38.5;

    @ParameterizedTest(name = "case {0}")
    @CsvFileSource(resources = "/published/mash/golden.csv", useHeadersInDisplayName = true)
    void agreesWithTheIndependentScript(
            String id,
            double baseKg,
            double basePh,
            double baseBuffering,
            double caramelKg,
            Double caramelPh,
            Double caramelBuffering,
            double litres,
            double alkalinity,
            double carbonDioxideLost,
            double calcium,
            double magnesium,
            double lactic,
            double phosphoric,
            double ph,
            double tolerance) {
        List<GristPart> parts = new ArrayList<>();
        parts.add(part(Malt.of("pale"), basePh, baseBuffering, baseKg));
        if (caramelKg > 0) {
            parts.add(part(Malt.of("caramel"), caramelPh, caramelBuffering, caramelKg));
        }
        List<Addition> additions = List.of(
                new AcidAddition(Acids.get("lactic"), Estimate.exactly(lactic)),
                new AcidAddition(Acids.get("phosphoric"), Estimate.exactly(phosphoric)));
        Mash mash = new Mash(
                new Grist(parts),
                Liquor.titrated(new Volume(litres), alkalinity, 4.3, 8.3, calcium, magnesium),
                additions,
                MashConditions.UNSTATED,
                MashModel.standard().withCarbonDioxideLost(Estimate.exactly(carbonDioxideLost)));
        assertThat(mash.ph()).isCloseTo(ph, within(tolerance));
    }

    @ParameterizedTest(name = "jar {0}")
    @CsvFileSource(resources = "/published/mash/pilsner-jars.csv", useHeadersInDisplayName = true)
    void predictsEachPilsnerJar(String id, double ratio, double alkalinity, double ph, double tolerance) {
        assertThat(jar(ratio, alkalinity)).isCloseTo(ph, within(tolerance));
    }

    @Test
    void predictsThePilsnerJarsToTwoHundredths() {
        double sum = 0;
        List<Map<String, String>> rows = PublishedRows.of("mash/pilsner-jars.csv");
        for (Map<String, String> row : rows) {
            double error =
                    jar(number(row, "liquor_ratio_l_per_kg"), number(row, "alkalinity_meq_l")) - number(row, "ph");
            sum += error * error;
        }
        assertThat(rows).hasSize(12);
        assertThat(Math.sqrt(sum / rows.size())).isLessThanOrEqualTo(0.02);
    }

    private static double number(Map<String, String> row, String column) {
        return Double.parseDouble(row.get(column));
    }

    /** Anchored on the distilled jar at 4 L/kg, 5.72. */
    private static double jar(double ratio, double alkalinity) {
        return Mash.of(
                        new Grist(List.of(part(Malt.of("pilsner"), 5.72, JAR_BUFFERING, 0.05 / ratio))),
                        Liquor.titrated(new Volume(0.05), alkalinity, 4.3, 8.3, 0, 0))
                .ph();
    }

    private static GristPart part(Malt malt, double ph, double buffering, double kilograms) {
        return new GristPart(
                malt.with(MeasuredMalt.of(Estimate.exactly(ph), BufferCurve.linear(buffering, 0))),
                new Mass(kilograms));
    }
}

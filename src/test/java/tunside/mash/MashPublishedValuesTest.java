package tunside.mash;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import tunside.chemistry.Acids;
import tunside.chemistry.Solution;
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

    @ParameterizedTest(name = "share of 1 mEq/L at pH {0}, {1} of the carbon dioxide lost")
    @CsvFileSource(resources = "/published/mash/alkalinity-share.csv", useHeadersInDisplayName = true)
    void alkalinityBindsTheKnownShareOfProtons(double ph, double lost, double share, double tolerance) {
        Mash mash = Mash.of(
                        new Grist(List.of(Mashes.part(Malt.of("pale"), 1))),
                        Liquor.titrated(new Volume(1), 1, 4.3, 8.3, 0, 0))
                .withModel(MashModel.standard().withCarbonDioxideLost(Estimate.exactly(lost)));
        assertThat(mash.otherBalance().uptakeMeq(ph)).isCloseTo(share, within(tolerance));
    }

    @ParameterizedTest(name = "{0}: {1}")
    @CsvFileSource(resources = "/published/mash/slopes.csv", useHeadersInDisplayName = true)
    void reproducesTheSlopesWithinTheirOwnScatter(
            String series,
            String quantity,
            double ratio,
            double gap,
            double background,
            double slope,
            double tolerance) {
        double step = quantity.equals("sodium hydroxide") ? 1 : 5.3;
        double from = jar(ratio, gap, background, 0, 0, 0);
        double to = switch (quantity) {
            case "alkalinity" -> jar(ratio, gap, background + step, 0, 0, 0);
            case "calcium" -> jar(ratio, gap, background, step, 0, 0);
            case "magnesium" -> jar(ratio, gap, background, 0, step, 0);
            case "sodium hydroxide" -> jar(ratio, gap, background, 0, 0, step);
            default -> throw new IllegalArgumentException(quantity);
        };
        assertThat((to - from) / step).isCloseTo(slope, within(tolerance));
    }

    @ParameterizedTest(name = "{0}")
    @CsvFileSource(resources = "/published/mash/specialty-slopes.csv", useHeadersInDisplayName = true)
    void reproducesTheSlopesOfSpecialtyMaltsWithinTheirOwnScatter(
            String name, String classId, double ph, double acidity, double slope, double tolerance) {
        Malt specialty = Malt.of(classId)
                .with(new MeasuredMalt(
                        Optional.of(Estimate.exactly(ph)),
                        OptionalDouble.of(8),
                        Optional.empty(),
                        Optional.of(Estimate.exactly(acidity))));
        double litres = 4;
        double share = 0.05;
        GristPart base = part(Malt.of("pilsner"), 5.72, JAR_BUFFERING, 1);
        Grist mixed = new Grist(
                List.of(part(Malt.of("pilsner"), 5.72, JAR_BUFFERING, 1 - share), Mashes.part(specialty, share)));
        Liquor liquor = Liquor.distilled(new Volume(litres));
        double change = Mash.of(mixed, liquor).ph()
                - Mash.of(new Grist(List.of(base)), liquor).ph();
        assertThat(change / (share * acidity / litres)).isCloseTo(slope, within(tolerance));
    }

    private static double number(Map<String, String> row, String column) {
        return Double.parseDouble(row.get(column));
    }

    private static double jar(double ratio, double alkalinity) {
        return jar(ratio, 0, alkalinity, 0, 0, 0);
    }

    /** Anchored on the distilled jar at 4 L/kg, 5.72. */
    private static double jar(
            double ratio, double gap, double alkalinity, double calcium, double magnesium, double hydroxide) {
        Liquor titrated = Liquor.titrated(new Volume(0.05), alkalinity, 4.3, 8.3, calcium, magnesium);
        Liquor liquor = new Liquor(
                titrated.volume(), titrated.solution().plus(Solution.ofBase(hydroxide / 1000)), titrated.samplePh());
        return new Mash(
                        new Grist(List.of(part(Malt.of("pilsner"), 5.72, JAR_BUFFERING, 0.05 / ratio))),
                        liquor,
                        List.of(),
                        new MashConditions(OptionalDouble.of(gap), Optional.empty(), false),
                        MashModel.standard())
                .ph();
    }

    private static GristPart part(Malt malt, double ph, double buffering, double kilograms) {
        return Mashes.part(
                malt.with(MeasuredMalt.of(Estimate.exactly(ph), BufferCurve.linear(buffering, 0))), kilograms);
    }
}

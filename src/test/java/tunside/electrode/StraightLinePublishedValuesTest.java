package tunside.electrode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

/** NIST-STRD Norris, GUM-2008 example H.3, ISO-28037-2010 example 1. */
class StraightLinePublishedValuesTest {
    @ParameterizedTest(name = "{0}: {1}")
    @CsvFileSource(resources = "/published/electrode/regression-results.csv", useHeadersInDisplayName = true)
    void agreesWithTheWorkedExample(String data, String quantity, double value, double tolerance, String source) {
        assertThat(of(line(data), quantity)).as(source).isCloseTo(value, within(tolerance));
    }

    private static StraightLine line(String data) {
        double[] x = PublishedRows.column(data + ".csv", "x");
        double[] y = PublishedRows.column(data + ".csv", "y");
        return switch (data) {
            case "regression-norris" -> StraightLineFit.unweighted(x, y);
            case "regression-gum-h3" ->
                StraightLineFit.unweighted(Arrays.stream(x).map(t -> t - 20).toArray(), y);
            default -> {
                double[] half = new double[x.length];
                Arrays.fill(half, 0.5);
                yield StraightLineFit.weighted(x, y, half);
            }
        };
    }

    private static double of(StraightLine line, String quantity) {
        return switch (quantity) {
            case "intercept" -> line.intercept();
            case "slope" -> line.slope();
            case "u_intercept" -> Math.sqrt(line.interceptVariance());
            case "u_slope" -> Math.sqrt(line.slopeVariance());
            case "covariance" -> line.covariance();
            case "correlation" -> line.covariance() / Math.sqrt(line.interceptVariance() * line.slopeVariance());
            case "chi_squared" -> line.chiSquared();
            case "residual_sd" -> Math.sqrt(line.chiSquared() / line.degreesOfFreedom());
            case "at_30" -> line.at(10);
            case "u_at_30" -> line.standardUncertaintyAt(10);
            case "x_of_10.5" -> line.readBack(10.5, 0.5).value();
            case "u_x_of_10.5" -> line.readBack(10.5, 0.5).standardUncertainty();
            default -> throw new IllegalArgumentException(quantity);
        };
    }
}

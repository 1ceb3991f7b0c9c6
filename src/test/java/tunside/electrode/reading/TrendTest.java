package tunside.electrode.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

class TrendTest {
    private static final double[] TIME = {0, 10, 20, 30};

    @Test
    void anExactLineHasItsSlopeAndItsMean() {
        Trend trend = Trend.of(TIME, new double[] {5.5, 5.48, 5.46, 5.44}, List.of(), 0.01);
        assertThat(trend.perS()).isCloseTo(-0.002, within(1e-12));
        assertThat(trend.mean()).isCloseTo(5.47, within(1e-12));
        assertThat(trend.noisePh()).as("the stated scatter only").isCloseTo(0.01 * Math.sqrt(0.5), within(1e-12));
        assertThat(trend.perSUncertainty()).isCloseTo(trend.noisePh() / Math.sqrt(500), within(1e-15));
        assertThat(trend.meanUncertainty()).isCloseTo(trend.noisePh() / 2, within(1e-15));
    }

    @Test
    void scatterIsThatAboutTheLine() {
        // residuals +1, -1, -1, +1 hundredths about a level line: squares 4e-4 on two degrees, stated 2e-4 on two
        Trend trend = Trend.of(TIME, new double[] {5.51, 5.49, 5.49, 5.51}, List.of(), 0.01);
        assertThat(trend.perS()).isCloseTo(0, within(1e-12));
        assertThat(trend.noisePh()).isCloseTo(Math.sqrt((2e-4 + 4e-4) / 4), within(1e-12));
    }

    @Test
    void whatIsLeftOutDoesNotCount() {
        Trend trend = Trend.of(TIME, new double[] {5.5, 9, 5.46, 5.44}, List.of(new Settling.Outlier(1, 3.5)), 0.01);
        assertThat(trend.perS()).isCloseTo(-0.002, within(1e-12));
        assertThat(trend.mean()).isCloseTo((5.5 + 5.46 + 5.44) / 3, within(1e-12));
        assertThat(trend.noisePh()).isCloseTo(0.01 * Math.sqrt(2 / 3.0), within(1e-9));
    }

    @Test
    void twoReadingsHaveTheStatedScatter() {
        Trend trend = Trend.of(new double[] {0, 20}, new double[] {5.5, 5.4}, List.of(), 0.0085);
        assertThat(trend.perS()).isCloseTo(-0.005, within(1e-12));
        assertThat(trend.noisePh()).isCloseTo(0.0085, within(1e-12));
        assertThat(trend.perSUncertainty()).isCloseTo(0.0085 / Math.sqrt(200), within(1e-12));
    }
}

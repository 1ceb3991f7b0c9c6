package tunside.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

/** By hand. */
class ErrorSummaryTest {
    @Test
    void oddManyErrors() {
        ErrorSummary summary = ErrorSummary.of(List.of(0.3, -0.1, 0.1), List.of(0.1, 0.1, 0.1));
        assertThat(summary.n()).isEqualTo(3);
        assertThat(summary.medianAbsolute()).isCloseTo(0.1, within(1e-12));
        assertThat(summary.rootMeanSquare()).isCloseTo(Math.sqrt(0.11 / 3), within(1e-12));
        assertThat(summary.mean()).isCloseTo(0.1, within(1e-12));
        assertThat(summary.within90()).isCloseTo(2.0 / 3, within(1e-12));
    }

    @Test
    void theMedianOfAnEvenNumberLiesBetweenTheMiddleTwo() {
        ErrorSummary summary = ErrorSummary.of(List.of(-0.4, 0.2, 0.1, 0.0), List.of(1.0, 1.0, 1.0, 1.0));
        assertThat(summary.medianAbsolute()).isCloseTo(0.15, within(1e-12));
        assertThat(summary.mean()).isCloseTo(-0.025, within(1e-12));
        assertThat(summary.within90()).isEqualTo(1);
    }

    @Test
    void theIntervalReachesAsFarAsTheNormalDistributionSays() {
        assertThat(ErrorSummary.of(List.of(0.1644, -0.1644), List.of(0.1, 0.1)).within90())
                .isEqualTo(1);
        assertThat(ErrorSummary.of(List.of(0.1646, -0.1646), List.of(0.1, 0.1)).within90())
                .isZero();
    }
}

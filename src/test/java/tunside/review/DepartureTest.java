package tunside.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.junit.jupiter.api.Test;

/** By hand. */
class DepartureTest {
    private static Departure departure(double[] residual, double[][] covariance) {
        return new Departure(new ArrayRealVector(residual), new Array2DRowRealMatrix(covariance));
    }

    @Test
    void readingsThatErrApartAreInTheirOwnDeviations() {
        Departure apart =
                departure(new double[] {0.1, -0.6, 0.2}, new double[][] {{0.01, 0, 0}, {0, 0.04, 0}, {0, 0, 1}});
        assertThat(apart.studentised()[0]).isCloseTo(1, within(1e-12));
        assertThat(apart.studentised()[1]).isCloseTo(-3, within(1e-12));
        assertThat(apart.studentised()[2]).isCloseTo(0.2, within(1e-12));
        assertThat(apart.farthest()).isCloseTo(-3, within(1e-12));
    }

    /** Of two readings with correlation c the second is judged given the first: (b - c a) / root(1 - c²). */
    @Test
    void aLaterReadingIsJudgedGivenTheOnesBefore() {
        Departure apart = departure(new double[] {2, 2}, new double[][] {{1, 0.8}, {0.8, 1}});
        assertThat(apart.studentised()[0]).isCloseTo(2, within(1e-12));
        assertThat(apart.studentised()[1]).isCloseTo((2 - 0.8 * 2) / 0.6, within(1e-12));
        assertThat(apart.farthest()).isCloseTo(2, within(1e-12));
        Departure opposite = departure(new double[] {2, -2}, new double[][] {{1, 0.8}, {0.8, 1}});
        assertThat(opposite.farthest()).isCloseTo((-2 - 0.8 * 2) / 0.6, within(1e-12));
    }

    /** Three with covariances of a sum that grows: each is its own step. */
    @Test
    void stepsOfARandomWalkStandAlone() {
        Departure apart = departure(new double[] {1, 3, 2}, new double[][] {{1, 1, 1}, {1, 2, 2}, {1, 2, 3}});
        assertThat(apart.studentised()).containsExactly(new double[] {1, 2, -1}, within(1e-12));
    }

    @Test
    void theFirstOfTwoAsFarIsTheFarthest() {
        assertThat(departure(new double[] {2, -2}, new double[][] {{1, 0}, {0, 1}})
                        .farthest())
                .isCloseTo(2, within(1e-12));
        assertThat(departure(new double[] {0}, new double[][] {{1}}).farthest()).isZero();
    }
}

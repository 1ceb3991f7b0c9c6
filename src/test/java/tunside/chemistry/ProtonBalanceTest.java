package tunside.chemistry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

class ProtonBalanceTest {
    private static ProtonBalance of(ProtonTerm... terms) {
        return new ProtonBalance(List.of(terms));
    }

    @Test
    void thePhIsTheMeanOfTheTermsWeightedByTheirBuffering() {
        ProtonBalance balance = of(ph -> 30 * (5.8 - ph), ph -> 10 * (4.2 - ph));
        assertThat(balance.uptakeMeq(5)).isCloseTo(16, within(1e-12));
        assertThat(balance.bufferingMeqPerPh(5)).isCloseTo(40, within(1e-9));
        assertThat(balance.solve()).isCloseTo(5.4, within(1e-9));
    }

    @Test
    void bufferingFollowsACurvedTerm() {
        assertThat(of(ph -> -ph * ph * ph).bufferingMeqPerPh(2)).isCloseTo(12, within(1e-5));
    }

    @Test
    void aRootAtEitherEndIsFound() {
        assertThat(of(ph -> -ph).solve()).isZero();
        assertThat(of(ph -> 14 - ph).solve()).isEqualTo(14);
    }

    @Test
    void aSumThatKeepsItsSignIsRefused() {
        assertThatThrownBy(() -> of(ph -> -1 - ph).solve())
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("no root from pH 0.0 to 14.0: -1.0 and -15.0 mEq");
        assertThatThrownBy(() -> of(ph -> 15 - ph).solve())
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("15.0 and 1.0 mEq");
        assertThatThrownBy(() -> of(ph -> Double.NaN).solve()).isInstanceOf(IllegalArgumentException.class);
    }
}

package tunside.chemistry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

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
    void theTermsAreKeptInTheirOrder() {
        ProtonTerm malt = ph -> 5.8 - ph;
        ProtonTerm acid = ph -> -20;
        assertThat(of(malt, acid).terms()).containsExactly(malt, acid);
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

    @ParameterizedTest
    @ValueSource(doubles = {0.3, 4.4999, 4.5, 4.5001, 5.4, 6.4999, 6.5, 6.5001, 13.9})
    void aRootIsFoundWhereMashesLieAndBeyond(double ph) {
        assertThat(of(at -> 7 * (ph - at), at -> Math.pow(ph - at, 3)).solve()).isCloseTo(ph, within(1e-9));
    }

    @Test
    void aSumThatKeepsItsSignEndsThere() {
        assertThat(of(ph -> -1 - ph).solve()).isZero();
        assertThat(of(ph -> 15 - ph).solve()).isEqualTo(14);
    }

    @Test
    void whatIsNoNumberIsRefused() {
        assertThatThrownBy(() -> of(ph -> Double.NaN).solve())
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("from pH 0.0 to 14.0 is no number");
        assertThatThrownBy(() -> of(ph -> ph > 10 ? Double.NaN : 20 - ph).solve())
                .isInstanceOf(IllegalArgumentException.class);
    }
}

package tunside.chemistry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tunside.quantity.Temperature;

class SolutionTest {
    private static final AcidSystem LACTIC = Acids.get("lactic").system();

    @Test
    void partsAddUp() {
        Solution sum = Solution.of(Ion.SODIUM, 0.001)
                .plus(Solution.of(Ion.SODIUM, 0.002))
                .plus(Solution.of(LACTIC, 0.004))
                .plus(Solution.ofCarbon(0.005))
                .plus(Solution.ofBase(-0.006));
        assertThat(sum.ion(Ion.SODIUM)).isEqualTo(0.003);
        assertThat(sum.ion(Ion.CALCIUM)).isZero();
        assertThat(sum.carbon()).isEqualTo(0.005);
        assertThat(sum.acids()).containsExactly(Map.entry(LACTIC, 0.004));
        assertThat(sum.base()).isEqualTo(-0.006);
        assertThat(sum.fixedCharge()).isCloseTo(-0.003, within(1e-15));
        Solution doubled = sum.scaled(2);
        assertThat(doubled).isEqualTo(sum.plus(sum));
        assertThat(doubled.withBase(1).withCarbon(2))
                .isEqualTo(new Solution(Map.of(Ion.SODIUM, 0.006), 2, Map.of(LACTIC, 0.008), 1));
    }

    @Test
    void sulfateCountsTwiceInTheFixedCharge() {
        assertThat(Solution.of(Ion.SULFATE, 0.001)
                        .plus(Solution.of(Ion.CALCIUM, 0.003))
                        .fixedCharge())
                .isCloseTo(0.004, within(1e-15));
    }

    @ParameterizedTest
    @ValueSource(doubles = {-1.1e-12, -1, Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
    void anAmountThatIsNoneIsRefused(double amount) {
        assertThatThrownBy(() -> Solution.of(Ion.SODIUM, amount))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("Na (%s mol/kg) must be finite and not negative".formatted(amount));
        assertThatThrownBy(() -> Solution.of(LACTIC, amount)).hasMessageContaining("lactic (");
        assertThatThrownBy(() -> Solution.ofCarbon(amount)).hasMessageContaining("carbon (");
    }

    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
    void aBaseMustBeFinite(double base) {
        assertThatThrownBy(() -> Solution.ofBase(base))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("strong base");
    }

    @Test
    void theRoundingOfADifferenceIsNothing() {
        Solution solution = Solution.of(Ion.CALCIUM, -1e-12).plus(Solution.ofCarbon(-1e-15));
        assertThat(solution.ion(Ion.CALCIUM)).isZero();
        assertThat(solution.carbon()).isZero();
    }

    @Test
    void chargesOfASystemAreThoseThatTheSolverKnows() {
        DissociationConstant step = temperature -> 5;
        assertThat(new AcidSystem("widest", 0, List.of(step, step, step, step)).steps())
                .hasSize(4);
        assertThatThrownBy(() -> new AcidSystem("wider", -1, List.of(step, step, step, step)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("wider: charges must be from 0 to -4 but are -1 to -5");
        assertThatThrownBy(() -> new AcidSystem("ammonium", 1, List.of(step)))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void sharesStayFiniteFarOutside() {
        Temperature temperature = new Temperature(25);
        AcidSystem citric = Acids.get("citric").system();
        assertThat(citric.shares(200, temperature)).containsExactly(new double[] {0, 0, 0, 1}, within(1e-12));
        assertThat(citric.shares(-200, temperature)).containsExactly(new double[] {1, 0, 0, 0}, within(1e-12));
        assertThat(citric.shares(citric.pK(1, temperature), temperature)[0]).isCloseTo(0.4942, within(0.0005));
    }

    @Test
    void acidsSaltsAndIonsAreFoundByTheirNames() {
        assertThat(Acids.all().keySet())
                .containsExactly(
                        "lactic", "phosphoric", "hydrochloric", "sulfuric", "citric", "malic", "tartaric", "acetic");
        assertThat(Acids.find("nitric")).isEmpty();
        assertThatThrownBy(() -> Acids.get("nitric")).hasMessage("no acid 'nitric'");
        assertThat(Salts.all()).hasSize(15).containsKey("gypsum");
        assertThat(Salts.find("borax")).isEmpty();
        assertThatThrownBy(() -> Salts.get("borax")).hasMessage("no salt 'borax'");
        for (Ion ion : Ion.values()) {
            assertThat(Ion.ofSymbol(ion.symbol())).isEqualTo(ion);
        }
        assertThat(Ion.SULFATE.symbol()).isEqualTo("SO4");
        assertThatThrownBy(() -> Ion.ofSymbol("Fe")).hasMessage("no ion has the symbol 'Fe'");
        assertThat(Acids.get("hydrochloric").perMole()).isEqualTo(Solution.of(Ion.CHLORIDE, 1));
        assertThat(Acids.get("sulfuric").perMole()).isEqualTo(Solution.of(Ion.SULFATE, 1));
    }

    @Test
    void aSaltGivesItsIonsInTheOrderOfTheList() {
        Salt salt = new Salt(
                "s", "s", "s", 100, Map.of(Ion.CHLORIDE, 2.0, Ion.CALCIUM, 1.0), 0, "soluble", "IUPAC-WEIGHTS");
        assertThat(salt.ions().keySet()).containsExactly(Ion.CALCIUM, Ion.CHLORIDE);
        assertThat(Salts.get("calcium-carbonate").perGram().carbon()).isCloseTo(1 / 100.086, within(1e-12));
    }

    @Test
    void bothFormsOfAConstantGiveItsPrintedValue() {
        assertThat(DissociationConstant.temperatureFit(1286.49, 4.8607, 0.014776)
                        .pK(new Temperature(25)))
                .isCloseTo(3.860, within(0.0005)); // ROBINSON-STOKES
        DissociationConstant acetic = DissociationConstant.enthalpy(4.756, -0.41, -142); // GOLDBERG-2002
        assertThat(acetic.pK(new Temperature(25))).isEqualTo(4.756);
        assertThat(acetic.pK(new Temperature(65))).isCloseTo(4.821, within(0.0005));
        assertThat(acetic.pK(new Temperature(0))).isCloseTo(4.779, within(0.0005));
    }
}

package tunside.chemistry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.ValueSource;
import tunside.quantity.Temperature;

class CarbonateStateTest {
    private static final double AIR = CarbonateState.AIR_PARTIAL_PRESSURE_ATM;

    private static double ph(Solution solution, Temperature temperature) {
        return ChargeBalance.solve(solution, temperature).ph();
    }

    @Test
    void pureWaterInAirIsSlightlyAcid() {
        Temperature temperature = new Temperature(25);
        Solution open = CarbonateState.open(Solution.WATER, temperature, AIR);
        // [CO2] = 10^-1.468 10^-3.38; [H+]^2 = K1 [CO2]: pH (6.352 + 4.848) / 2
        assertThat(ph(open, temperature)).isCloseTo(5.600, within(0.001));
        assertThat(open.carbon()).isCloseTo(Math.pow(10, -4.8479) + Math.pow(10, -5.6), within(2e-8));
    }

    @Test
    void anOpenWaterHasThePressureItWasOpenTo() {
        SplittableRandom random = new SplittableRandom(21);
        for (int i = 0; i < 100; i++) {
            Temperature temperature = new Temperature(random.nextDouble(5, 80));
            double pressure = Math.pow(10, random.nextDouble(-5, 0));
            Solution water = Solution.of(Ion.CALCIUM, random.nextDouble(0, 0.003))
                    .plus(Solution.of(Ion.SODIUM, random.nextDouble(0, 0.003)))
                    .plus(Solution.of(Ion.SULFATE, random.nextDouble(0, 0.001)))
                    .plus(Acids.get("citric").perMole().scaled(random.nextDouble(0, 0.001)))
                    .plus(Solution.ofBase(random.nextDouble(-0.001, 0.003)));
            Solution open = CarbonateState.open(water, temperature, pressure);
            CarbonateState state = CarbonateState.closed(open, temperature);
            assertThat(state.partialPressureAtm() / pressure).isCloseTo(1, within(1e-7));
            assertThat(state.carbonDioxideMolPerKg() + state.bicarbonateMolPerKg() + state.carbonateMolPerKg())
                    .isCloseTo(open.carbon(), within(1e-15));
            assertThat(open.withCarbon(0)).isEqualTo(water);
        }
    }

    @Test
    void speciesObeyTheirConstants() {
        Temperature temperature = new Temperature(25);
        Solution water = Solution.of(Ion.CALCIUM, 0.001)
                .plus(Solution.of(Ion.CHLORIDE, 0.0005))
                .withCarbon(0.0016);
        CarbonateState state = CarbonateState.at(water, temperature, 8);
        double log = -Activity.debyeHuckelSlope(temperature) * Activity.daviesFunction(state.ionicStrength());
        double one = Math.pow(10, log);
        double two = Math.pow(10, 4 * log);
        double h = 1e-8;
        assertThat(state.ph()).isEqualTo(8);
        assertThat(state.gammaOfTwo()).isCloseTo(two, within(1e-9));
        assertThat(h * one * state.bicarbonateMolPerKg() / state.carbonDioxideMolPerKg())
                .isCloseTo(Math.pow(10, -CarbonateConstants.pK1(temperature)), within(1e-14));
        assertThat(h * two * state.carbonateMolPerKg() / (one * state.bicarbonateMolPerKg()))
                .isCloseTo(Math.pow(10, -CarbonateConstants.pK2(temperature)), within(1e-18));
        assertThat(state.partialPressureAtm())
                .isCloseTo(
                        state.carbonDioxideMolPerKg() / Math.pow(10, -CarbonateConstants.pKHenry(temperature)),
                        within(1e-15));
        assertThat(state.freeCalciumMolPerKg()).isEqualTo(0.001);
        assertThat(state.logCalciteActivityProduct())
                .isCloseTo(Math.log10(0.001 * two * state.carbonateMolPerKg() * two), within(1e-9));
    }

    @Test
    void citrateHoldsCalcium() {
        Temperature temperature = new Temperature(20);
        Solution water = Solution.of(Ion.CALCIUM, 0.001).withCarbon(0.002);
        double free = CarbonateState.at(water, temperature, 7).freeCalciumMolPerKg();
        double held = CarbonateState.at(water.plus(Acids.get("citric").perMole().scaled(0.001)), temperature, 7)
                .freeCalciumMolPerKg();
        assertThat(free).isEqualTo(0.001);
        assertThat(held).isBetween(0.0001, 0.0004);
    }

    @Test
    void withoutCarbonThereIsNoPressure() {
        CarbonateState state = CarbonateState.closed(Solution.of(Ion.SODIUM, 0.001), new Temperature(20));
        assertThat(state.partialPressureAtm()).isZero();
        assertThat(state.bicarbonateMolPerKg()).isZero();
        assertThat(state.carbonateMolPerKg()).isZero();
        assertThat(state.logCalciteActivityProduct()).isEqualTo(Double.NEGATIVE_INFINITY);
    }

    /**
     * The source's 0.004 mEq/L left at pH 5.8 is the bicarbonate; less the free hydrogen ion the alkalinity there is
     * 0.0027 mEq/L, which is the base put in.
     */
    @Test
    void openToAirOnlyATraceOfBicarbonateIsLeftAtPh58() {
        Temperature temperature = new Temperature(20);
        CarbonateState state =
                CarbonateState.closed(CarbonateState.open(Solution.ofBase(2.7e-6), temperature, AIR), temperature);
        assertThat(state.ph()).isCloseTo(5.8, within(0.005));
        assertThat(1000 * state.bicarbonateMolPerKg()).isCloseTo(0.004, within(0.0005)); // DERIVED
    }

    /**
     * The source prints 7.2 to 7.5, so half a digit more to each side. Phosphoric acid is not in it: its phosphate keeps
     * the water near pH 6.1.
     */
    @ParameterizedTest(name = "{0}")
    @CsvFileSource(resources = "/published/chemistry/degassed-ph.csv", useHeadersInDisplayName = true)
    void acidifiedWaterClimbsAsItsCarbonDioxideEscapes(
            String acid,
            double alkalinity,
            double calcium,
            double magnesium,
            double chloride,
            double sulfate,
            double phBefore,
            double low,
            double high,
            String source) {
        Temperature temperature = new Temperature(20);
        Solution ions = Solution.of(Ion.CALCIUM, calcium / 1000 / Ion.CALCIUM.molarMassGPerMol())
                .plus(Solution.of(Ion.MAGNESIUM, magnesium / 1000 / Ion.MAGNESIUM.molarMassGPerMol()))
                .plus(Solution.of(Ion.CHLORIDE, chloride / 1000 / Ion.CHLORIDE.molarMassGPerMol()))
                .plus(Solution.of(Ion.SULFATE, sulfate / 1000 / Ion.SULFATE.molarMassGPerMol()));
        Solution balanced = ions.withBase(alkalinity / 1000 - ions.fixedCharge());
        Solution water =
                balanced.withCarbon(ChargeBalance.dose(balanced, Solution.ofCarbon(1), phBefore, temperature, 1)
                        .orElseThrow());
        Solution perMole = Acids.get(acid).perMole();
        double dose = ChargeBalance.dose(water, perMole, 5.3, temperature, 1).orElseThrow();
        Solution dosed = water.plus(perMole.scaled(dose));
        assertThat(ph(CarbonateState.open(dosed, temperature, AIR), temperature))
                .isBetween(low, high);
        assertThat(ph(dosed, new Temperature(65))).isBetween(5.3 - 0.095, 5.3 - 0.035);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -1, 10.001, Double.NaN, Double.POSITIVE_INFINITY})
    void aPressureThatIsNoneIsRefused(double pressure) {
        assertThatThrownBy(() -> CarbonateState.open(Solution.WATER, new Temperature(20), pressure))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("must be above 0 and at most 10");
    }

    @Test
    void tenAtmospheresAreTheMost() {
        Temperature temperature = new Temperature(20);
        assertThat(ph(CarbonateState.open(Solution.WATER, temperature, 10), temperature))
                .isBetween(3.3, 3.5);
    }
}

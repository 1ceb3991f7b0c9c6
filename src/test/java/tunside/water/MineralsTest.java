package tunside.water;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tunside.chemistry.CarbonateState;
import tunside.chemistry.ChargeBalance;
import tunside.chemistry.Ion;
import tunside.chemistry.Solution;
import tunside.quantity.Temperature;

/** Calcite, gypsum and the pairs that hold calcium and magnesium back. */
class MineralsTest {
    /** log10 K at 25 degC as PHREEQC-3 has them; from memory. */
    @ParameterizedTest
    @CsvSource({"CaCO3, 3.224", "CaHCO3, 1.106", "CaSO4, 2.25", "MgCO3, 2.98", "MgSO4, 2.37"})
    void pairsBindAsPublished(String pair, double logK) {
        assertThat(Math.log10(IonPairs.k(pair, new Temperature(25)))).isCloseTo(logK, within(0.01));
    }

    @Test
    void whatPairsHoldIsTakenFromBothPartnersAndLeavesTheirCharge() {
        Solution solution = Solution.of(Ion.CALCIUM, 0.002)
                .plus(Solution.of(Ion.MAGNESIUM, 0.001))
                .plus(Solution.of(Ion.SULFATE, 0.0015))
                .plus(Solution.ofCarbon(0.003));
        Solution free = new IonPairs.Held(1e-4, 2e-4, 3e-5, 4e-5).removedFrom(solution);
        assertThat(free.ion(Ion.CALCIUM)).isCloseTo(0.0017, within(1e-15));
        assertThat(free.ion(Ion.MAGNESIUM)).isCloseTo(0.00093, within(1e-15));
        assertThat(free.ion(Ion.SULFATE)).isCloseTo(0.00126, within(1e-15));
        assertThat(free.carbon()).isCloseTo(0.00287, within(1e-15));
        assertThat(free.base()).isCloseTo(1e-4, within(1e-15));
        assertThat(new IonPairs.Held(1, 0, 0, 0).removedFrom(solution).ion(Ion.CALCIUM))
                .isZero();
        assertThat(IonPairs.Held.NONE.removedFrom(Solution.WATER).ions()).isEmpty();
    }

    /** Each pair over its free partners is its constant, activities by the state's coefficients. */
    @Test
    void pairsAreInEquilibriumWithWhatIsFree() {
        Solution free = Waters.model(100, 3, 200).solution();
        CarbonateState state = CarbonateState.closed(free, Waters.ROOM);
        IonPairs.Held held = IonPairs.Held.of(free, state, Waters.ROOM);
        double two = state.gammaOfTwo();
        double calcium = two * free.ion(Ion.CALCIUM);
        double magnesium = two * free.ion(Ion.MAGNESIUM);
        double sulfate = two * free.ion(Ion.SULFATE);
        assertThat(held.calciumSulfate() / (calcium * sulfate))
                .isCloseTo(IonPairs.k("CaSO4", Waters.ROOM), within(1e-9));
        assertThat(held.magnesiumSulfate() / (magnesium * sulfate))
                .isCloseTo(IonPairs.k("MgSO4", Waters.ROOM), within(1e-9));
        assertThat(held.magnesiumCarbonate() / (magnesium * two * state.carbonateMolPerKg()))
                .isCloseTo(IonPairs.k("MgCO3", Waters.ROOM), within(1e-9));
        // the charged pair and bicarbonate have the same coefficient
        assertThat(held.calciumBicarbonate() / (calcium * state.bicarbonateMolPerKg()))
                .isCloseTo(IonPairs.k("CaHCO3", Waters.ROOM), within(1e-9));
    }

    /** What drops down to an index leaves that index, beside sulfate and magnesium too. */
    @ParameterizedTest(name = "{0} degC to index {1}")
    @CsvSource({"20, 0", "20, 0.3", "60, 0", "60, 0.7", "100, 0"})
    void calciteDropsUntilTheIndexStands(double degC, double index) {
        Temperature temperature = new Temperature(degC);
        Solution hard = Waters.model(150, 6, 100).solution();
        hard = hard.withCarbon(0.0063); // pH above 8
        double dropped = new CalciteEquilibrium(temperature, index).dropped(hard);
        assertThat(dropped).isPositive();
        Solution left = CalciteEquilibrium.without(hard, dropped);
        assertThat(left.ion(Ion.CALCIUM)).isCloseTo(hard.ion(Ion.CALCIUM) - dropped, within(1e-15));
        assertThat(left.carbon()).isCloseTo(hard.carbon() - dropped, within(1e-15));
        assertThat(Saturation.calcite(left, temperature)).isCloseTo(index, within(0.02));
        assertThat(new CalciteEquilibrium(temperature, index + 0.05).dropped(left))
                .isZero();
    }

    @ParameterizedTest
    @ValueSource(doubles = {5, 20, 60})
    void calciteDissolvesUntilTheIndexIsZero(double degC) {
        Temperature temperature = new Temperature(degC);
        CalciteEquilibrium calcite = new CalciteEquilibrium(temperature, 0);
        Solution sour = Waters.model(20, 0.8, 60).solution().plus(Solution.ofCarbon(0.002));
        double dissolved = calcite.dissolved(sour, 0.01);
        assertThat(dissolved).isPositive().isLessThan(0.002);
        Solution saturated = CalciteEquilibrium.without(sour, -dissolved);
        assertThat(Saturation.calcite(saturated, temperature)).isCloseTo(0, within(0.02));
        assertThat(calcite.dissolved(sour, dissolved / 2)).isCloseTo(dissolved / 2, within(1e-15));
        assertThat(calcite.dissolved(sour, 0)).isZero();
        Solution over = CalciteEquilibrium.without(saturated, -1e-4);
        assertThat(calcite.dissolved(over, 0.01)).isZero();
        assertThat(calcite.dropped(over)).isCloseTo(1e-4, within(1e-5));
    }

    @Test
    void withoutCalciumOrCarbonNothingDropsAndThereIsNoIndex() {
        CalciteEquilibrium calcite = new CalciteEquilibrium(Waters.ROOM, 0);
        Solution withoutCarbon = Solution.of(Ion.CALCIUM, 0.01).withBase(0.001);
        Solution withoutCalcium = Solution.ofCarbon(0.01).withBase(0.01);
        assertThat(calcite.dropped(withoutCarbon)).isZero();
        assertThat(calcite.dropped(withoutCalcium)).isZero();
        assertThat(Saturation.calcite(withoutCarbon, Waters.ROOM)).isEqualTo(Double.NEGATIVE_INFINITY);
        assertThat(Saturation.calcite(withoutCalcium, Waters.ROOM)).isEqualTo(Double.NEGATIVE_INFINITY);
    }

    /** The index is the logarithm of a product: at one pH a tenth of calcium or of carbonate lies about one lower. */
    @Test
    void theIndexFallsByOneWithATenthOfTheCalcium() {
        Solution solution = Solution.of(Ion.SODIUM, 0.02).withBase(-0.018).withCarbon(0.002);
        double ph = ChargeBalance.solve(solution, Waters.ROOM).ph();
        double high = Saturation.calcite(calcium(solution, 0.0002), Waters.ROOM);
        double low = Saturation.calcite(calcium(solution, 0.00002), Waters.ROOM);
        assertThat(ph).isBetween(8.0, 10.0);
        assertThat(high - low).isCloseTo(1, within(0.03));
    }

    private static Solution calcium(Solution solution, double amount) {
        return solution.plus(Solution.of(Ion.CALCIUM, amount)).plus(Solution.of(Ion.CHLORIDE, 2 * amount));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 20, 30, 40, 70, 100})
    void waterSaturatedWithGypsumHasIndexZero(double degC) {
        Temperature temperature = new Temperature(degC);
        double most = Saturation.gypsumMolPerKg(temperature);
        assertThat(Saturation.gypsum(gypsum(most), temperature)).isCloseTo(0, within(1e-9));
        // twice diluted: a factor of four in the product, less what the coefficients gain
        assertThat(Saturation.gypsum(gypsum(most / 2), temperature)).isBetween(-Math.log10(4), -0.3);
    }

    private static Solution gypsum(double molPerKg) {
        return Solution.of(Ion.CALCIUM, molPerKg).plus(Solution.of(Ion.SULFATE, molPerKg));
    }

    @Test
    void gypsumDissolvesBestAtFortyDegrees() {
        assertThat(172.164 * Saturation.gypsumMolPerKg(new Temperature(40))).isCloseTo(2.63, within(1e-9));
        assertThat(172.164 * Saturation.gypsumMolPerKg(new Temperature(30))).isCloseTo(2.58, within(1e-9));
        assertThat(172.164 * Saturation.gypsumMolPerKg(new Temperature(105)))
                .as("held beyond the table")
                .isCloseTo(2.04, within(1e-9));
        SplittableRandom random = new SplittableRandom(51);
        for (int i = 0; i < 100; i++) {
            assertThat(172.164 * Saturation.gypsumMolPerKg(new Temperature(random.nextDouble(0, 100))))
                    .isBetween(2.04, 2.63);
        }
    }

    /** Pure water under one atmosphere of carbon dioxide takes far more than under air (PHREEQC-3 in solubility.csv). */
    @Test
    void gasMakesChalkDissolve() {
        CalciteEquilibrium calcite = new CalciteEquilibrium(new Temperature(25), 0);
        double closed = calcite.dissolved(Solution.WATER, 0.05);
        double open = calcite.dissolvedOpen(Solution.WATER, 0.05, CarbonateState.AIR_PARTIAL_PRESSURE_ATM);
        double pure = calcite.dissolvedOpen(Solution.WATER, 0.05, 1);
        assertThat(open / closed).isCloseTo(4.0, Percentage.withPercentage(15));
        assertThat(pure / open).isGreaterThan(15);
        Solution hard = Waters.model(100, 4, 40).solution();
        assertThat(calcite.droppedOpen(hard, CarbonateState.AIR_PARTIAL_PRESSURE_ATM))
                .isGreaterThan(calcite.dropped(hard));
        assertThat(calcite.droppedOpen(hard, 1)).isZero();
    }
}

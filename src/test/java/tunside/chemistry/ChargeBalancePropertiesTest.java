package tunside.chemistry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tunside.quantity.Temperature;

/** Laws of speciation and of electroneutrality, over seeded random waters. */
class ChargeBalancePropertiesTest {
    private static final int CASES = 200;

    private static Solution water(SplittableRandom random) {
        Solution water = Solution.of(Ion.CALCIUM, random.nextDouble(0, 0.004))
                .plus(Solution.of(Ion.MAGNESIUM, random.nextDouble(0, 0.002)))
                .plus(Solution.of(Ion.SODIUM, random.nextDouble(0, 0.005)))
                .plus(Solution.of(Ion.CHLORIDE, random.nextDouble(0, 0.005)))
                .plus(Solution.of(Ion.SULFATE, random.nextDouble(0, 0.003)));
        double alkalinity = random.nextDouble(0.0002, 0.008);
        return water.withBase(alkalinity - water.fixedCharge()).withCarbon(alkalinity * random.nextDouble(1, 1.3));
    }

    private static Temperature temperature(SplittableRandom random) {
        return new Temperature(random.nextDouble(5, 80));
    }

    private static List<AcidSystem> systems() {
        List<AcidSystem> systems = new ArrayList<>();
        Acids.all().values().forEach(acid -> systems.add(acid.system()));
        systems.add(Acids.CARBONIC);
        return systems;
    }

    @Test
    void sharesOfAllFormsSumToOne() {
        SplittableRandom random = new SplittableRandom(11);
        for (AcidSystem system : systems()) {
            for (int i = 0; i < CASES; i++) {
                double sum = 0;
                for (double share : system.shares(random.nextDouble(-2, 16), temperature(random))) {
                    assertThat(share).isBetween(0.0, 1.0);
                    sum += share;
                }
                assertThat(sum).isCloseTo(1, within(1e-12));
            }
        }
    }

    @Test
    void meanChargeFallsFromTheTopFormToTheBareAnion() {
        Temperature temperature = new Temperature(25);
        for (AcidSystem system : systems()) {
            assertThat(system.meanCharge(-8, temperature)).isCloseTo(system.topCharge(), within(1e-6));
            assertThat(system.meanCharge(22, temperature))
                    .isCloseTo(system.topCharge() - system.steps().size(), within(1e-6));
            for (double ph = 0; ph < 14; ph += 0.05) {
                assertThat(system.meanCharge(ph + 0.05, temperature))
                        .isLessThanOrEqualTo(system.meanCharge(ph, temperature));
            }
        }
    }

    @Test
    void netChargeFallsAsThePhRises() {
        SplittableRandom random = new SplittableRandom(12);
        for (int i = 0; i < 40; i++) {
            Solution water = water(random).plus(Acids.get("citric").perMole().scaled(random.nextDouble(0, 0.003)));
            Temperature temperature = temperature(random);
            double before = ChargeBalance.at(water, temperature, 2).netCharge();
            for (double ph = 2.1; ph < 12; ph += 0.1) {
                double now = ChargeBalance.at(water, temperature, ph).netCharge();
                assertThat(now).isLessThan(before);
                before = now;
            }
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"lactic", "phosphoric", "hydrochloric", "sulfuric", "citric", "malic", "tartaric", "acetic"})
    void theComputedDoseBringsTheWaterToTheTarget(String acid) {
        SplittableRandom random = new SplittableRandom(13);
        for (int i = 0; i < 50; i++) {
            Solution water = water(random);
            Temperature temperature = temperature(random);
            double target = random.nextDouble(4.5, 6);
            Solution perMole = Acids.get(acid).perMole();
            double dose =
                    ChargeBalance.dose(water, perMole, target, temperature, 1).orElseThrow();
            assertThat(dose).isPositive();
            assertThat(ChargeBalance.solve(water.plus(perMole.scaled(dose)), temperature)
                            .ph())
                    .isCloseTo(target, within(1e-6));
        }
    }

    @Test
    void anAcidCannotRaiseAndABaseCannotLowerThePh() {
        Solution water = Solution.of(Ion.SODIUM, 0.003).withCarbon(0.003);
        Temperature temperature = new Temperature(20);
        assertThat(ChargeBalance.dose(water, Acids.get("lactic").perMole(), 9, temperature, 1))
                .isEmpty();
        assertThat(ChargeBalance.dose(water, Solution.ofBase(1), 6, temperature, 1))
                .isEmpty();
        assertThat(ChargeBalance.dose(water, Acids.get("lactic").perMole(), 5.4, temperature, 0.001))
                .isEmpty();
        assertThat(ChargeBalance.dose(water, Solution.ofBase(1), 9, temperature, 1)
                        .orElseThrow())
                .isPositive();
    }

    @Test
    void noDoseIsNeededWhereTheWaterIsAlready() {
        Solution neutral = Solution.WATER;
        Temperature temperature = new Temperature(25);
        double ph = ChargeBalance.solve(neutral, temperature).ph();
        assertThat(ph).isCloseTo(CarbonateConstants.pKWater(temperature) / 2, within(1e-3));
        OptionalDouble dose = ChargeBalance.dose(neutral, Solution.ofBase(-1), ph, temperature, 1);
        assertThat(dose.orElse(0)).isCloseTo(0, within(1e-9));
    }

    @Test
    void twoHalfWatersMixToTheWhole() {
        SplittableRandom random = new SplittableRandom(14);
        for (int i = 0; i < CASES; i++) {
            Solution water = water(random);
            Temperature temperature = temperature(random);
            Solution mixed = water.scaled(0.5).plus(water.scaled(0.5));
            assertThat(ChargeBalance.solve(mixed, temperature).ph())
                    .isCloseTo(ChargeBalance.solve(water, temperature).ph(), within(1e-8));
        }
    }

    @Test
    void theSolvedPhIsNeutral() {
        SplittableRandom random = new SplittableRandom(15);
        for (int i = 0; i < CASES; i++) {
            assertThat(ChargeBalance.solve(water(random), temperature(random)).netCharge())
                    .isCloseTo(0, within(1e-11));
        }
    }

    @Test
    void hostileWatersAreSolvedOrRefusedButNeverLoop() {
        for (double celsius : new double[] {0, 25, 100}) {
            Temperature temperature = new Temperature(celsius);
            for (double amount : new double[] {1e-12, 1e-6, 0.1, 5}) {
                for (Acid acid : Acids.all().values()) {
                    Solution strong = acid.perMole().scaled(amount).plus(Solution.of(Ion.CALCIUM, amount));
                    Solution balanced = strong.withBase(-2 * amount);
                    assertThat(ChargeBalance.solve(balanced, temperature).ph()).isBetween(-1.0, 15.0);
                }
            }
            assertThatThrownBy(() -> ChargeBalance.solve(Solution.ofBase(-1000), temperature))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageContaining("no pH");
        }
    }

    @Test
    void ionicStrengthCountsEveryCharge() {
        Solution salt = Solution.of(Ion.CALCIUM, 0.001).plus(Solution.of(Ion.CHLORIDE, 0.002));
        Temperature temperature = new Temperature(25);
        assertThat(ChargeBalance.solve(salt, temperature).ionicStrength()).isCloseTo(0.003, within(1e-6));
        assertThat(ChargeBalance.solve(Solution.ofBase(0.01), temperature).ionicStrength())
                .isCloseTo(0.01, within(1e-9));
        assertThat(ChargeBalance.solve(Solution.ofBase(-0.01), temperature).ionicStrength())
                .isCloseTo(0.01, within(1e-9));
        Solution citrate = Solution.of(Ion.SODIUM, 0.003)
                .plus(Acids.get("citric").perMole().scaled(0.001));
        assertThat(ChargeBalance.at(citrate, temperature, 10).ionicStrength()).isCloseTo(0.006, within(0.0002));
        Solution sulfuric = Acids.get("sulfuric").perMole().scaled(0.001);
        assertThat(ChargeBalance.solve(sulfuric, temperature).ionicStrength()).isBetween(0.0026, 0.003);
    }

    @Test
    void removingTheNetChargeAsBaseGivesThatPh() {
        SplittableRandom random = new SplittableRandom(16);
        for (int i = 0; i < CASES; i++) {
            Solution water =
                    water(random).plus(Acids.get("phosphoric").perMole().scaled(random.nextDouble(0, 0.003)));
            Temperature temperature = temperature(random);
            double ph = random.nextDouble(2, 12);
            Equilibrium held = ChargeBalance.at(water, temperature, ph);
            Equilibrium own = ChargeBalance.solve(water.withBase(water.base() - held.netCharge()), temperature);
            assertThat(held.ph()).isEqualTo(ph);
            assertThat(own.ph()).isCloseTo(ph, within(1e-7));
            assertThat(own.ionicStrength()).isCloseTo(held.ionicStrength(), within(1e-10));
        }
    }

    @Test
    void scalingAWaterAndItsDoseTogetherKeepsTheDosePerLitre() {
        SplittableRandom random = new SplittableRandom(17);
        for (int i = 0; i < 50; i++) {
            Solution water = water(random);
            Temperature temperature = temperature(random);
            Solution perMole = Acids.get("lactic").perMole();
            double perMoleDose =
                    ChargeBalance.dose(water, perMole, 5.2, temperature, 1).orElseThrow();
            double perMillimoleDose = ChargeBalance.dose(water, perMole.scaled(0.001), 5.2, temperature, 1000)
                    .orElseThrow();
            assertThat(perMillimoleDose / 1000 / perMoleDose).isCloseTo(1, within(1e-9));
        }
    }

    @Test
    void aTitratedWaterHasItsPhAndTakesItsAcid() {
        SplittableRandom random = new SplittableRandom(18);
        for (int i = 0; i < CASES; i++) {
            Temperature temperature = temperature(random);
            double from = random.nextDouble(5.5, 9);
            double to = random.nextDouble(3.8, 5);
            double acid = random.nextDouble(1e-3, 8e-3);
            Solution found = ChargeBalance.titrated(water(random), from, to, acid, temperature, 0.1)
                    .orElseThrow();
            assertThat(ChargeBalance.solve(found, temperature).ph()).isCloseTo(from, within(1e-7));
            assertThat(ChargeBalance.solve(found.withBase(found.base() - acid), temperature)
                            .ph())
                    .isCloseTo(to, within(1e-7));
        }
    }

    @Test
    void aTitrationThatNoCarbonOrMoreThanTheLargestExplainsHasNoWater() {
        Temperature temperature = new Temperature(25);
        assertThat(ChargeBalance.titrated(Solution.WATER, 7, 4, 1e-5, temperature, 1))
                .isEmpty();
        assertThat(ChargeBalance.titrated(Solution.WATER, 7, 4, 0.002, temperature, 0.002))
                .isEmpty();
        assertThat(ChargeBalance.titrated(Solution.WATER, 7, 4, 0.002, temperature, 0.003))
                .isPresent();
    }

    @Test
    void theRangeOfPhIsMinusOneToFifteen() {
        Temperature temperature = new Temperature(25);
        Solution perMole = Solution.ofBase(1);
        for (double ph : new double[] {-1, 15}) {
            assertThat(ChargeBalance.at(Solution.WATER, temperature, ph).ph()).isEqualTo(ph);
        }
        for (double ph : new double[] {-1.0001, 15.0001, Double.NaN}) {
            assertThatThrownBy(() -> ChargeBalance.at(Solution.WATER, temperature, ph))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessage("pH (%s) must be from -1.0 to 15.0".formatted(ph));
            assertThatThrownBy(() -> ChargeBalance.dose(Solution.WATER, perMole, ph, temperature, 1))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageContaining("must be from -1.0 to 15.0");
            assertThatThrownBy(() -> ChargeBalance.titrated(Solution.WATER, ph, 4.3, 0.002, temperature, 1))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageContaining("must be from -1.0 to 15.0");
            assertThatThrownBy(() -> ChargeBalance.titrated(Solution.WATER, 7, ph, 0.002, temperature, 1))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageContaining("must be from -1.0 to 15.0");
        }
        for (double largest : new double[] {-0.1, Double.NaN, Double.POSITIVE_INFINITY}) {
            assertThatThrownBy(() -> ChargeBalance.dose(Solution.WATER, perMole, 7, temperature, largest))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageContaining("must be finite and not negative");
        }
        assertThat(ChargeBalance.dose(Solution.WATER, perMole, 9, temperature, 0))
                .isEmpty();
    }

    @Test
    void aWaterBeyondTheRangeSaysByHowMuch() {
        Temperature temperature = new Temperature(25);
        assertThatThrownBy(() -> ChargeBalance.solve(Solution.ofBase(-1000), temperature))
                .hasMessageContaining("no pH from -1.0 to 15.0: its charge is out by -98");
        assertThatThrownBy(() -> ChargeBalance.solve(Solution.ofBase(1000), temperature))
                .hasMessageContaining("no pH from -1.0 to 15.0: its charge is out by 98");
    }

    @Test
    void aDoseThatExhaustsTheLargestIsStillFound() {
        Temperature temperature = new Temperature(20);
        Solution water = Solution.of(Ion.SODIUM, 0.003).withCarbon(0.003);
        Solution lactic = Acids.get("lactic").perMole();
        double dose = ChargeBalance.dose(water, lactic, 5.4, temperature, 1).orElseThrow();
        assertThat(ChargeBalance.dose(water, lactic, 5.4, temperature, dose * 1.0000001))
                .isPresent();
        assertThat(ChargeBalance.dose(water, lactic, 5.4, temperature, dose * 0.9999999))
                .isEmpty();
    }
}

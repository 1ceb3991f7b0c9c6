package tunside.chemistry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tunside.quantity.Temperature;

/** What the solver found, put back into every balance as its definition reads. */
class MassBalancePropertiesTest {
    private static final Temperature ROOM = new Temperature(25);

    /** Totals of both metals, charge and ionic strength as they follow from a pH, an ionic strength and the free metals. */
    private record Balances(double calcium, double magnesium, double charge, double ionicStrength) {
        static Balances of(Solution solution, Temperature temperature, double ph, double strength, double... free) {
            double slope = Activity.debyeHuckelSlope(temperature);
            double davies = Activity.daviesFunction(Math.min(0.5, strength));
            double hydrogen = Math.pow(10, -ph) / gamma(slope, davies, 1);
            double hydroxide = Math.pow(10, ph - CarbonateConstants.pKWater(temperature)) / gamma(slope, davies, 1);
            double[] held = new double[2];
            double charge = hydrogen - hydroxide;
            double squares = hydrogen + hydroxide;
            for (Ion ion : Ion.values()) {
                double amount = ion == Ion.CALCIUM
                        ? free[0]
                        : ion == Ion.MAGNESIUM ? free[1] : ion == Ion.SULFATE ? 0 : solution.ion(ion);
                charge += ion.charge() * amount;
                squares += ion.charge() * ion.charge() * amount;
            }
            Map<AcidSystem, Double> acids = new LinkedHashMap<>(solution.acids());
            acids.merge(Acids.CARBONIC, solution.carbon(), Double::sum);
            acids.merge(Acids.get("sulfuric").system(), solution.ion(Ion.SULFATE), Double::sum);
            for (Map.Entry<AcidSystem, Double> entry : acids.entrySet()) {
                AcidSystem system = entry.getKey();
                double[] forms = new double[system.steps().size() + 1];
                double log = 0;
                double sum = 0;
                for (int j = 0; j < forms.length; j++) {
                    int z = system.topCharge() - j;
                    log += j == 0 ? 0 : ph - system.pK(j, temperature);
                    forms[j] = Math.pow(10, log) / gamma(slope, davies, z);
                    sum += forms[j];
                }
                for (MetalComplexes.Complex complex : MetalComplexes.of(system)) {
                    sum += share(complex, system, forms, free, slope, davies);
                }
                double scale = entry.getValue() / sum;
                for (int j = 0; j < forms.length; j++) {
                    int z = system.topCharge() - j;
                    charge += scale * forms[j] * z;
                    squares += scale * forms[j] * z * z;
                }
                for (MetalComplexes.Complex complex : MetalComplexes.of(system)) {
                    int z = system.topCharge() - complex.protonsLost() + 2;
                    double amount = scale * share(complex, system, forms, free, slope, davies);
                    held[complex.metal() == Ion.CALCIUM ? 0 : 1] += amount;
                    charge += amount * z;
                    squares += amount * z * z;
                }
            }
            return new Balances(
                    free[0] + held[0], free[1] + held[1], charge + solution.base(), 0.5 * (squares + Math.abs(charge)));
        }

        private static double share(
                MetalComplexes.Complex complex,
                AcidSystem system,
                double[] forms,
                double[] free,
                double slope,
                double davies) {
            int z = system.topCharge() - complex.protonsLost();
            return complex.constant()
                    * forms[complex.protonsLost()]
                    * gamma(slope, davies, z)
                    * free[complex.metal() == Ion.CALCIUM ? 0 : 1]
                    * gamma(slope, davies, 2)
                    / gamma(slope, davies, z + 2);
        }

        private static double gamma(double slope, double davies, int z) {
            return Math.pow(10, -slope * z * z * davies);
        }
    }

    private static Solution random(SplittableRandom random, double least, double most) {
        Solution solution = Solution.ofCarbon(amount(random, least, most));
        for (Ion ion : Ion.values()) {
            solution = solution.plus(Solution.of(ion, random.nextInt(4) == 0 ? 0 : amount(random, least, most)));
        }
        for (Acid acid : Acids.all().values()) {
            if (random.nextBoolean()) {
                solution = solution.plus(acid.perMole().scaled(amount(random, least, most)));
            }
        }
        return random.nextBoolean()
                ? solution
                : solution.withBase(amount(random, least, most) - solution.fixedCharge());
    }

    private static double amount(SplittableRandom random, double least, double most) {
        return Math.exp(random.nextDouble(Math.log(least), Math.log(most)));
    }

    private static void close(Speciation speciation, Equilibrium found, Solution solution, Temperature temperature) {
        Balances balances = Balances.of(
                solution,
                temperature,
                found.ph(),
                found.ionicStrength(),
                speciation.free(Ion.CALCIUM, solution),
                speciation.free(Ion.MAGNESIUM, solution));
        double calcium = solution.ion(Ion.CALCIUM);
        double magnesium = solution.ion(Ion.MAGNESIUM);
        double strength = found.ionicStrength();
        assertThat(balances.calcium).as("calcium").isCloseTo(calcium, within(1e-9 * calcium + 1e-12 * strength));
        assertThat(balances.magnesium)
                .as("magnesium")
                .isCloseTo(magnesium, within(1e-9 * magnesium + 1e-12 * strength));
        assertThat(balances.charge).as("charge").isCloseTo(found.netCharge(), within(1e-9 * strength));
        assertThat(balances.ionicStrength).as("ionic strength").isCloseTo(strength, within(1e-9 * strength));
    }

    @ParameterizedTest
    @CsvSource({"1e-5, 0.01", "1e-12, 5"})
    void everyBalanceOfAWaterClosesAtItsPh(double least, double most) {
        SplittableRandom random = new SplittableRandom(51);
        for (int i = 0; i < 2_000; i++) {
            Solution solution = random(random, least, most);
            Temperature temperature = new Temperature(random.nextDouble(0, 100));
            Speciation speciation = new Speciation(solution, temperature);
            Equilibrium found;
            try {
                found = ChargeBalance.neutral(speciation);
            } catch (IllegalArgumentException e) {
                assertThat(Math.abs(solution.fixedCharge())).as("out of range").isGreaterThan(1);
                continue;
            }
            assertThat(found.netCharge()).isCloseTo(0, within(1e-11 * (1 + found.ionicStrength())));
            close(speciation, found, solution, temperature);
        }
    }

    @ParameterizedTest
    @CsvSource({"1e-5, 0.01", "1e-12, 5"})
    void everyBalanceClosesAtAPhThatIsHeldAndWithAnAddition(double least, double most) {
        SplittableRandom random = new SplittableRandom(52);
        for (int i = 0; i < 500; i++) {
            Solution solution = random(random, least, most);
            Solution addition = random(random, least, most);
            Temperature temperature = new Temperature(random.nextDouble(0, 100));
            Speciation speciation = new Speciation(solution, addition, temperature);
            for (double added : new double[] {2, 0.01, 0, 1}) {
                double ph = random.nextDouble(-1, 15);
                double charge = speciation.netCharge(ph, added);
                Solution both = solution.plus(addition.scaled(added));
                Speciation alone = new Speciation(both, temperature);
                Equilibrium found = ChargeBalance.at(alone, ph);
                close(alone, found, both, temperature);
                double strength = found.ionicStrength();
                assertThat(charge).isCloseTo(found.netCharge(), within(1e-8 * strength));
                assertThat(speciation.ionicStrength()).isCloseTo(strength, within(1e-8 * strength));
            }
        }
    }

    @Test
    void whereMetalAndLigandJustMatchTheBalancesStillClose() {
        for (double amount : new double[] {1e-12, 1e-6, 0.01, 5}) {
            for (double ratio : new double[] {0.01, 0.999, 1, 1.001, 100}) {
                for (double ph : new double[] {3, 7, 11}) {
                    Solution solution = Solution.of(Ion.CALCIUM, ratio * amount)
                            .plus(Solution.of(Ion.MAGNESIUM, amount))
                            .plus(Acids.get("citric").perMole().scaled(amount))
                            .plus(Acids.get("phosphoric").perMole().scaled(amount));
                    Speciation speciation = new Speciation(solution, ROOM);
                    close(speciation, ChargeBalance.at(speciation, ph), solution, ROOM);
                }
            }
        }
    }

    /** Citrate holds calcium; lactate holds none, and nothing holds sodium. */
    @Test
    void onlyMetalsThatAnAcidHoldsAreNotFree() {
        Solution water = Solution.of(Ion.CALCIUM, 0.001).plus(Solution.of(Ion.SODIUM, 0.001));
        Solution citrate = water.plus(Acids.get("citric").perMole().scaled(0.002));
        Speciation held = new Speciation(citrate, ROOM);
        held.netCharge(7);
        assertThat(held.free(Ion.CALCIUM, citrate)).isBetween(0.00001, 0.0005);
        assertThat(held.free(Ion.MAGNESIUM, citrate)).isZero();
        Solution lactate = water.plus(Acids.get("lactic").perMole().scaled(0.002));
        Speciation free = new Speciation(lactate, ROOM);
        free.netCharge(7);
        assertThat(free.free(Ion.CALCIUM, lactate)).isEqualTo(0.001);
    }

    /** A metal that only the addition brings is there with it and gone without it. */
    @Test
    void aMetalComesAndGoesWithTheAddition() {
        Solution citrate = Acids.get("citric").perMole().scaled(0.002);
        Solution salt = Solution.of(Ion.CALCIUM, 0.001).plus(Solution.of(Ion.CHLORIDE, 0.002));
        Speciation speciation = new Speciation(citrate, salt, ROOM);
        double without = new Speciation(citrate, ROOM).netCharge(6);
        double with = new Speciation(citrate.plus(salt), ROOM).netCharge(6);
        assertThat(with - without).as("calcium drives protons out").isLessThan(-1e-5);
        for (int i = 0; i < 2; i++) {
            assertThat(speciation.netCharge(6, 0)).isCloseTo(without, within(1e-12));
            assertThat(speciation.netCharge(6, 1)).isCloseTo(with, within(1e-12));
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {-1000, -20, 20, 1000})
    void aWaterBeyondTheRangeIsRefusedWhateverItHolds(double base) {
        Solution citrate = Solution.of(Ion.CALCIUM, 0.001)
                .plus(Acids.get("citric").perMole().scaled(0.002))
                .withBase(base);
        assertThatThrownBy(() -> ChargeBalance.solve(citrate, ROOM))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("no pH from -1.0 to 15.0");
    }
}

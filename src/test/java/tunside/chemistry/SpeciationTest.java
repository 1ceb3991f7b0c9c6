package tunside.chemistry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import tunside.quantity.Temperature;

class SpeciationTest {
    private static Solution random(SplittableRandom random) {
        Solution solution = Solution.ofBase(random.nextDouble(-0.002, 0.002));
        for (Ion ion : Ion.values()) {
            if (random.nextBoolean()) {
                solution = solution.plus(Solution.of(ion, random.nextDouble(0, 0.004)));
            }
        }
        for (Acid acid : Acids.all().values()) {
            if (random.nextInt(3) == 0) {
                solution = solution.plus(Solution.of(acid.system(), random.nextDouble(0, 0.004)));
            }
        }
        return random.nextBoolean() ? solution.withCarbon(random.nextDouble(0, 0.004)) : solution;
    }

    @Test
    void aSolutionWithAnAdditionIsTheirSum() {
        SplittableRandom random = new SplittableRandom(41);
        for (int i = 0; i < 300; i++) {
            Solution solution = random(random);
            Solution addition = random(random);
            double added = random.nextDouble(0, 2);
            double ph = random.nextDouble(2, 11);
            Temperature temperature = new Temperature(random.nextDouble(0, 90));
            Speciation apart = new Speciation(solution, addition, temperature);
            Speciation together = new Speciation(solution.plus(addition.scaled(added)), temperature);
            assertThat(apart.netCharge(ph, added)).isCloseTo(together.netCharge(ph), within(1e-10));
            assertThat(apart.ionicStrength()).isCloseTo(together.ionicStrength(), within(1e-10));
            assertThat(apart.netCharge(ph)).isCloseTo(apart.netCharge(ph, 0), within(1e-10));
        }
    }

    /** Charge and ionic strength without complexes, written out from the definitions. */
    @Test
    void chargeAndIonicStrengthAreThoseOfTheDefinitions() {
        SplittableRandom random = new SplittableRandom(42);
        for (int i = 0; i < 100; i++) {
            Temperature temperature = new Temperature(random.nextDouble(0, 90));
            double ph = random.nextDouble(1, 12);
            double citric = random.nextDouble(0, 0.01);
            double carbon = random.nextDouble(0, 0.01);
            double sulfate = random.nextDouble(0, 0.01);
            double chloride = random.nextDouble(0, 0.02);
            Solution solution = Solution.of(Ion.CHLORIDE, chloride)
                    .plus(Solution.of(Ion.SULFATE, sulfate))
                    .plus(Acids.get("citric").perMole().scaled(citric))
                    .withCarbon(carbon);
            Speciation speciation = new Speciation(solution, temperature);
            double net = speciation.netCharge(ph);
            double ionicStrength = speciation.ionicStrength();

            double slope = Activity.debyeHuckelSlope(temperature);
            double davies = Activity.daviesFunction(Math.min(0.5, ionicStrength));
            double[] gammas = new double[5];
            for (int z = 0; z <= 4; z++) {
                gammas[z] = Math.pow(10, -slope * z * z * davies);
                assertThat(speciation.gamma(z)).isCloseTo(gammas[z], within(1e-7));
            }
            double hydrogen = Math.pow(10, -ph) / gammas[1];
            double hydroxide = Math.pow(10, ph - CarbonateConstants.pKWater(temperature)) / gammas[1];
            double charge = hydrogen - hydroxide - chloride;
            double squares = hydrogen + hydroxide + chloride;
            for (Object[] part : new Object[][] {
                {Acids.CARBONIC, carbon},
                {Acids.get("citric").system(), citric},
                {Acids.get("sulfuric").system(), sulfate}
            }) {
                AcidSystem system = (AcidSystem) part[0];
                double[] terms = new double[system.steps().size() + 1];
                terms[0] = 1;
                double sum = 1;
                for (int j = 1; j < terms.length; j++) {
                    int z = system.topCharge() - j;
                    terms[j] =
                            terms[j - 1] * Math.pow(10, ph - system.pK(j, temperature)) * gammas[-z - 1] / gammas[-z];
                    sum += terms[j];
                }
                for (int j = 0; j < terms.length; j++) {
                    int z = system.topCharge() - j;
                    charge += (double) part[1] * z * terms[j] / sum;
                    squares += (double) part[1] * z * z * terms[j] / sum;
                }
            }
            assertThat(net).isCloseTo(charge, within(1e-9));
            assertThat(ionicStrength).isCloseTo((squares + Math.abs(charge)) / 2, within(1e-9));
        }
    }

    @Test
    void activityCoefficientsStayWhereDaviesEnds() {
        Temperature temperature = new Temperature(25);
        double atTheEnd = Math.pow(10, -Activity.debyeHuckelSlope(temperature) * Activity.daviesFunction(0.5));
        for (double amount : new double[] {0.6, 5}) {
            Speciation brine = new Speciation(
                    Solution.of(Ion.SODIUM, amount).plus(Solution.of(Ion.CHLORIDE, amount)), temperature);
            brine.netCharge(7);
            assertThat(brine.gamma(1)).isCloseTo(atTheEnd, within(1e-12));
            assertThat(brine.ionicStrength()).isCloseTo(amount, within(1e-5));
        }
    }

    @Test
    void hostileWatersWithComplexesKeepTheirChargeFalling() {
        SplittableRandom random = new SplittableRandom(43);
        for (double celsius : new double[] {0, 100}) {
            for (double amount : new double[] {1e-12, 0.3, 5}) {
                Solution solution = Solution.of(Ion.CALCIUM, amount * random.nextDouble(0.1, 1))
                        .plus(Solution.of(Ion.MAGNESIUM, amount))
                        .plus(Solution.of(Acids.get("citric").system(), amount))
                        .plus(Solution.of(Acids.get("phosphoric").system(), amount));
                Speciation speciation = new Speciation(solution, new Temperature(celsius));
                double before = Double.POSITIVE_INFINITY;
                for (double ph = 0; ph <= 14; ph += 0.5) {
                    double now = speciation.netCharge(ph);
                    assertThat(now).isFinite().isLessThan(before);
                    before = now;
                }
            }
        }
    }
}

package tunside.chemistry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The mass balances of the metals against a plain iteration that knows nothing of Newton's method. */
class MetalBindingTest {
    private static final AcidSystem CITRIC = Acids.get("citric").system();
    private static final AcidSystem PHOSPHORIC = Acids.get("phosphoric").system();
    private static final AcidSystem ACETIC = Acids.get("acetic").system();
    private static final List<AcidSystem> SYSTEMS = List.of(Acids.CARBONIC, CITRIC, PHOSPHORIC, ACETIC);

    private record Case(
            double[] metals, double[] added, double addition, double[] ligands, double[][] shares, double gamma) {
        double metal(int m) {
            return metals[m] + addition * added[m];
        }

        MetalBinding binding() {
            return MetalBinding.of(
                    Solution.of(Ion.CALCIUM, metals[0]).plus(Solution.of(Ion.MAGNESIUM, metals[1])),
                    Solution.of(Ion.CALCIUM, added[0]).plus(Solution.of(Ion.MAGNESIUM, added[1])),
                    SYSTEMS);
        }

        int solve(MetalBinding binding) {
            double[] half = ligands.clone();
            double[] perAddition = new double[half.length];
            for (int s = 0; s < half.length; s++) {
                half[s] = 0.5 * ligands[s];
                perAddition[s] = addition == 0 ? 0 : 0.5 * ligands[s] / addition;
            }
            return binding.solve(shares, addition == 0 ? ligands : half, perAddition, addition, gamma);
        }
    }

    private static Case random(SplittableRandom random, double scale) {
        double[][] shares = new double[SYSTEMS.size()][];
        double[] ligands = new double[SYSTEMS.size()];
        for (int s = 0; s < shares.length; s++) {
            shares[s] = SYSTEMS.get(s).shares(random.nextDouble(3, 9), new tunside.quantity.Temperature(25));
            ligands[s] = random.nextDouble(0, scale);
        }
        return new Case(
                new double[] {random.nextDouble(0, scale), random.nextDouble(0, scale)},
                new double[] {random.nextDouble(0, 1), random.nextDouble(0, 1)},
                random.nextDouble(0, scale),
                ligands,
                shares,
                random.nextDouble(0.3, 1));
    }

    /** Free calcium, free magnesium, charge, squared charges, then the unbound share of each system. */
    private static double[] plain(Case c) {
        double[] free = {c.metal(0), c.metal(1)};
        double[] unbound = new double[SYSTEMS.size()];
        for (int i = 0; i < 1_000; i++) {
            double[] denominators = {1, 1};
            for (int s = 0; s < unbound.length; s++) {
                double bound = 0;
                for (MetalComplexes.Complex complex : MetalComplexes.of(SYSTEMS.get(s))) {
                    bound += affinity(c, s, complex) * free[index(complex)];
                }
                unbound[s] = 1 / (1 + bound);
                for (MetalComplexes.Complex complex : MetalComplexes.of(SYSTEMS.get(s))) {
                    denominators[index(complex)] += affinity(c, s, complex) * unbound[s] * c.ligands[s];
                }
            }
            free[0] = c.metal(0) / denominators[0];
            free[1] = c.metal(1) / denominators[1];
        }
        double charge = 2 * (free[0] + free[1]);
        double squares = 4 * (free[0] + free[1]);
        for (int s = 0; s < unbound.length; s++) {
            for (MetalComplexes.Complex complex : MetalComplexes.of(SYSTEMS.get(s))) {
                int z = 2 + SYSTEMS.get(s).topCharge() - complex.protonsLost();
                double amount = affinity(c, s, complex) * free[index(complex)] * unbound[s] * c.ligands[s];
                charge += z * amount;
                squares += z * z * amount;
            }
        }
        return new double[] {free[0], free[1], charge, squares, unbound[0], unbound[1], unbound[2], unbound[3]};
    }

    private static int index(MetalComplexes.Complex complex) {
        return complex.metal() == Ion.CALCIUM ? 0 : 1;
    }

    private static double affinity(Case c, int s, MetalComplexes.Complex complex) {
        int charge = SYSTEMS.get(s).topCharge() - complex.protonsLost();
        return Math.pow(10, complex.logK()) * c.shares[s][complex.protonsLost()] * Math.pow(c.gamma, Math.abs(charge));
    }

    private static void agrees(MetalBinding binding, Case c, double tolerance) {
        double[] expected = plain(c);
        assertThat(binding.freeCalcium()).isCloseTo(expected[0], within(tolerance));
        assertThat(binding.charge()).isCloseTo(expected[2], within(tolerance));
        assertThat(binding.squares()).isCloseTo(expected[3], within(tolerance));
        for (int s = 0; s < SYSTEMS.size(); s++) {
            assertThat(binding.unboundShare(s)).isCloseTo(expected[4 + s], within(1e-8));
        }
    }

    @Test
    void newtonAndPlainIterationAgreeInAFewSteps() {
        SplittableRandom random = new SplittableRandom(31);
        int most = 0;
        for (int i = 0; i < 60; i++) {
            Case c = random(random, 0.01);
            MetalBinding binding = c.binding();
            most = Math.max(most, c.solve(binding));
            agrees(binding, c, 1e-11);
            assertThat(c.solve(binding)).as("from its own answer").isEqualTo(1);
            agrees(binding, c, 1e-11);
        }
        assertThat(most).isBetween(3, 12);
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1})
    void oneMetalAloneIsSolvedToo(int absent) {
        SplittableRandom random = new SplittableRandom(32);
        for (int i = 0; i < 30; i++) {
            Case both = random(random, 0.01);
            double[] metals = both.metals.clone();
            double[] added = both.added.clone();
            metals[absent] = 0;
            added[absent] = 0;
            Case c = new Case(metals, added, both.addition, both.ligands, both.shares, both.gamma);
            MetalBinding binding = c.binding();
            assertThat(c.solve(binding)).isLessThanOrEqualTo(12);
            agrees(binding, c, 1e-11);
        }
    }

    @Test
    void aLargerAmountStartsFromTheLastAnswerAndASmallerOneAfresh() {
        SplittableRandom random = new SplittableRandom(33);
        Case c = random(random, 0.01);
        MetalBinding binding = c.binding();
        for (double factor : new double[] {1, 3, 0.001, 1, 0}) {
            Case scaled = new Case(c.metals, c.added, factor * c.addition, c.ligands, c.shares, c.gamma);
            assertThat(scaled.solve(binding)).isLessThanOrEqualTo(12);
            agrees(binding, scaled, 1e-11);
        }
    }

    @Test
    void whereMetalAndLigandJustMatchTheBalancesStillClose() {
        for (double amount : new double[] {1e-12, 1e-6, 0.01, 5}) {
            for (double ratio : new double[] {0.01, 0.999, 1, 1.001, 100}) {
                double[][] bare = {{1, 0, 0}, {0, 0, 0, 1}, {0, 0, 0, 1}, {0, 1}};
                double[] ligands = {0, amount, amount, amount};
                Case c = new Case(new double[] {ratio * amount, amount}, new double[2], 0, ligands, bare, 1);
                MetalBinding binding = c.binding();
                assertThat(c.solve(binding)).isLessThanOrEqualTo(60);
                double held = 0;
                for (int s = 0; s < SYSTEMS.size(); s++) {
                    held += ligands[s] * (1 - binding.unboundShare(s));
                }
                double all = ratio * amount + amount;
                // complexes carry 2 less what the ligand brings: citrate 3, phosphate 3, acetate 1
                double charge = 2 * all
                        - 3 * (ligands[1] * (1 - binding.unboundShare(1)) + ligands[2] * (1 - binding.unboundShare(2)))
                        - ligands[3] * (1 - binding.unboundShare(3));
                assertThat(held).isLessThanOrEqualTo(all * (1 + 1e-9));
                assertThat(binding.charge()).isCloseTo(charge, within(1e-9 * all));
            }
        }
    }

    @Test
    void nothingBindsWithoutAMetalOrWithoutALigandThatHoldsIt() {
        Solution metals = Solution.of(Ion.CALCIUM, 0.001).plus(Solution.of(Ion.MAGNESIUM, 0.001));
        List<AcidSystem> indifferent =
                List.of(Acids.CARBONIC, Acids.get("lactic").system());
        assertThat(MetalBinding.of(metals, metals, indifferent)).isNull();
        assertThat(MetalBinding.of(Solution.of(Ion.SODIUM, 1), Solution.WATER, SYSTEMS))
                .isNull();
        assertThat(MetalBinding.of(Solution.WATER, Solution.of(Ion.MAGNESIUM, 1), SYSTEMS))
                .isNotNull();
        MetalBinding binding = MetalBinding.of(metals, Solution.WATER, SYSTEMS);
        assertThat(binding.binds(Ion.CALCIUM)).isTrue();
        assertThat(binding.binds(Ion.MAGNESIUM)).isTrue();
        assertThat(binding.binds(Ion.SODIUM)).isFalse();
    }
}

package tunside.dosing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tunside.chemistry.Solver;

/** An even buffer and a strong acid: everything can be worked out by hand. */
class KnowledgeTest {
    private static final NormalDistribution NORMAL = new NormalDistribution();

    private static Knowledge knowledge(double logDeviation, double uncertainty) {
        return BufferLearning.of(
                        Lines.CURVE,
                        new BufferingPrior(38, "mEq/(kg pH)", logDeviation, "DERIVED"),
                        new PhReading(5.8, uncertainty),
                        0,
                        List.of())
                .now();
    }

    @Test
    void theMedianDoseIsSimpleArithmetic() {
        Knowledge knowledge = knowledge(0.28, 0.001);
        assertThat(knowledge.gramsFor(Lines.ACID, 5.4, 0.5)).isCloseTo(76, within(0.01));
        assertThat(knowledge.gramsFor(Lines.ACID, 5.4, 0.05)).isCloseTo(76 * Math.exp(-1.64485 * 0.28), within(0.2));
        assertThat(knowledge.gramsFor(Lines.ACID, 5.4, 0.95)).isCloseTo(76 * Math.exp(1.64485 * 0.28), within(0.3));
        assertThat(knowledge.gramsFor(Lines.BASE, 6.2, 0.5)).isCloseTo(76, within(0.01));
    }

    @Test
    void whatIsPassedAlreadyNeedsNothing() {
        Knowledge knowledge = knowledge(0.28, 0.02);
        assertThat(knowledge.gramsFor(Lines.ACID, 5.9, 0.5)).isZero();
        assertThat(knowledge.gramsFor(Lines.BASE, 5.7, 0.5)).isZero();
        assertThat(knowledge.gramsFor(Lines.ACID, 5.8, 0.5)).isCloseTo(0, within(1e-3));
    }

    @Test
    void whatDoesNothingReachesNothing() {
        Reagent water = new Reagent("water", "water", true, ph -> 0, 0, OptionalDouble.empty());
        Reagent wrongWay = new Reagent("soda", "soda", true, ph -> -1, 0, OptionalDouble.empty());
        Reagent saltless = new Reagent("none", "none", false, ph -> 0, 0, OptionalDouble.empty());
        Reagent wrongBase = new Reagent("acid", "acid", false, ph -> 1, 0, OptionalDouble.empty());
        for (Reagent reagent : List.of(water, wrongWay)) {
            assertThat(knowledge(0.28, 0.02).gramsFor(reagent, 5.4, 0.5)).isInfinite();
        }
        for (Reagent reagent : List.of(saltless, wrongBase)) {
            assertThat(knowledge(0.28, 0.02).gramsFor(reagent, 6.2, 0.5)).isInfinite();
        }
    }

    @Test
    void theErrorOfTheReadingIsTheErrorOfThePh() {
        Knowledge knowledge = knowledge(0.1, 0.05);
        for (double ph : new double[] {5.7, 5.78, 5.8, 5.83, 5.9}) {
            assertThat(knowledge.probabilityBelow(ph))
                    .isCloseTo(NORMAL.cumulativeProbability((ph - 5.8) / 0.05), within(1e-5));
        }
        assertThat(knowledge.quantile(0.95)).isCloseTo(5.8 + 0.05 * 1.644854, within(1e-5));
    }

    @Test
    void afterAnAdditionBufferingAndReadingBothCount() {
        Knowledge knowledge = knowledge(0.05, 0.03);
        // a fall of 0.4 with a spread of 5 %: 0.02, beside 0.03
        double high = knowledge.quantile(0.95, Lines.ACID, 76);
        double low = knowledge.quantile(0.05, Lines.ACID, 76);
        assertThat(knowledge.quantile(0.5, Lines.ACID, 76)).isCloseTo(5.4, within(0.002));
        assertThat((high - low) / 2 / 1.644854).isCloseTo(Math.hypot(0.02, 0.03), within(0.0005));
        assertThat(knowledge.probabilityBelow(5.4, Lines.ACID, 76)).isCloseTo(0.5, within(0.005));
    }

    /** Few nodes, and yet a risk as near as this: where a good meter shows the buffering sharply, and where a bad one blurs it. */
    @ParameterizedTest
    @CsvSource({"0.28, 0.005, 1.2e-4", "0.28, 0.01, 1e-4", "0.28, 0.03, 4e-5", "0.28, 0.1, 1.5e-5", "0.1, 0.03, 1e-5"})
    void aRiskIsTheIntegralOverBufferingAndReading(double logDeviation, double uncertainty, double within) {
        Knowledge knowledge = knowledge(logDeviation, uncertainty);
        double worst = 0;
        for (double grams = 10; grams <= 150; grams += 20) {
            for (double ph = 4.8; ph <= 5.75; ph += 0.05) {
                double error = knowledge.probabilityBelow(ph, Lines.ACID, grams)
                        - integral(logDeviation, uncertainty, grams, ph);
                worst = Math.max(worst, Math.abs(error));
            }
        }
        assertThat(worst).isLessThan(within);
    }

    /** By the trapezoidal rule on so fine a grid that it is exact to ten digits. */
    private static double integral(double logDeviation, double uncertainty, double grams, double ph) {
        double step = logDeviation / 200;
        double sum = 0;
        for (double x = -8 * logDeviation; x <= 8 * logDeviation; x += step) {
            double ended = 5.8 - grams / (Lines.MEQ_PER_PH * Math.exp(x));
            sum += NORMAL.density(x / logDeviation)
                    / logDeviation
                    * NORMAL.cumulativeProbability((ph - ended) / uncertainty)
                    * step;
        }
        return sum;
    }

    @Test
    void anUncertainReagentWidensItsOwnEffect() {
        Reagent chalk = new Reagent("chalk", "chalk", false, ph -> -1, 0.4, OptionalDouble.empty());
        Knowledge knowledge = knowledge(0.01, 0.001);
        double high = knowledge.quantile(0.95, chalk, 76);
        assertThat(high - knowledge.quantile(0.5, chalk, 76)).isCloseTo(0.4 * 0.4 * 1.644854, within(0.003));
    }

    /** Without a good first guess and true densities the answers would be the same, but come later. */
    @ParameterizedTest
    @ValueSource(doubles = {0.05, 0.5, 0.95})
    void aQuantileCostsTwoEvaluationsAtMost(double probability) {
        Knowledge knowledge = knowledge(0.28, 0.02);
        Reagent chalk = new Reagent("chalk", "chalk", false, ph -> 4 - ph, 0.2, OptionalDouble.empty());
        assertThat(evaluations(() -> knowledge.ph(Lines.ACID, 76).at(probability)))
                .isLessThanOrEqualTo(2);
        assertThat(evaluations(() -> knowledge.ph(chalk, 40).at(probability))).isLessThanOrEqualTo(2);
        assertThat(evaluations(() -> knowledge.needed(Lines.ACID, 5.4).grams(probability)))
                .isLessThanOrEqualTo(2);
        assertThat(evaluations(() -> knowledge.needed(chalk, 6.2).grams(probability)))
                .isLessThanOrEqualTo(2);
        assertThat(evaluations(() -> knowledge.scaleQuantiles(probability))).isLessThanOrEqualTo(1);
    }

    private static long evaluations(Runnable quantile) {
        long before = Solver.DOSE.iterations();
        quantile.run();
        return Solver.DOSE.iterations() - before;
    }

    @Test
    void additionsOfTheHistoryAreInIt() {
        Knowledge knowledge = BufferLearning.of(
                        Lines.CURVE,
                        Lines.PRIOR,
                        new PhReading(5.8, 0.001),
                        0,
                        List.of(Lines.added(19), new PastAddition(Lines.BASE, 9.5, java.util.Optional.empty())))
                .now();
        assertThat(knowledge.givenMeq(5)).isEqualTo(9.5);
        assertThat(knowledge.quantile(0.5)).isCloseTo(5.75, within(1e-4));
        assertThat(knowledge.gramsFor(Lines.ACID, 5.4, 0.5)).isCloseTo(66.5, within(0.01));
    }

    @Test
    void beyondItsCurveItStaysAtTheEnds() {
        Knowledge knowledge = knowledge(0.28, 0.02);
        assertThat(knowledge.quantile(0.5, Lines.ACID, 1e5)).isEqualTo(TitrationCurve.LOWEST_PH);
        assertThat(knowledge.quantile(0.5, Lines.BASE, 1e5)).isEqualTo(TitrationCurve.HIGHEST_PH);
    }

    @Test
    void probabilitiesRiseWithThePhAndWithTheAcid() {
        Knowledge knowledge = knowledge(0.28, 0.03);
        double lastPh = 0;
        for (double ph = 5; ph < 6; ph += 0.05) {
            double probability = knowledge.probabilityBelow(ph, Lines.ACID, 50);
            assertThat(probability).isGreaterThanOrEqualTo(lastPh);
            lastPh = probability;
        }
        double lastAcid = 0;
        for (double grams = 0; grams < 200; grams += 10) {
            double probability = knowledge.probabilityBelow(5.4, Lines.ACID, grams);
            assertThat(probability).isGreaterThanOrEqualTo(lastAcid);
            lastAcid = probability;
        }
        assertThat(lastAcid).isGreaterThan(0.99);
    }

    /** Before anything went in the pH is what was read, on however bent a curve and however little is known of the buffering. */
    @Test
    void beforeAnythingWentInThePhIsThatOfTheReadingsExactly() {
        TitrationCurve bent = new TitrationCurve(ph -> -40 * Math.exp(-(ph - 5)), ph -> -3 * ph);
        Knowledge once = BufferLearning.of(
                        bent,
                        new BufferingPrior(38, "mEq/(kg pH)", 0.4, "DERIVED"),
                        new PhReading(5.8, 0.3),
                        0,
                        List.of())
                .now();
        NormalDistribution first = new NormalDistribution(5.8, 0.3);
        for (double probability : new double[] {0.001, 0.05, 0.5, 0.7, 0.999}) {
            double ph = first.inverseCumulativeProbability(probability);
            assertThat(once.probabilityBelow(ph)).isCloseTo(probability, within(1e-9));
            assertThat(once.quantile(probability)).isCloseTo(ph, within(1e-4));
        }
        // a second reading of the same, half as sure: weights 4 to 1
        Knowledge twice = once.after(PastAddition.read(new PhReading(6.3, 0.6)));
        NormalDistribution both = new NormalDistribution(5.9, 0.3 * Math.sqrt(0.8));
        for (double ph : new double[] {5.2, 5.9, 6.4}) {
            assertThat(twice.probabilityBelow(ph)).isCloseTo(both.cumulativeProbability(ph), within(1e-9));
        }
        // something went in: the bent curve counts
        assertThat(once.probabilityBelow(5.8, Lines.ACID, 1e-6)).isCloseTo(0.5, within(1e-3));
    }
}

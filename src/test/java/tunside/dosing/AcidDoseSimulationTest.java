package tunside.dosing;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tunside.chemistry.AcidProduct;
import tunside.chemistry.ProtonBalance;
import tunside.mash.Grist;
import tunside.mash.GristPart;
import tunside.mash.Liquor;
import tunside.mash.Malt;
import tunside.mash.Mash;
import tunside.quantity.Mass;
import tunside.quantity.Volume;

/**
 * The whole loop on virtual mashes: each has a buffering drawn from the published spread, malts whose own pH is off, liquor
 * whose alkalinity is off, an acid that is a little stronger or weaker than its label, and a meter that errs.
 */
class AcidDoseSimulationTest {
    private static final int MASHES = 2000;
    private static final long SEED = 20240611;

    /** A mash as it really is, beside the one that the brewer describes. */
    private static final class Truth {
        final Mash described;
        final AcidProduct product;
        private final DoubleUnaryOperator malt;
        private final DoubleUnaryOperator other;
        private final double scale;
        private final double acidFactor;
        private final Reagent reagent;
        private final double start;
        private double grams;

        Truth(Random random) {
            double kilograms = 3 + 4 * random.nextDouble();
            double litres = kilograms * (2.5 + 2 * random.nextDouble());
            double alkalinity = 4 * random.nextDouble();
            double calcium = 1 + 4 * random.nextDouble();
            described = mash(kilograms, litres, alkalinity, calcium);
            Mash real = mash(kilograms, litres, alkalinity * (1 + 0.05 * random.nextGaussian()), calcium);
            double ownPhError = 0.10 * random.nextGaussian();
            scale = Math.exp(0.28 * random.nextGaussian());
            acidFactor = 1 + 0.03 * random.nextGaussian();
            product = random.nextBoolean() ? Doses.acid("lactic", 80) : Doses.acid("phosphoric", 10);
            reagent = Reagent.of(product);
            ProtonBalance malts = real.maltBalance();
            ProtonBalance others = real.otherBalance();
            malt = ph -> malts.uptakeMeq(ph - ownPhError);
            other = others::uptakeMeq;
            start = solve(0);
        }

        private static Mash mash(double kilograms, double litres, double alkalinity, double calcium) {
            return Mash.of(
                    new Grist(List.of(
                            new GristPart(Malt.of("pale"), new Mass(0.9 * kilograms)),
                            new GristPart(Malt.of("caramel", 100), new Mass(0.1 * kilograms)))),
                    Liquor.titrated(new Volume(litres), alkalinity, 4.5, 7.6, calcium, 0.8));
        }

        /** The malts' own pH is where they would land without liquor; their buffering scales about it. */
        private double solve(double acidGrams) {
            return new BracketingNthOrderBrentSolver(1e-12, 1e-9, 1e-12, 5)
                    .solve(
                            200,
                            ph -> scale * malt.applyAsDouble(ph)
                                    + other.applyAsDouble(ph)
                                    - acidGrams * acidFactor * reagent.meqPerGram(ph),
                            2,
                            10);
        }

        void add(double more) {
            grams += more;
        }

        double ph() {
            return grams == 0 ? start : solve(grams);
        }
    }

    @ParameterizedTest
    @CsvSource({"5.40, 5.2, 5.5, 95", "5.35, 5.2, 5.5, 95", "5.40, 5.3, 5.5, 94"})
    void twoThousandMashesEndInRangeWithoutOvershooting(
            double target, double low, double high, double leastReachedPercent) {
        DoseAim aim = new DoseAim(target, low, high, 0.05);
        Random random = new Random(SEED);
        int dosed = 0;
        int overshot = 0;
        int reached = 0;
        int reallyInRange = 0;
        int additions = 0;
        int intervals = 0;
        int covered = 0;
        int totals = 0;
        int totalsCovered = 0;
        int overshotAdditions = 0;
        while (dosed < MASHES) {
            Truth truth = new Truth(random);
            double meter = 0.02 + 0.03 * random.nextDouble();
            double first = truth.ph() + meter * random.nextGaussian();
            if (first <= aim.highPh() || first > 6.2) {
                continue;
            }
            dosed++;
            List<PastAddition> history = new ArrayList<>();
            boolean stopped = false;
            double needed = needed(truth, aim.targetPh());
            DoseQuestion question = Doses.question(truth.described, truth.product, first, meter, aim);
            for (int addition = 0; addition < 6 && !stopped; addition++) {
                DoseAdvice answer = DoseAdvice.of(Doses.after(question, history), List.of());
                if (!(answer.outcome() instanceof DoseOutcome.Dose dose)
                        || dose.staged().now().isEmpty()) {
                    stopped = true;
                    double last = history.isEmpty()
                            ? first
                            : history.get(history.size() - 1)
                                    .after()
                                    .orElseThrow()
                                    .ph();
                    reached += addition <= 3 && (aim.contains(last) || aim.contains(truth.ph())) ? 1 : 0;
                    break;
                }
                if (addition == 0) {
                    totals++;
                    totalsCovered += needed >= dose.staged().low90Grams()
                                    && needed <= dose.staged().high90Grams()
                            ? 1
                            : 0;
                }
                DoseStage stage = dose.staged().now().orElseThrow();
                truth.add(stage.grams());
                additions++;
                intervals++;
                covered += truth.ph() >= stage.low90Ph() && truth.ph() <= stage.high90Ph() ? 1 : 0;
                overshotAdditions += truth.ph() < aim.lowPh() ? 1 : 0;
                history.add(new PastAddition(
                        dose.staged().reagent(),
                        stage.grams(),
                        Optional.of(new PhReading(truth.ph() + meter * random.nextGaussian(), meter))));
            }
            overshot += truth.ph() < aim.lowPh() ? 1 : 0;
            reallyInRange += aim.contains(truth.ph()) ? 1 : 0;
        }
        System.out.printf(
                Locale.ROOT,
                "simulation: %d mashes, %d additions; overshot %.2f %% of mashes, %.2f %% of additions; range reached by reading or truth after at"
                        + " most three additions %.2f %%; truly in range %.2f %%; 90 %% intervals of the pH cover %.2f %% (n %d), of the dose %.2f %%%n",
                dosed,
                additions,
                100.0 * overshot / dosed,
                100.0 * overshotAdditions / additions,
                100.0 * reached / dosed,
                100.0 * reallyInRange / dosed,
                100.0 * covered / intervals,
                intervals,
                100.0 * totalsCovered / totals);
        assertThat(overshot).isLessThanOrEqualTo((int) (aim.acceptedRisk() * dosed));
        assertThat(reached).isGreaterThanOrEqualTo((int) (leastReachedPercent / 100 * dosed));
        assertThat(100.0 * covered / intervals).isBetween(87.0, 93.0);
        assertThat(100.0 * totalsCovered / totals).isBetween(87.0, 93.0);
    }

    /** Grams that bring this very mash to the target; explicit, since the balance is known there. */
    private static double needed(Truth truth, double ph) {
        return (truth.scale * truth.malt.applyAsDouble(ph) + truth.other.applyAsDouble(ph))
                / (truth.acidFactor * truth.reagent.meqPerGram(ph));
    }
}

package tunside.mash.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import tunside.chemistry.Ion;
import tunside.mash.Malt;
import tunside.mash.Mash;
import tunside.mash.MashPrediction;
import tunside.water.Water;

class PlanSpaceTest {
    private static final Water WATER = PlanQuestions.water(50, 10, 20, 30, 40, 3);

    private static Mash pale() {
        return PlanQuestions.mash(20, WATER, PlanQuestions.part(Malt.of("pale"), 5));
    }

    private static PlanQuestion question(List<PlanSupply> supplies, List<IonWant> wants) {
        return new PlanQuestion(pale(), WATER, new PhAim(5.4, 5.3, 5.5), supplies, wants, 400);
    }

    private static PlanSpace space(PlanQuestion question) {
        return PlanSpace.of(question, MashPrediction.of(question.mash()));
    }

    private static double[] someAmounts(PlanSpace space, SplittableRandom random) {
        double[] amounts = new double[space.size()];
        for (int i = 0; i < amounts.length; i++) {
            amounts[i] = random.nextBoolean() ? space.most()[i] * random.nextDouble() / 3 : 0;
        }
        return amounts;
    }

    @Test
    void theTableAgreesWithTheFullBalance() {
        for (int seed = 0; seed < 60; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            PlanSpace space = space(PlanQuestions.random(random));
            for (int i = 0; i < 5; i++) {
                double[] amounts = someAmounts(space, random);
                double full = space.question().with(amounts).ph();
                if (full > 4.05 && full < 7.45) {
                    assertThat(space.protons().ph(amounts)).as("seed %s", seed).isCloseTo(full, within(2e-5));
                    assertThat(space.protons().meq(amounts, full))
                            .isCloseTo(0, within(2e-5 * 10 * space.protons().baseBuffering(full)));
                }
            }
        }
    }

    @Test
    void beyondTheTableItsLastSlopeGoesOn() {
        PlanSpace space = space(question(
                List.of(PlanQuestions.acid("phosphoric", 10, 1, 4000), PlanQuestions.salt("calcium-hydroxide", 1, 300)),
                List.of()));
        double[] acid = {2000, 0};
        double[] base = {0, 200};
        assertThat(space.protons().ph(acid)).isLessThan(4);
        assertThat(space.protons().ph(base)).isGreaterThan(7.5);
        assertThat(space.protons().ph(new double[] {2500, 0}))
                .isLessThan(space.protons().ph(acid));
        assertThat(space.protons().ph(new double[] {0, 250}))
                .isGreaterThan(space.protons().ph(base));
    }

    @Test
    void theWantsAgreeWithThePrediction() {
        for (int seed = 0; seed < 60; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            PlanSpace space = space(PlanQuestions.random(random));
            double[] amounts = someAmounts(space, random);
            Mash mash = space.question().with(amounts);
            MashPrediction prediction = MashPrediction.of(mash);
            for (PlanRow row : space.wants()) {
                if (row.subject().equals("alkalinity")) {
                    assertThat(row.limit() + row.slack(amounts) / row.scale())
                            .isCloseTo(WantedValue.alkalinityMeqPerL(mash), within(1e-6));
                } else if (row.scale() != 0) {
                    assertThat(row.limit() + row.slack(amounts) / row.scale())
                            .isCloseTo(mgPerL(prediction, row.subject()), within(1e-6));
                } else {
                    double ratio = mgPerL(prediction, "Cl") - row.limit() * mgPerL(prediction, "SO4");
                    int sign = row.code().equals("plan.ratio-low") ? 1 : -1;
                    assertThat(row.slack(amounts)).isCloseTo(sign * ratio / 50, within(1e-6));
                }
            }
            PlanRow lactate = space.lactate();
            double before = mgPerL(MashPrediction.of(space.question().mash()), "lactate");
            if (before < lactate.limit()) {
                assertThat(lactate.limit() + lactate.slack(amounts) / lactate.scale())
                        .isCloseTo(mgPerL(prediction, "lactate"), within(1e-6));
            }
        }
    }

    private static double mgPerL(MashPrediction prediction, String symbol) {
        return prediction.ions().stream()
                .filter(ion -> ion.symbol().equals(symbol))
                .mapToDouble(ion -> ion.mgPerL())
                .sum();
    }

    @Test
    void theScoreCountsWhatIsUsed() {
        PlanSupply acid = PlanQuestions.acid("lactic", 80, 0.5, 20);
        PlanSupply gypsum = PlanQuestions.salt("gypsum", 0.1, 20);
        PlanSupply water = PlanQuestions.distilled(20, 1);
        PlanSpace space =
                space(question(List.of(acid, gypsum, water), List.of(PlanQuestions.want(Ion.CALCIUM, 100, 150))));
        double[] amounts = {2, 0, 5};
        PlanScore score = space.score(amounts, 5.55);
        assertThat(score.phBeyond()).isCloseTo(0.05, within(1e-9));
        assertThat(score.phOff()).isCloseTo(1.5, within(1e-9));
        assertThat(score.additions()).isEqualTo(2);
        assertThat(score.amount()).isCloseTo(2 * acid.millimolesPerUnit() / 20 / 10 + 0.25, within(1e-12));
        assertThat(score.ionsBeyond()).isCloseTo((100 - 37.5) / 100, within(1e-9));
        assertThat(space.score(new double[] {0, 5, 0}, 5.4).ionsBeyond()).isZero();
        assertThat(space.score(new double[] {0, 20, 0}, 5.4).ionsBeyond())
                .isCloseTo((50 + 232.79 - 150) / 150, within(1e-3));
    }

    @Test
    void aRangeThatEndsAtNothingIsMissedByDegrees() {
        PlanSpace space = space(question(
                List.of(PlanQuestions.distilled(20, 1)),
                List.of(IonWant.of(Ion.SODIUM, OptionalDouble.empty(), OptionalDouble.of(0), "/ions/sodium"))));
        assertThat(space.score(new double[] {10}, 5.4).ionsBeyond()).isCloseTo(1, within(1e-9));
    }

    @Test
    void limitsAreNeverGivenUp() {
        PlanSpace space = space(question(
                List.of(PlanQuestions.acid("lactic", 80, 0.5, 20), PlanQuestions.salt("gypsum", 0.1, 2.05)),
                List.of()));
        assertThat(space.most()[1]).isCloseTo(2, within(1e-12));
        assertThat(space.allows(new double[] {1, 2})).isTrue();
        assertThat(space.allows(new double[] {1, 2.1})).isFalse();
        assertThat(space.allows(new double[] {-0.1, 1})).isFalse();
        double perMl = space.question().supplies().get(0).millimolesPerUnit() * 89.07 / 20;
        assertThat(space.allows(new double[] {400 / perMl * 0.999, 0})).isTrue();
        assertThat(space.allows(new double[] {400 / perMl * 1.001, 0})).isFalse();
        assertThat(StepPlan.of(space, new int[] {0, 21}).total()).isInfinite();
        assertThat(StepPlan.of(space, new int[] {0, 3}).amounts()[1]).isEqualTo(0.3);
    }

    @Test
    void onlyChalkThatActsIsUsed() {
        PlanSupply.OfSalt chalk = PlanQuestions.salt("calcium-carbonate", 0.1, 50);
        assertThat(space(question(List.of(chalk), List.of())).most()[0]).isCloseTo(10, within(1e-9));
        PlanQuestion more = new PlanQuestion(
                pale().plus(chalk.addition(4)), WATER, new PhAim(5.4, 5.3, 5.5), List.of(chalk), List.of(), 400);
        assertThat(space(more).most()[0]).isCloseTo(6, within(1e-9));
        PlanQuestion full = new PlanQuestion(
                pale().plus(chalk.addition(40)), WATER, new PhAim(5.4, 5.3, 5.5), List.of(chalk), List.of(), 400);
        assertThat(space(full).most()[0]).isZero();
    }

    @Test
    void noMoreIsUsedThanAMashCanHold() {
        PlanSupply.OfSalt salt = PlanQuestions.salt("sodium-chloride", 0.1, 100_000);
        double most = space(question(List.of(salt), List.of())).most()[0];
        assertThat(most).isCloseTo(250 * 20 * 58.443 / 1000, within(0.1));
        assertThat(question(List.of(salt), List.of()).with(new double[] {most}).ph())
                .isPositive();
    }

    @Test
    void aMashWithTooMuchLactateTakesNoMore() {
        Mash sour = PlanQuestions.mash(
                20, WATER, PlanQuestions.part(Malt.of("pale"), 5), PlanQuestions.part(Malt.of("acidulated"), 0.5));
        PlanSpace space = space(new PlanQuestion(
                sour,
                WATER,
                new PhAim(5.4, 5.3, 5.5),
                List.of(PlanQuestions.acid("lactic", 80, 0.5, 20), PlanQuestions.acid("phosphoric", 10, 0.5, 20)),
                List.of(),
                400));
        assertThat(space.lactate().slack()).isZero();
        assertThat(space.allows(new double[] {0, 5})).isTrue();
        assertThat(space.allows(new double[] {0.5, 0})).isFalse();
    }

    @Test
    void aRelaxedPlanBoundsEveryPlanOfWholeSteps() {
        for (int seed = 0; seed < 40; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            PlanSpace space = space(PlanQuestions.random(random));
            boolean[] allowed = new boolean[space.size()];
            java.util.Arrays.fill(allowed, true);
            RelaxedPlan root = RelaxedPlan.of(space, allowed, new boolean[space.size()]);
            assertThat(space.allows(root.amounts())).isTrue();
            for (int i = 0; i < 30; i++) {
                double[] amounts = someAmounts(space, random);
                PlanScore score = space.score(amounts);
                if (space.allows(amounts) && score.phBeyond() == 0) {
                    assertThat(root.value()).as("seed %s", seed).isLessThanOrEqualTo(score.total() * 1.02 + 0.3);
                }
            }
            boolean[] counted = new boolean[space.size()];
            counted[0] = space.most()[0] > 0;
            assertThat(RelaxedPlan.of(space, allowed, counted).value()).isGreaterThanOrEqualTo(root.value() - 1e-6);
        }
    }

    @Test
    void theNearestRelaxedPlanCountsRangesAlone() {
        PlanSpace reachable = space(question(List.of(PlanQuestions.acid("phosphoric", 10, 0.5, 200)), List.of()));
        assertThat(RelaxedPlan.nearest(reachable, new boolean[] {true}).beyond())
                .isCloseTo(0, within(1e-9));
        PlanSpace none = reachable.withMost(new double[] {0});
        double alone = RelaxedPlan.nearest(none, new boolean[] {true}).beyond();
        double ph = pale().ph();
        assertThat(alone).isCloseTo(ph - 5.5, within(0.03));
        assertThat(RelaxedPlan.nearest(none.around(new double[] {0}), new boolean[] {true})
                        .beyond())
                .isCloseTo(ph - 5.5, within(1e-5));
        assertThat(RelaxedPlan.nearest(reachable, new boolean[] {false}).beyond())
                .isCloseTo(alone, within(1e-9));
    }
}

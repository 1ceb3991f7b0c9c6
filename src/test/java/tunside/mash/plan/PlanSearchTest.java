package tunside.mash.plan;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import tunside.chemistry.Solver;
import tunside.mash.Malt;
import tunside.mash.MashPrediction;
import tunside.water.Water;

/** The search against every plan of a small grid, on questions that chance makes. */
class PlanSearchTest {
    private static final int QUESTIONS = 60;
    private static final int SUPPLIES = 5;
    /** Steps of each supply, so that all plans can be tried; with so few the search tries them too, with more it may miss one. */
    private static final int FEW = 3;

    private static final int MORE = 5;

    private static PlanSpace small(int seed, int steps) {
        PlanQuestion question = PlanQuestions.random(new SplittableRandom(5000 + seed));
        List<PlanSupply> coarse = new ArrayList<>();
        for (PlanSupply supply : question.supplies()) {
            if (coarse.size() < SUPPLIES) {
                coarse.add(supply.withStep(supply.most() / steps));
            }
        }
        return space(new PlanQuestion(
                question.mash(),
                question.water(),
                question.aim(),
                coarse,
                question.wants(),
                question.mostLactateMgPerL()));
    }

    private static PlanSpace space(PlanQuestion question) {
        return PlanSpace.of(question, MashPrediction.of(question.mash()));
    }

    /** The best of all plans that use what is allowed. */
    private static double best(PlanSpace space, boolean[] allowed) {
        int[] steps = new int[space.size()];
        double best = StepPlan.none(space).total();
        int i = 0;
        while (i < steps.length) {
            double step = space.question().supplies().get(i).step();
            if (allowed[i] && steps[i] < Math.round(space.most()[i] / step)) {
                steps[i]++;
                i = 0;
                best = Math.min(best, StepPlan.of(space, steps).total());
            } else {
                steps[i++] = 0;
            }
        }
        return best;
    }

    private static boolean sets(PlanSpace space, int i) {
        PlanSupply.Role role = space.question().supplies().get(i).role();
        return (role == PlanSupply.Role.ACID || role == PlanSupply.Role.BASE)
                && PlanSearch.mayUse(space.question(), role)
                && space.most()[i] > 0;
    }

    /** How many of all searches with one supply that sets the pH, or none, missed the best plan. */
    private static int missedWithOne(int steps) {
        int missed = 0;
        for (int seed = 0; seed < QUESTIONS; seed++) {
            PlanSpace space = small(seed, steps);
            PlanSearch search = new PlanSearch(space);
            for (int setter = -1; setter < space.size(); setter++) {
                if (setter < 0 || sets(space, setter)) {
                    boolean[] allowed = search.companions();
                    if (setter >= 0) {
                        allowed[setter] = true;
                    }
                    StepPlan found = search.with(setter);
                    double best = best(space, allowed);
                    missed += found.total() > best + 1e-9 ? 1 : 0;
                    assertThat(found.total()).isGreaterThanOrEqualTo(best - 1e-9);
                }
            }
        }
        return missed;
    }

    /** The same of whole answers. */
    private static int missed(int steps) {
        int missed = 0;
        for (int seed = 0; seed < QUESTIONS; seed++) {
            PlanSpace space = small(seed, steps);
            PlanSearch search = new PlanSearch(space);
            double best = Math.min(
                    best(space, search.side(PlanSupply.Role.ACID)), best(space, search.side(PlanSupply.Role.BASE)));
            double found = PlanAnswer.best(space).total();
            missed += found > best + 1e-9 ? 1 : 0;
            assertThat(found).isGreaterThanOrEqualTo(best - 1e-9);
        }
        return missed;
    }

    @Test
    void whereThereAreFewPlansTheBestIsFound() {
        assertThat(missedWithOne(FEW)).isZero();
        assertThat(missed(FEW)).isZero();
    }

    @Test
    void whereThereAreMoreItMostlyIs() {
        assertThat(missedWithOne(MORE)).isLessThanOrEqualTo(QUESTIONS / 12);
        assertThat(missed(MORE)).isLessThanOrEqualTo(QUESTIONS / 20);
    }

    @Test
    void someHundredNodesOrPlansAreEnough() {
        long solves = Solver.PLAN.solves();
        long nodes = Solver.PLAN.iterations();
        for (int seed = 0; seed < QUESTIONS; seed++) {
            PlanAnswer.best(space(PlanQuestions.random(new SplittableRandom(5000 + seed))));
        }
        assertThat(Solver.PLAN.solves() - solves).isBetween(3L * QUESTIONS, 7L * QUESTIONS);
        assertThat(Solver.PLAN.iterations() - nodes).isBetween(300L * QUESTIONS, 450L * QUESTIONS);
    }

    @Test
    void whereNothingIsAtHandOneNodeTells() {
        long solves = Solver.PLAN.solves();
        long nodes = Solver.PLAN.iterations();
        StepPlan plan = new PlanSearch(pale()).with(-1);
        assertThat(plan.total()).isEqualTo(StepPlan.none(pale()).total());
        assertThat(Solver.PLAN.solves() - solves).isEqualTo(1);
        assertThat(Solver.PLAN.iterations() - nodes).isEqualTo(1);
    }

    private static PlanSpace pale(PlanSupply... supplies) {
        Water water = PlanQuestions.water(48, 9, 16, 28, 35, 3.4);
        return space(new PlanQuestion(
                PlanQuestions.mash(18, water, PlanQuestions.part(Malt.of("pale"), 5)),
                water,
                new PhAim(5.4, 5.3, 5.5),
                List.of(supplies),
                List.of(),
                1000));
    }

    /** A plan that is worth what it is said to be. */
    private static StepPlan worth(PlanSpace space, double total) {
        StepPlan none = StepPlan.none(space);
        return new StepPlan(none.steps(), none.amounts(), new PlanScore(0, 0, 0, 0, total));
    }

    @Test
    void twoThatSetThePhAreOnlyTriedWhereTheyCouldBeatOne() {
        PlanSupply phosphoric = PlanQuestions.acid("phosphoric", 10, 0.5, 100);
        PlanSupply lactic = PlanQuestions.acid("lactic", 80, 0.5, 10);
        PlanSupply none = PlanQuestions.acid("hydrochloric", 10, 0.5, 0.2);
        PlanSpace space = pale(phosphoric, lactic, none);
        PlanSearch search = new PlanSearch(space);
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < 2; i++) {
            least = Math.min(least, requireNonNull(search.with(i).score()).amount());
        }
        StepPlan good = worth(space, 2 + least - 0.05);
        StepPlan bad = worth(space, 2 + least + 0.05);
        long solves = Solver.PLAN.solves();
        assertThat(search.together(PlanSupply.Role.ACID, good)).isSameAs(good);
        assertThat(Solver.PLAN.solves()).isEqualTo(solves);
        StepPlan found = search.together(PlanSupply.Role.ACID, bad);
        assertThat(Solver.PLAN.solves()).isGreaterThan(solves);
        assertThat(found.total()).isLessThan(bad.total());
    }

    @Test
    void severalAcidsTogetherAreTheBestThereIs() {
        int met = 0;
        for (double plenty : new double[] {1, 1.8, 2.4}) {
            PlanSupply phosphoric = PlanQuestions.acid("phosphoric", 10, plenty, 20 * plenty);
            PlanSupply lactic = PlanQuestions.acid("lactic", 80, 0.25, 2 * plenty);
            PlanSupply malt = PlanQuestions.acidulated(5, 0.008 * plenty);
            PlanSupply hydrochloric = PlanQuestions.acid("hydrochloric", 10, 1, 5 * plenty);
            for (PlanSpace space : List.of(
                    pale(phosphoric, lactic),
                    pale(phosphoric, malt),
                    pale(lactic, hydrochloric),
                    pale(malt, hydrochloric, phosphoric),
                    pale(hydrochloric, lactic, phosphoric),
                    pale(lactic, malt, hydrochloric, phosphoric))) {
                PlanSearch search = new PlanSearch(space);
                StepPlan found = search.together(PlanSupply.Role.ACID, StepPlan.none(space));
                met += requireNonNull(found.score()).meetsAll() ? 1 : 0;
                assertThat(found.total())
                        .as("%s", space.question().supplies())
                        .isLessThanOrEqualTo(best(space, search.side(PlanSupply.Role.ACID)) + 1e-9);
            }
        }
        assertThat(met).isGreaterThan(5);
    }

    @Test
    void twoAcidsInFineStepsAreTheBestThereIs() {
        PlanSupply gypsum = PlanQuestions.salt("gypsum", 0.5, 3);
        for (double share : new double[] {0.3, 0.5, 0.7, 0.9}) {
            PlanSupply phosphoric = PlanQuestions.acid("phosphoric", 10, 0.5, 80 * share);
            PlanSupply lactic = PlanQuestions.acid("lactic", 80, 0.1, 7 * (1.15 - share));
            PlanSupply hydrochloric = PlanQuestions.acid("hydrochloric", 10, 0.4, 28 * (1.2 - share));
            for (PlanSpace space : List.of(
                    pale(phosphoric, lactic),
                    pale(lactic, phosphoric),
                    pale(phosphoric, hydrochloric),
                    pale(gypsum, hydrochloric, phosphoric))) {
                PlanSearch search = new PlanSearch(space);
                double best = best(space, search.side(PlanSupply.Role.ACID));
                StepPlan found = search.together(PlanSupply.Role.ACID, StepPlan.none(space));
                assertThat(found.total()).as("%s", space.question().supplies()).isLessThanOrEqualTo(best + 1e-9);
            }
        }
    }
}

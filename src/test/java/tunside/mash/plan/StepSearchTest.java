package tunside.mash.plan;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import tunside.mash.Malt;
import tunside.mash.MashPrediction;
import tunside.water.Water;

/** Whole steps around a plan of any amounts, on questions that chance makes. */
class StepSearchTest {
    private static final int QUESTIONS = 24;
    private static final int[] MOVES = {1, -1, 2, -2, 5, -5, 13, -13};

    /** A search from a relaxed plan with one supply that sets the pH. */
    private record Searched(PlanSpace space, double[] amounts, List<Integer> used, int setter, StepPlan found) {
        int most(int i) {
            return (int) Math.round(
                    space.most()[i] / space.question().supplies().get(i).step());
        }

        double total(int[] steps) {
            return StepPlan.of(space, steps).total();
        }

        int[] moved(int i, int move) {
            int[] steps = found.steps().clone();
            steps[i] = Math.max(0, Math.min(most(i), steps[i] + move));
            return steps;
        }

        /** The score of these steps with the pH set anew as near to the target as steps of the setter can. */
        double totalSetAnew(int[] steps) {
            double best = total(steps);
            if (setter < 0) {
                return best;
            }
            double target = space.question().aim().targetPh();
            int[] tried = steps.clone();
            double last = Double.NaN;
            for (int set = 0; set <= most(setter); set++) {
                tried[setter] = set;
                double off = space.protons().ph(StepPlan.of(space, tried).amounts()) - target;
                if (set == 0 || set == most(setter) || off * last <= 0) {
                    best = Math.min(best, total(tried));
                    if (off * last <= 0) {
                        tried[setter] = set - 1;
                        best = Math.min(best, total(tried));
                    }
                }
                last = off;
            }
            return best;
        }
    }

    private static boolean sets(PlanSupply.Role role) {
        return role == PlanSupply.Role.ACID || role == PlanSupply.Role.BASE;
    }

    /** All but the first supply that sets the pH left out. */
    private static Searched search(int seed, boolean withSetter) {
        PlanQuestion question = PlanQuestions.random(new SplittableRandom(seed));
        PlanSpace space = PlanSpace.of(question, MashPrediction.of(question.mash()));
        int setter = -1;
        boolean[] allowed = new PlanSearch(space).companions();
        for (int i = space.size() - 1; i >= 0 && withSetter; i--) {
            PlanSupply.Role role = question.supplies().get(i).role();
            setter = sets(role) && PlanSearch.mayUse(question, role) && space.most()[i] > 0 ? i : setter;
        }
        if (setter >= 0) {
            allowed[setter] = true;
        }
        List<Integer> used = new ArrayList<>();
        for (int i = 0; i < allowed.length; i++) {
            if (allowed[i] && space.most()[i] > 0) {
                used.add(i);
            }
        }
        double[] amounts =
                RelaxedPlan.of(space, allowed, new boolean[allowed.length]).amounts();
        return new Searched(space, amounts, used, setter, StepSearch.from(space, amounts, used, setter));
    }

    private static List<Searched> searches() {
        List<Searched> searches = new ArrayList<>();
        for (int seed = 0; seed < QUESTIONS; seed++) {
            searches.add(search(seed, true));
            searches.add(search(seed, false));
        }
        return searches;
    }

    private static void worseThanFound(Searched searched, double total) {
        assertThat(total).isGreaterThanOrEqualTo(searched.found().total() - 1e-9);
    }

    @Test
    void whatIsNotToBeUsedIsNot() {
        for (Searched one : searches()) {
            for (int i = 0; i < one.space().size(); i++) {
                if (!one.used().contains(i)) {
                    assertThat(one.found().steps()[i]).isZero();
                }
            }
            assertThat(one.space().allows(one.found().amounts())).isTrue();
        }
    }

    @Test
    void noWayToRoundIsBetter() {
        for (Searched one : searches()) {
            int size = Math.min(6, one.used().size());
            for (int mask = 0; mask < 1 << size; mask++) {
                int[] steps = new int[one.space().size()];
                for (int k = 0; k < one.used().size(); k++) {
                    int i = one.used().get(k);
                    double exact = one.amounts()[i]
                            / one.space().question().supplies().get(i).step();
                    boolean up = (mask & 1 << Math.min(k, 5)) != 0;
                    steps[i] = (int) Math.min(one.most(i), up ? Math.ceil(exact) : Math.floor(exact));
                }
                worseThanFound(one, one.total(steps));
            }
        }
    }

    @Test
    void noMoveOfOneAdditionIsBetterEvenWithThePhSetAnew() {
        for (Searched one : searches()) {
            for (int i : one.used()) {
                for (int move : MOVES) {
                    worseThanFound(one, one.totalSetAnew(one.moved(i, move)));
                }
                worseThanFound(one, one.totalSetAnew(one.moved(i, -one.found().steps()[i])));
            }
        }
    }

    @Test
    void noMoveOfTwoAdditionsIsBetterEvenWithThePhSetAnew() {
        for (Searched one : searches()) {
            for (int i : one.used()) {
                for (int j : one.used()) {
                    for (int move : MOVES) {
                        for (int other : new int[] {1, -1}) {
                            if (j > i) {
                                int[] steps = one.moved(i, move);
                                steps[j] = Math.max(0, Math.min(one.most(j), steps[j] + other));
                                worseThanFound(one, one.totalSetAnew(steps));
                            }
                        }
                    }
                }
            }
        }
    }

    /** Lactic acid and acidulated malt, whose lactate counts together, and more than is accepted is needed. */
    @Test
    void lactateIsSharedOutAsFarAsItIsAccepted() {
        Water water = PlanQuestions.water(48, 9, 16, 28, 35, 3.4);
        for (double accepted : new double[] {60, 100, 137, 150, 190}) {
            PlanSupply acid = PlanQuestions.acid("lactic", 80, 0.5, 20);
            PlanSupply malt = PlanQuestions.acidulated(5, 0.05);
            PlanQuestion question = new PlanQuestion(
                    PlanQuestions.mash(18, water, PlanQuestions.part(Malt.of("pale"), 5)),
                    water,
                    new PhAim(5.4, 5.3, 5.5),
                    List.of(acid, malt),
                    List.of(),
                    accepted);
            PlanSpace space = PlanSpace.of(question, MashPrediction.of(question.mash()));
            double best = Double.POSITIVE_INFINITY;
            for (int first = 0; first <= acid.mostSteps(); first++) {
                for (int second = 0; second <= malt.mostSteps(); second++) {
                    best = Math.min(
                            best, StepPlan.of(space, new int[] {first, second}).total());
                }
            }
            for (int setter : new int[] {-1, 0, 1}) {
                double[] start = {1, 0.1};
                assertThat(StepSearch.from(space, start, List.of(0, 1), setter).total())
                        .as("%s mg/L", accepted)
                        .isLessThanOrEqualTo(best + 1e-9);
            }
        }
    }

    @Test
    void fromAnyAmountsOfOneSetterItFindsTheBestStep() {
        for (int seed = 0; seed < QUESTIONS; seed++) {
            Searched one = search(seed, true);
            if (one.setter() < 0) {
                continue;
            }
            double best = Double.POSITIVE_INFINITY;
            int[] steps = new int[one.space().size()];
            for (int set = 0; set <= one.most(one.setter()); set++) {
                steps[one.setter()] = set;
                best = Math.min(best, one.total(steps));
            }
            for (double share : new double[] {0, 0.3, 1}) {
                double[] amounts = new double[one.space().size()];
                amounts[one.setter()] = share * one.space().most()[one.setter()];
                StepPlan found = StepSearch.from(one.space(), amounts, List.of(one.setter()), one.setter());
                assertThat(found.total()).as("seed %s", seed).isLessThanOrEqualTo(best + 1e-9);
            }
        }
    }
}

package tunside.mash.plan;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import tunside.chemistry.AcidProduct;
import tunside.chemistry.Acids;
import tunside.chemistry.Ion;
import tunside.chemistry.Salts;
import tunside.finding.Finding;
import tunside.mash.Malt;
import tunside.mash.MashPrediction;
import tunside.quantity.Strength;
import tunside.water.Water;

class PlanLimitsTest {
    private static final Water WATER = PlanQuestions.water(48, 9, 16, 28, 35, 3.4);
    private static final PhAim AIM = new PhAim(5.4, 5.3, 5.5);
    /** A limit tells where giving it up takes away this share of what is missing. */
    private static final double TELLING = 0.02;
    /** A gain below this must be one of whole steps too. */
    private static final double LITTLE = 0.03;

    private static PlanSpace space(PlanSupply... supplies) {
        return space(new PlanQuestion(
                PlanQuestions.mash(18, WATER, PlanQuestions.part(Malt.of("pale"), 5)),
                WATER,
                AIM,
                List.of(supplies),
                List.of(),
                400));
    }

    private static PlanSpace space(PlanQuestion question) {
        return PlanSpace.of(question, MashPrediction.of(question.mash()));
    }

    private static List<String> binding(PlanSpace space, int... steps) {
        return PlanLimits.binding(space, StepPlan.of(space, steps)).stream()
                .map(Finding::code)
                .toList();
    }

    @Test
    void anAmountBindsWhereNotOneMoreStepFits() {
        PlanSpace space = space(PlanQuestions.salt("gypsum", 1, 3), PlanQuestions.salt("epsom-salt", 1, 0.5));
        assertThat(binding(space, 2, 0)).isEmpty();
        assertThat(binding(space, 3, 0)).containsExactly("plan.amount-mass");
        assertThat(binding(space, 0, 0))
                .as("nothing of it may be used, and nothing is")
                .isEmpty();
    }

    @Test
    void chalkBindsByWhatActsOnlyWhereThatIsLess() {
        PlanSpace little = space(PlanQuestions.salt("calcium-carbonate", 0.1, 2));
        PlanSpace much = space(PlanQuestions.salt("calcium-carbonate", 0.1, 200));
        PlanSpace salt = space(PlanQuestions.salt("sodium-chloride", 1, 100_000));
        assertThat(binding(little, 20)).containsExactly("plan.amount-mass");
        assertThat(binding(much, (int) Math.round(much.most()[0] / 0.1))).containsExactly("plan.chalk");
        assertThat(binding(salt, (int) Math.round(salt.most()[0]))).containsExactly("plan.amount-mass");
    }

    /** A limit whose slack a measure of the first supply lowers by a half, one of the second by eight. */
    private static List<String> bindingWithSlack(double slack) {
        PlanRow row = new PlanRow("plan.ion-high", "Ca", "/ions/calcium/high", 50, slack, new double[] {-0.5, -8}, -1);
        PlanSpace space = space(PlanQuestions.salt("gypsum", 0.5, 20), PlanQuestions.salt("epsom-salt", 0.5, 20))
                .withWants(List.of(row));
        return binding(space, 2, 0);
    }

    @Test
    void aRangeBindsWhereOneMoreStepOfWhatIsUsedPassesItsEnd() {
        assertThat(bindingWithSlack(0.5)).as("at its end").containsExactly("plan.ion-high");
        assertThat(bindingWithSlack(0.625)).as("half a step before it").containsExactly("plan.ion-high");
        assertThat(bindingWithSlack(0.75)).as("a whole step before it").isEmpty();
        assertThat(bindingWithSlack(0.25)).as("passed already").isEmpty();
    }

    private static double nearest(PlanSpace space) {
        PlanSearch search = new PlanSearch(space);
        return Math.min(
                RelaxedPlan.nearest(space, search.side(PlanSupply.Role.ACID)).beyond(),
                RelaxedPlan.nearest(space, search.side(PlanSupply.Role.BASE)).beyond());
    }

    private static PlanSpace with(PlanSpace space, PlanSupply more) {
        PlanQuestion question = space.question();
        List<PlanSupply> supplies = new ArrayList<>(question.supplies());
        supplies.add(more);
        return space(new PlanQuestion(
                question.mash(),
                question.water(),
                question.aim(),
                supplies,
                question.wants(),
                question.mostLactateMgPerL()));
    }

    private static boolean has(PlanSpace space, PlanSupply.Role role) {
        for (int i = 0; i < space.size(); i++) {
            if (space.question().supplies().get(i).role() == role && space.most()[i] > 0) {
                return true;
            }
        }
        return false;
    }

    private static boolean isChalk(PlanSupply supply) {
        return supply.id().equals("calcium-carbonate");
    }

    /** Each limit given up, by code and pointer. */
    private static Map<String, PlanSpace> without(PlanSpace space) {
        PlanQuestion question = space.question();
        double litres = question.mash().liquor().volume().litres();
        Map<String, PlanSpace> without = new LinkedHashMap<>();
        for (int i = 0; i < space.size(); i++) {
            PlanSupply supply = question.supplies().get(i);
            double[] more = space.most().clone();
            if (supply instanceof PlanSupply.OfWater) {
                more[i] = litres;
            } else if (supply instanceof PlanSupply.OfMalt) {
                more[i] += question.mash().grist().kilograms() / 10;
            } else if (!isChalk(supply) || supply.most() - space.most()[i] < supply.step()) {
                more[i] = 100 * litres / supply.millimolesPerUnit();
            }
            without.put(supply.limitCode() + supply.limitPointer(), space.withMost(more));
        }
        without.put(
                "plan.lactate/mostLactate", space.withLactate(space.lactate().lifted()));
        for (PlanRow want : space.wants()) {
            List<PlanRow> others = new ArrayList<>(space.wants());
            others.remove(want);
            without.put(want.code() + want.pointer(), space.withWants(others));
        }
        PhAim aim = question.aim();
        without.put("plan.ph-low/lowPh", space.withAim(new PhAim(aim.targetPh(), 4, aim.highPh())));
        without.put("plan.ph-high/highPh", space.withAim(new PhAim(aim.targetPh(), aim.lowPh(), 7.5)));
        if (!has(space, PlanSupply.Role.ACID)) {
            AcidProduct acid = AcidProduct.of(Acids.get("phosphoric"), Strength.percent(10));
            without.put(
                    "plan.no-acid/atHand/acids",
                    with(space, new PlanSupply.OfAcid("/atHand/acids", acid, 0.1, 100 * litres)));
        }
        if (!has(space, PlanSupply.Role.BASE)) {
            without.put(
                    "plan.no-base/atHand/bases",
                    with(
                            space,
                            new PlanSupply.OfSalt("/atHand/bases", Salts.get("sodium-bicarbonate"), 0.1, 8 * litres)));
        }
        if (!has(space, PlanSupply.Role.WATER)) {
            without.put(
                    "plan.no-water/atHand/dilutingWater",
                    with(space, new PlanSupply.OfWater("/atHand/dilutingWater", Water.distilled(), 0.1, litres)));
        }
        return without;
    }

    private static String key(PlanObstacle obstacle) {
        return obstacle.limit().code() + obstacle.limit().pointer();
    }

    @Test
    void aLimitIsNamedExactlyWhereGivingItUpTells() {
        int named = 0;
        int little = 0;
        for (int seed = 0; seed < 60; seed++) {
            PlanSpace space = space(PlanQuestions.random(new SplittableRandom(seed)));
            StepPlan best = PlanAnswer.best(space);
            double now = nearest(space);
            if (now < 1e-5) {
                continue;
            }
            double telling = now * (1 - TELLING) - 1e-6;
            Map<String, Double> tell = new LinkedHashMap<>();
            for (Map.Entry<String, PlanSpace> limit : without(space).entrySet()) {
                double then = nearest(limit.getValue());
                if (then < telling
                        && (now - then >= LITTLE
                                || PlanAnswer.best(limit.getValue()).total() < best.total() - 1e-6)) {
                    tell.put(limit.getKey(), then);
                    little += now - then < LITTLE ? 1 : 0;
                }
            }
            boolean[] all = new boolean[space.size()];
            Arrays.fill(all, true);
            double together = RelaxedPlan.nearest(space, all).beyond();
            if (together < telling) {
                tell.put("plan.acid-and-base/atHand", together);
            }
            List<PlanObstacle> obstacles = PlanLimits.obstacles(
                    space, MashPrediction.of(space.question().mash()), best);
            assertThat(obstacles.stream().map(PlanLimitsTest::key))
                    .as("seed %s", seed)
                    .containsExactlyInAnyOrderElementsOf(tell.keySet());
            for (PlanObstacle obstacle : obstacles) {
                named++;
                assertThat(obstacle.now()).isCloseTo(now, within(1e-9));
                assertThat(obstacle.without()).isCloseTo(requireNonNull(tell.get(key(obstacle))), within(1e-9));
            }
        }
        assertThat(named).isGreaterThan(100);
        assertThat(little).as("where whole steps decide").isPositive();
    }

    @Test
    void whatIsEnoughAloneComesFirst() {
        int ofBothKinds = 0;
        for (int seed = 0; seed < 60; seed++) {
            PlanAnswer answer = PlanAnswer.of(PlanQuestions.random(new SplittableRandom(seed)));
            List<Boolean> alone =
                    answer.obstacles().stream().map(PlanObstacle::enoughAlone).toList();
            assertThat(alone).isSortedAccordingTo(Comparator.reverseOrder());
            ofBothKinds += alone.contains(true) && alone.contains(false) ? 1 : 0;
        }
        assertThat(ofBothKinds).isGreaterThan(5);
    }

    private static double beyond(StepPlan plan) {
        PlanScore score = requireNonNull(plan.score());
        return score.phBeyond() + score.ionsBeyond();
    }

    @Test
    void aScaleIsNamedWhereAFinerOneComesNearer() {
        int named = 0;
        for (int seed : new int[] {51, 62, 97, 110, 139}) {
            PlanQuestion question = PlanQuestions.random(new SplittableRandom(seed));
            for (int i = 0; i < question.supplies().size(); i++) {
                PlanSupply supply = question.supplies().get(i);
                question = question.withSupply(i, supply.withStep(10 * supply.step()));
            }
            MashPrediction before = MashPrediction.of(question.mash());
            StepPlan best = PlanAnswer.best(PlanSpace.of(question, before));
            List<PlanObstacle> obstacles = PlanLimits.obstacles(PlanSpace.of(question, before), before, best);
            for (String scale : List.of("/steps/syringe", "/steps/scale", "/steps/maltScale", "/steps/jug")) {
                PlanQuestion finer = question;
                for (int i = 0; i < question.supplies().size(); i++) {
                    PlanSupply supply = question.supplies().get(i);
                    if (supply.stepPointer().equals(scale)) {
                        finer = finer.withSupply(i, supply.withStep(supply.step() / 100));
                    }
                }
                double then = beyond(PlanAnswer.best(PlanSpace.of(finer, before)));
                Optional<PlanObstacle> obstacle = obstacles.stream()
                        .filter(one -> one.limit().pointer().equals(scale))
                        .findFirst();
                assertThat(obstacle.isPresent()).as("seed %s: %s", seed, scale).isEqualTo(then < 0.98 * beyond(best));
                if (obstacle.isPresent()) {
                    named++;
                    assertThat(obstacle.get().now()).isEqualTo(beyond(best));
                    assertThat(obstacle.get().without()).isEqualTo(then);
                }
            }
        }
        assertThat(named).isGreaterThan(5);
    }

    /** A question whose only supply shifts everything too far even in steps a hundred times finer. */
    private static List<PlanObstacle> tooStrong(PhAim aim, PlanSupply supply, IonWant... wants) {
        return PlanAnswer.of(new PlanQuestion(
                        PlanQuestions.mash(18, WATER, PlanQuestions.part(Malt.of("pale"), 5)),
                        WATER,
                        aim,
                        List.of(supply),
                        List.of(wants),
                        400))
                .obstacles();
    }

    @Test
    void whereNothingElseTellsTheEndThatIsPassedIsNamed() {
        double ph = PlanQuestions.mash(18, WATER, PlanQuestions.part(Malt.of("pale"), 5))
                .ph();
        PlanSupply acid = PlanQuestions.acid("hydrochloric", 30, 100, 100);
        PlanSupply base = PlanQuestions.salt("calcium-hydroxide", 100, 100);
        PlanSupply gypsum = PlanQuestions.salt("gypsum", 100, 100);
        PlanObstacle high =
                tooStrong(new PhAim(ph - 0.012, ph - 0.022, ph - 0.002), acid).get(0);
        assertThat(high.limit().code()).isEqualTo("plan.ph-high");
        assertThat(high.limit().pointer()).isEqualTo("/highPh");
        assertThat(high.limit().observed().orElseThrow()).isCloseTo(ph, within(2e-5));
        assertThat(high.limit().expected().orElseThrow()).isEqualTo(ph - 0.002);
        assertThat(high.now()).isCloseTo(0.002, within(2e-5));
        assertThat(high.enoughAlone()).isTrue();
        PlanObstacle low =
                tooStrong(new PhAim(ph + 0.012, ph + 0.002, ph + 0.022), base).get(0);
        assertThat(low.limit().code()).isEqualTo("plan.ph-low");
        assertThat(low.limit().pointer()).isEqualTo("/lowPh");
        assertThat(low.limit().expected().orElseThrow()).isEqualTo(ph + 0.002);
        assertThat(low.now()).isCloseTo(0.002, within(2e-5));
        List<PlanObstacle> ion =
                tooStrong(new PhAim(ph, ph - 0.1, ph + 0.1), gypsum, PlanQuestions.want(Ion.CALCIUM, 48.2, 48.4));
        assertThat(ion).hasSize(1);
        assertThat(ion.get(0).limit().pointer()).isEqualTo("/ions/Ca/low");
        assertThat(ion.get(0).now()).isCloseTo(0.2 / 48.2, within(1e-6));
        assertThat(ion.get(0).without()).isZero();
    }
}

package tunside.mash.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import tunside.mash.Addition;
import tunside.mash.Grist;
import tunside.mash.GristPart;
import tunside.mash.Liquor;
import tunside.mash.Mash;
import tunside.mash.MashPrediction;
import tunside.quantity.Mass;
import tunside.quantity.Volume;
import tunside.water.Water;
import tunside.water.WaterPart;

/** Laws of every plan, on 240 questions that chance made. */
class PlanPropertiesTest {
    private static final int QUESTIONS = 240;
    private static List<PlanAnswer> answers;

    private static PlanQuestion question(int seed) {
        return PlanQuestions.random(new SplittableRandom(seed));
    }

    @BeforeAll
    static void answerAll() {
        answers = IntStream.range(0, QUESTIONS)
                .mapToObj(seed -> PlanAnswer.of(question(seed)))
                .toList();
    }

    private static List<MashPlan> plans() {
        List<MashPlan> plans = new ArrayList<>();
        for (PlanAnswer answer : answers) {
            plans.add(answer.best());
            plans.addAll(answer.alternatives());
        }
        return plans;
    }

    private static double beyond(MashPlan plan) {
        return plan.score().phBeyond() + plan.score().ionsBeyond();
    }

    @Test
    void theQuestionsAreOfEveryKind() {
        assertThat(answers.stream().map(PlanAnswer::result).distinct()).hasSize(3);
        assertThat(answers.stream().filter(answer -> answer.result() == PlanAnswer.Result.PLAN))
                .hasSizeGreaterThan(60);
        assertThat(answers.stream().filter(answer -> answer.result() == PlanAnswer.Result.NEAREST_REACHABLE))
                .hasSizeGreaterThan(60);
    }

    @Test
    void everyAmountIsWholeStepsWithinItsLimit() {
        for (MashPlan plan : plans()) {
            for (PlannedAmount addition : plan.additions()) {
                double steps = addition.amount() / addition.supply().step();
                assertThat(steps).isCloseTo(Math.rint(steps), within(1e-6));
                assertThat(addition.amount())
                        .isPositive()
                        .isLessThanOrEqualTo(addition.supply().most() + 1e-9);
            }
        }
    }

    @Test
    void lactateIsNeverRaisedBeyondWhatIsAccepted() {
        for (PlanAnswer answer : answers) {
            double before =
                    MashPlan.asItIs(answer.best().question(), answer.before()).mgPerL("lactate");
            assertThat(answer.best().mgPerL("lactate"))
                    .isLessThanOrEqualTo(
                            Math.max(before, answer.best().question().mostLactateMgPerL()) + 1e-6);
        }
    }

    @Test
    void acidAndBaseNeverGoInTogether() {
        for (MashPlan plan : plans()) {
            boolean acid = plan.question().hasAcid();
            boolean base = plan.question().hasBase();
            for (PlannedAmount addition : plan.additions()) {
                acid |= addition.supply().role() == PlanSupply.Role.ACID;
                base |= addition.supply().role() == PlanSupply.Role.BASE;
            }
            assertThat(acid && base).isFalse();
        }
    }

    /** The mash of a plan, made by hand. */
    private static Mash made(MashPlan plan) {
        Mash before = plan.question().mash();
        double litres = before.liquor().volume().litres();
        List<GristPart> parts = new ArrayList<>(before.grist().parts());
        List<Addition> additions = new ArrayList<>(before.additions());
        Liquor liquor = before.liquor();
        for (PlannedAmount addition : plan.additions()) {
            PlanSupply supply = addition.supply();
            if (supply instanceof PlanSupply.OfAcid acid) {
                additions.add(acid.addition(addition.amount()));
            } else if (supply instanceof PlanSupply.OfSalt salt) {
                additions.add(salt.addition(addition.amount()));
            } else if (supply instanceof PlanSupply.OfMalt malt) {
                parts.add(new GristPart(malt.malt(), new Mass(addition.amount())));
            } else if (supply instanceof PlanSupply.OfWater water) {
                liquor = Liquor.of(
                        new Volume(litres),
                        Water.blend(List.of(
                                new WaterPart(
                                        new Volume(litres - addition.amount()),
                                        plan.question().water()),
                                new WaterPart(new Volume(addition.amount()), water.water()))));
            }
        }
        return new Mash(new Grist(parts), liquor, additions, before.conditions(), before.model());
    }

    @Test
    void thePredictionIsThatOfThePlannedMash() {
        for (MashPlan plan : plans()) {
            MashPrediction fresh = MashPrediction.of(made(plan));
            assertThat(plan.prediction().ph()).isEqualTo(fresh.ph());
            assertThat(plan.prediction().standardUncertainty()).isEqualTo(fresh.standardUncertainty());
        }
    }

    @Test
    void aPlanThatMeetsAllReallyDoes() {
        for (PlanAnswer answer : answers) {
            boolean met = answer.best()
                                    .question()
                                    .aim()
                                    .beyond(answer.best().prediction().ph())
                            <= 1e-7
                    && WantedValue.of(answer).stream().allMatch(WantedValue::met);
            assertThat(met).isEqualTo(answer.result() != PlanAnswer.Result.NEAREST_REACHABLE);
            assertThat(answer.obstacles().isEmpty()).isEqualTo(met);
        }
    }

    @Test
    void theSameQuestionHasTheSameAnswer() {
        for (int seed = 0; seed < 60; seed++) {
            PlanAnswer again = PlanAnswer.of(question(seed));
            assertThat(again.best().additions())
                    .isEqualTo(answers.get(seed).best().additions());
            assertThat(again.best().score()).isEqualTo(answers.get(seed).best().score());
            assertThat(again.binding()).isEqualTo(answers.get(seed).binding());
            assertThat(again.obstacles()).isEqualTo(answers.get(seed).obstacles());
            assertThat(again.alternatives().stream().map(MashPlan::additions).toList())
                    .isEqualTo(answers.get(seed).alternatives().stream()
                            .map(MashPlan::additions)
                            .toList());
        }
    }

    @Test
    void noAlternativeIsBetterThanThePlan() {
        for (PlanAnswer answer : answers) {
            double last = answer.best().score().total() - 1e-3;
            for (MashPlan alternative : answer.alternatives()) {
                assertThat(alternative.score().total()).isGreaterThanOrEqualTo(last);
                assertThat(alternative.setters()).hasSize(1);
                last = alternative.score().total();
            }
        }
    }

    @Test
    void aWiderLimitNeverMakesThePlanWorse() {
        for (int seed = 0; seed < QUESTIONS; seed++) {
            PlanQuestion question = question(seed);
            int index = seed % question.supplies().size();
            PlanSupply supply = question.supplies().get(index);
            if (supply instanceof PlanSupply.OfWater || supply instanceof PlanSupply.OfMalt) {
                continue;
            }
            PlanAnswer wider = PlanAnswer.of(question.withSupply(index, supply.withMost(2 * supply.most())));
            assertThat(wider.best().score().total())
                    .as("seed %s", seed)
                    .isLessThanOrEqualTo(answers.get(seed).best().score().total() * (1 + 1e-6) + 1e-3);
        }
    }

    @Test
    void aRangeGivenUpNeverMakesThePlanWorse() {
        for (int seed = 0; seed < QUESTIONS; seed++) {
            PlanQuestion question = question(seed);
            if (question.wants().isEmpty()) {
                continue;
            }
            List<IonWant> fewer = new ArrayList<>(question.wants());
            fewer.remove(seed % fewer.size());
            PlanAnswer wider = PlanAnswer.of(new PlanQuestion(
                    question.mash(),
                    question.water(),
                    question.aim(),
                    question.supplies(),
                    fewer,
                    question.mostLactateMgPerL()));
            assertThat(wider.best().score().total())
                    .as("seed %s", seed)
                    .isLessThanOrEqualTo(answers.get(seed).best().score().total() * (1 + 1e-6) + 1e-3);
        }
    }

    /** Gives up the limit that an obstacle names, as a brewer would, and asks again. */
    private static PlanQuestion without(PlanQuestion question, String pointer) {
        List<PlanSupply> supplies = new ArrayList<>(question.supplies());
        for (int i = 0; i < supplies.size(); i++) {
            PlanSupply supply = supplies.get(i);
            if (supply.limitPointer().equals(pointer)) {
                double litres = question.mash().liquor().volume().litres();
                double more = supply instanceof PlanSupply.OfWater
                        ? litres
                        : supply instanceof PlanSupply.OfMalt
                                ? 0.5 * question.mash().grist().kilograms()
                                : 100 * litres / supply.millimolesPerUnit();
                supplies.set(i, supply.withMost(more));
            }
        }
        List<IonWant> wants = question.wants().stream()
                .filter(want -> !pointer.startsWith(want.pointer() + "/"))
                .toList();
        double lactate = pointer.equals("/mostLactate") ? 1e6 : question.mostLactateMgPerL();
        PhAim aim = question.aim();
        double low = pointer.equals("/lowPh") ? 4 : aim.lowPh();
        double high = pointer.equals("/highPh") ? 7.5 : aim.highPh();
        return new PlanQuestion(
                question.mash(), question.water(), new PhAim(aim.targetPh(), low, high), supplies, wants, lactate);
    }

    @Test
    void whatStandsInTheWayReallyDoes() {
        int tried = 0;
        for (PlanAnswer answer : answers) {
            PlanQuestion question = answer.best().question();
            for (PlanObstacle obstacle : answer.obstacles()) {
                assertThat(obstacle.without()).isLessThan(obstacle.now());
                String pointer = obstacle.limit().pointer();
                boolean ranges = pointer.startsWith("/ions") || pointer.endsWith("Ph");
                boolean limits = pointer.endsWith("/most") || pointer.endsWith("/mostPercent");
                if (ranges || limits || pointer.equals("/mostLactate")) {
                    tried++;
                    MashPlan after = PlanAnswer.of(without(question, pointer)).best();
                    assertThat(after.score().total())
                            .as("%s", obstacle)
                            .isLessThan(answer.best().score().total());
                    if (obstacle.enoughAlone()) {
                        assertThat(beyond(after)).as("%s", obstacle).isLessThan(0.1 * beyond(answer.best()) + 0.02);
                    }
                }
            }
        }
        assertThat(tried).isGreaterThan(150);
    }
}

package tunside.mash.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import tunside.chemistry.Ion;
import tunside.finding.Finding;
import tunside.finding.Outcome;
import tunside.mash.Malt;
import tunside.mash.Mash;
import tunside.water.Water;

class PlanAnswerTest {
    private static final Water TAP = PlanQuestions.water(48, 9, 16, 28, 35, 3.4);
    private static final Water SOFT = PlanQuestions.water(14, 2, 7, 10, 14, 0.5);
    private static final PhAim AIM = new PhAim(5.4, 5.3, 5.5);

    private static Mash pale(Water water) {
        return PlanQuestions.mash(18, water, PlanQuestions.part(Malt.of("pale"), 5));
    }

    private static Mash dark(Water water) {
        return PlanQuestions.mash(
                18,
                water,
                PlanQuestions.part(Malt.of("pale"), 3),
                PlanQuestions.part(Malt.of("roasted"), 1.4),
                PlanQuestions.part(Malt.of("caramel", 150), 0.6));
    }

    private static PlanAnswer ask(Mash mash, Water water, List<PlanSupply> supplies, IonWant... wants) {
        return PlanAnswer.of(new PlanQuestion(mash, water, AIM, supplies, List.of(wants), 400));
    }

    private static List<String> codes(List<Finding> findings) {
        return findings.stream().map(Finding::code).toList();
    }

    private static List<String> obstacles(PlanAnswer answer) {
        return answer.obstacles().stream()
                .map(obstacle -> obstacle.limit().code())
                .toList();
    }

    private static List<String> ids(MashPlan plan) {
        return plan.additions().stream().map(one -> one.supply().id()).toList();
    }

    @Test
    void anAcidAloneIsDosedToTheStepNearestTheTarget() {
        PlanSupply acid = PlanQuestions.acid("phosphoric", 10, 0.5, 200);
        PlanAnswer answer = ask(pale(TAP), TAP, List.of(acid));
        assertThat(answer.result()).isEqualTo(PlanAnswer.Result.PLAN);
        assertThat(ids(answer.best())).containsExactly("phosphoric");
        double amount = answer.best().amountOf(acid);
        double here = Math.abs(answer.best().prediction().ph() - 5.4);
        assertThat(here).isLessThan(0.002);
        for (double other : new double[] {amount - 0.5, amount + 0.5}) {
            assertThat(Math.abs(
                            answer.best().question().with(new double[] {other}).ph() - 5.4))
                    .isGreaterThan(here);
        }
        assertThat(answer.binding()).isEmpty();
        assertThat(answer.obstacles()).isEmpty();
        assertThat(answer.alternatives()).isEmpty();
        assertThat(answer.before().ph()).isCloseTo(pale(TAP).ph(), within(1e-12));
    }

    @Test
    void aMashThatDoesAsItIsNeedsNothing() {
        double ph = pale(SOFT).ph();
        PlanAnswer answer = PlanAnswer.of(new PlanQuestion(
                pale(SOFT),
                SOFT,
                new PhAim(ph + 0.02, ph - 0.1, ph + 0.14),
                List.of(PlanQuestions.acid("lactic", 80, 0.5, 20)),
                List.of(),
                400));
        assertThat(answer.result()).isEqualTo(PlanAnswer.Result.NONE_NEEDED);
        assertThat(answer.best().additions()).isEmpty();
        assertThat(answer.best().setters()).isEmpty();
        assertThat(FirstPart.of(answer.best())).isEmpty();
    }

    @Test
    void aDarkMashTakesBaseAndNoAcid() {
        PlanAnswer answer = ask(
                dark(SOFT),
                SOFT,
                List.of(
                        PlanQuestions.acid("lactic", 80, 0.5, 20),
                        PlanQuestions.salt("sodium-bicarbonate", 0.1, 20),
                        PlanQuestions.salt("calcium-hydroxide", 0.1, 20)));
        assertThat(answer.before().ph()).isLessThan(5.35);
        assertThat(answer.result()).isEqualTo(PlanAnswer.Result.PLAN);
        assertThat(ids(answer.best())).containsExactly("sodium-bicarbonate");
        assertThat(answer.alternatives()).hasSize(1);
        assertThat(ids(answer.alternatives().get(0))).containsExactly("calcium-hydroxide");
    }

    @Test
    void saltsBringTheIonsAndAcidThePh() {
        PlanSupply gypsum = PlanQuestions.salt("gypsum", 0.1, 50);
        PlanSupply chloride = PlanQuestions.salt("calcium-chloride-dihydrate", 0.1, 50);
        PlanAnswer answer = ask(
                pale(TAP),
                TAP,
                List.of(PlanQuestions.acid("phosphoric", 10, 0.5, 200), gypsum, chloride),
                PlanQuestions.want(Ion.SULFATE, 80, 150),
                PlanQuestions.want(Ion.CHLORIDE, 50, 100));
        assertThat(answer.result()).isEqualTo(PlanAnswer.Result.PLAN);
        assertThat(ids(answer.best())).containsExactlyInAnyOrder("phosphoric", "gypsum", "calcium-chloride-dihydrate");
        assertThat(answer.best().mgPerL("SO4")).isBetween(80.0, 83.2);
        assertThat(answer.best().mgPerL("Cl")).isBetween(50.0, 52.7);
        assertThat(codes(answer.binding())).contains("plan.ion-low");
        List<WantedValue> wanted = WantedValue.of(answer);
        assertThat(wanted.get(0).before()).hasValueCloseTo(35.0, within(1e-6));
        assertThat(wanted.get(0).after().orElseThrow()).isEqualTo(answer.best().mgPerL("SO4"));
        assertThat(wanted).allMatch(WantedValue::met);
        assertThat(wanted.get(1).finding().outcome()).isEqualTo(Outcome.PASS);
    }

    @Test
    void dilutionBringsIonsDown() {
        PlanSupply water = PlanQuestions.distilled(18, 0.8);
        PlanAnswer answer = ask(
                pale(TAP),
                TAP,
                List.of(PlanQuestions.acid("phosphoric", 10, 0.5, 200), water),
                IonWant.of(
                        IonWant.Kind.ALKALINITY, OptionalDouble.empty(), OptionalDouble.of(1.7), "/ions/alkalinity"));
        assertThat(answer.result()).isEqualTo(PlanAnswer.Result.PLAN);
        assertThat(answer.best().amountOf(water)).isEqualTo(9);
        assertThat(answer.best().mash().liquor().alkalinityMeqPerL())
                .isCloseTo(pale(TAP).liquor().alkalinityMeqPerL() * 9 / 18, within(1e-9));
        assertThat(codes(answer.binding())).contains("plan.alkalinity-high");
    }

    @Test
    void acidulatedMaltServesUpToItsShare() {
        PlanSupply.OfMalt malt = PlanQuestions.acidulated(5, 0.02);
        PlanAnswer answer = ask(pale(TAP), TAP, List.of(malt));
        assertThat(answer.result()).isEqualTo(PlanAnswer.Result.NEAREST_REACHABLE);
        assertThat(answer.best().amountOf(malt)).isEqualTo(0.10);
        assertThat(codes(answer.binding())).contains("plan.acidulated-share");
        assertThat(obstacles(answer)).contains("plan.acidulated-share", "plan.ph-high", "plan.no-water");
        Finding share = answer.binding().get(0);
        assertThat(share.observed().orElseThrow()).isCloseTo(100 * 0.1 / 5.1, within(1e-9));
        assertThat(share.expected().orElseThrow()).isCloseTo(2, within(1e-9));
        assertThat(share.pointer()).isEqualTo("/atHand/acidulatedMalt/mostPercent");
        assertThat(FirstPart.of(answer.best())).isEmpty();
    }

    @Test
    void tooLittleAcidIsNamed() {
        PlanSupply acid = PlanQuestions.acid("phosphoric", 10, 0.5, 20.3);
        PlanAnswer answer = ask(pale(TAP), TAP, List.of(acid));
        assertThat(answer.result()).isEqualTo(PlanAnswer.Result.NEAREST_REACHABLE);
        assertThat(answer.best().amountOf(acid)).isEqualTo(20);
        assertThat(codes(answer.binding())).containsExactly("plan.amount-volume");
        PlanObstacle first = answer.obstacles().get(0);
        assertThat(first.limit().code()).isEqualTo("plan.amount-volume");
        assertThat(first.limit().pointer()).isEqualTo("/atHand/acids/phosphoric/most");
        assertThat(first.limit().expected()).hasValue(20.3);
        assertThat(first.enoughAlone()).isTrue();
        assertThat(first.now()).isCloseTo(answer.best().prediction().ph() - 5.5, within(0.02));
        assertThat(codes(PlanChecks.of(answer))).contains("plan.ph", "plan.probability");
        assertThat(outcome(PlanChecks.of(answer), "plan.ph")).isEqualTo(Outcome.CAUTION);
    }

    private static Outcome outcome(List<Finding> findings, String code) {
        return findings.stream()
                .filter(finding -> finding.code().equals(code))
                .findFirst()
                .orElseThrow()
                .outcome();
    }

    @Test
    void lactateIsNeverPassed() {
        PlanSupply acid = PlanQuestions.acid("lactic", 80, 0.5, 100);
        PlanAnswer answer = PlanAnswer.of(new PlanQuestion(pale(TAP), TAP, AIM, List.of(acid), List.of(), 150));
        assertThat(answer.result()).isEqualTo(PlanAnswer.Result.NEAREST_REACHABLE);
        assertThat(answer.best().mgPerL("lactate")).isBetween(126.0, 150.0);
        assertThat(codes(answer.binding())).containsExactly("plan.lactate");
        assertThat(obstacles(answer)).contains("plan.lactate").doesNotContain("plan.amount-volume");
        assertThat(outcome(PlanChecks.of(answer), "plan.lactate-accepted")).isEqualTo(Outcome.PASS);
    }

    @Test
    void twoAcidsServeWhereOneAloneIsNotEnough() {
        PlanSupply lactic = PlanQuestions.acid("lactic", 80, 0.5, 3);
        PlanSupply phosphoric = PlanQuestions.acid("phosphoric", 10, 0.5, 60);
        PlanAnswer answer = ask(pale(TAP), TAP, List.of(lactic, phosphoric));
        assertThat(answer.result()).isEqualTo(PlanAnswer.Result.PLAN);
        assertThat(ids(answer.best())).containsExactly("lactic", "phosphoric");
        assertThat(answer.best().setters()).hasSize(2);
        assertThat(answer.best().prediction().ph()).isCloseTo(5.4, within(0.03));
        assertThat(answer.alternatives()).hasSize(2);
        assertThat(answer.alternatives()).noneMatch(plan -> plan.score().meetsAll());
        assertThat(FirstPart.of(answer.best())).isEmpty();
    }

    @Test
    void withoutAnythingThatLowersThePhItSaysSo() {
        PlanAnswer answer = ask(pale(TAP), TAP, List.of(PlanQuestions.salt("sodium-bicarbonate", 0.1, 20)));
        assertThat(answer.best().additions()).isEmpty();
        assertThat(obstacles(answer)).contains("plan.no-acid", "plan.no-water").doesNotContain("plan.no-base");
        assertThat(answer.obstacles().get(0).enoughAlone()).isTrue();
    }

    @Test
    void withoutAnythingThatRaisesThePhItSaysSo() {
        PlanAnswer answer = ask(dark(SOFT), SOFT, List.of(PlanQuestions.acid("lactic", 80, 0.5, 20)));
        assertThat(answer.best().additions()).isEmpty();
        assertThat(obstacles(answer)).contains("plan.no-base", "plan.ph-low").doesNotContain("plan.no-acid");
    }

    @Test
    void acidAlreadyInTheMashForbidsABase() {
        Mash sour = dark(SOFT).plus(PlanQuestions.acid("lactic", 80, 0.5, 20).addition(1));
        PlanAnswer answer = ask(sour, SOFT, List.of(PlanQuestions.salt("sodium-bicarbonate", 0.1, 20)));
        assertThat(answer.best().additions()).isEmpty();
        assertThat(obstacles(answer)).contains("plan.acid-and-base");
        assertThat(codes(PlanChecks.of(answer))).contains("plan.acid-in-mash").doesNotContain("plan.base-in-mash");
        Mash soda =
                pale(TAP).plus(PlanQuestions.salt("sodium-bicarbonate", 0.1, 20).addition(2));
        PlanAnswer other = ask(soda, TAP, List.of(PlanQuestions.acid("lactic", 80, 0.5, 20)));
        assertThat(other.best().additions()).isEmpty();
        assertThat(codes(PlanChecks.of(other))).contains("plan.base-in-mash");
    }

    @Test
    void coarseStepsAreNamed() {
        PlanSupply acid = PlanQuestions.acid("lactic", 80, 5, 50);
        PlanAnswer answer = PlanAnswer.of(
                new PlanQuestion(pale(TAP), TAP, new PhAim(5.44, 5.43, 5.45), List.of(acid), List.of(), 1000));
        assertThat(answer.result()).isEqualTo(PlanAnswer.Result.NEAREST_REACHABLE);
        assertThat(obstacles(answer)).containsExactly("plan.step");
        Finding step = answer.obstacles().get(0).limit();
        assertThat(step.pointer()).isEqualTo("/steps/syringe");
        assertThat(step.expected()).hasValue(5);
        assertThat(answer.obstacles().get(0).enoughAlone()).isTrue();
    }

    @Test
    void anIonThatNothingBringsIsNamed() {
        PlanAnswer answer = ask(
                pale(TAP),
                TAP,
                List.of(PlanQuestions.acid("phosphoric", 10, 0.5, 200), PlanQuestions.salt("gypsum", 0.1, 20)),
                PlanQuestions.want(Ion.MAGNESIUM, 20, 30));
        assertThat(answer.best().prediction().ph()).isCloseTo(5.4, within(0.01));
        assertThat(obstacles(answer)).containsExactly("plan.ion-low");
        Finding limit = answer.obstacles().get(0).limit();
        assertThat(limit.pointer()).isEqualTo("/ions/Mg/low");
        assertThat(limit.observed().orElseThrow()).isCloseTo(9, within(1e-6));
        assertThat(limit.expected()).hasValue(20);
        assertThat(limit.outcome()).isEqualTo(Outcome.CAUTION);
        Finding wanted = WantedValue.of(answer).get(0).finding();
        assertThat(wanted.outcome()).isEqualTo(Outcome.CAUTION);
        assertThat(wanted.subject()).isEqualTo("Mg (mg/L)");
        assertThat(wanted.expected()).hasValue(20);
    }

    @Test
    void tooMuchOfAnIonAsksForWater() {
        PlanAnswer answer = ask(
                pale(TAP),
                TAP,
                List.of(PlanQuestions.acid("phosphoric", 10, 0.5, 200), PlanQuestions.distilled(18, 0.2)),
                PlanQuestions.want(Ion.SODIUM, 0, 8));
        assertThat(obstacles(answer))
                .contains("plan.dilution-share", "plan.ion-high")
                .doesNotContain("plan.no-water");
        assertThat(codes(answer.binding())).contains("plan.dilution-share");
        Finding wanted = WantedValue.of(answer).get(0).finding();
        assertThat(wanted.expected()).hasValue(8);
        Finding share = answer.binding().get(0);
        assertThat(share.observed().orElseThrow()).isCloseTo(100 * 3.5 / 18, within(1e-9));
        assertThat(share.expected().orElseThrow()).isCloseTo(20, within(1e-9));
    }

    @Test
    void chalkAtItsLimitIsNoMatterOfMore() {
        PlanSupply chalk = PlanQuestions.salt("calcium-carbonate", 0.1, 100);
        PlanAnswer answer = PlanAnswer.of(
                new PlanQuestion(dark(SOFT), SOFT, new PhAim(5.9, 5.85, 5.95), List.of(chalk), List.of(), 400));
        assertThat(answer.result()).isEqualTo(PlanAnswer.Result.NEAREST_REACHABLE);
        assertThat(answer.best().amountOf(chalk)).isCloseTo(9, within(1e-9));
        assertThat(codes(answer.binding())).containsExactly("plan.chalk");
        assertThat(answer.binding().get(0).expected().orElseThrow()).isCloseTo(9, within(1e-9));
        assertThat(obstacles(answer))
                .doesNotContain("plan.amount-mass", "plan.chalk")
                .contains("plan.ph-low");
    }

    @Test
    void theProbabilityIsThatOfANormalDistribution() {
        MashPlan plan = ask(pale(TAP), TAP, List.of(PlanQuestions.acid("phosphoric", 10, 0.5, 200)))
                .best();
        double u = plan.prediction().standardUncertainty();
        double half = 0.1 / u;
        assertThat(plan.probabilityBelow() + plan.probabilityInRange() + plan.probabilityAbove())
                .isCloseTo(1, within(1e-12));
        assertThat(plan.probabilityBelow()).isCloseTo(plan.probabilityAbove(), within(0.02));
        double expected = new org.hipparchus.distribution.continuous.NormalDistribution().probability(-half, half);
        assertThat(plan.probabilityInRange()).isCloseTo(expected, within(0.002));
        assertThat(outcome(PlanChecks.of(PlanAnswer.of(plan.question())), "plan.probability"))
                .isEqualTo(Outcome.NOTE);
        PlanAnswer wide = PlanAnswer.of(new PlanQuestion(
                pale(TAP),
                TAP,
                new PhAim(5.4, 4.8, 6),
                List.of(PlanQuestions.acid("phosphoric", 10, 0.5, 200)),
                List.of(),
                400));
        assertThat(outcome(PlanChecks.of(wide), "plan.probability")).isEqualTo(Outcome.PASS);
        assertThat(outcome(PlanChecks.of(wide), "plan.ph")).isEqualTo(Outcome.PASS);
    }

    @Test
    void theFirstPartIsTheMostThatIsSafe() {
        PlanSupply acid = PlanQuestions.acid("phosphoric", 10, 0.5, 200);
        MashPlan plan = ask(pale(TAP), TAP, List.of(acid)).best();
        FirstPart part = FirstPart.of(plan).orElseThrow();
        assertThat(part.supply()).isEqualTo(acid);
        assertThat(part.amount()).isPositive().isLessThan(plan.amountOf(acid));
        MashPlan safe = plan.withAmounts(new double[] {part.amount()});
        MashPlan more = plan.withAmounts(new double[] {part.amount() + 0.5});
        assertThat(safe.probabilityBelow()).isLessThanOrEqualTo(0.05);
        assertThat(more.probabilityBelow()).isGreaterThan(0.05);
        assertThat(part.ph()).isEqualTo(safe.prediction().ph());
    }

    @Test
    void theFirstPartMayBeAllOrNothing() {
        PlanSupply acid = PlanQuestions.acid("phosphoric", 10, 0.5, 10);
        MashPlan little = ask(pale(TAP), TAP, List.of(acid)).best();
        assertThat(FirstPart.of(little).orElseThrow().amount()).isEqualTo(10);
        PlanSupply soda = PlanQuestions.salt("sodium-bicarbonate", 0.1, 20);
        MashPlan base = PlanAnswer.of(
                        new PlanQuestion(dark(SOFT), SOFT, new PhAim(5.35, 5.3, 5.4), List.of(soda), List.of(), 400))
                .best();
        FirstPart none = FirstPart.of(base).orElseThrow();
        assertThat(base.amountOf(soda)).isPositive();
        assertThat(none.amount()).isZero();
        assertThat(none.ph()).isEqualTo(dark(SOFT).ph());
        MashPlan far = PlanAnswer.of(
                        new PlanQuestion(dark(SOFT), SOFT, new PhAim(5.7, 5.5, 5.9), List.of(soda), List.of(), 400))
                .best();
        FirstPart some = FirstPart.of(far).orElseThrow();
        assertThat(far.withAmounts(new double[] {some.amount()}).probabilityAbove())
                .isLessThanOrEqualTo(0.05);
        assertThat(far.withAmounts(new double[] {some.amount() + 0.1}).probabilityAbove())
                .isGreaterThan(0.05);
    }

    @Test
    void anAimIsHeldAgainstTheAcceptedRange() {
        List<Finding> usual = PlanChecks.of(AIM, true);
        assertThat(usual.stream().map(Finding::outcome)).containsExactly(Outcome.PASS, Outcome.PASS);
        List<Finding> low = PlanChecks.of(new PhAim(5.1, 5, 5.2), false);
        assertThat(low.stream().map(Finding::outcome)).containsExactly(Outcome.CAUTION, Outcome.NOTE);
        assertThat(low.get(0).expected()).hasValue(5.2);
        assertThat(low.get(1).pointer()).isEmpty();
        assertThat(PlanChecks.of(new PhAim(5.8, 5.7, 5.9), true).get(0).expected())
                .hasValue(5.7);
        PlanSupply acid = PlanQuestions.acid("lactic", 80, 0.5, 20);
        assertThat(PlanChecks.most(acid, true).outcome()).isEqualTo(Outcome.PASS);
        assertThat(PlanChecks.most(acid, false).outcome()).isEqualTo(Outcome.NOTE);
    }

    private static Finding check(PlanAnswer answer, String code) {
        return PlanChecks.of(answer).stream()
                .filter(finding -> finding.code().equals(code))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void thePhIsHeldAgainstTheEndThatItMissesOrTheTarget() {
        PlanAnswer high = ask(pale(TAP), TAP, List.of(PlanQuestions.acid("phosphoric", 10, 0.5, 10)));
        PlanAnswer low = ask(dark(SOFT), SOFT, List.of(PlanQuestions.acid("lactic", 80, 0.5, 20)));
        PlanAnswer met = ask(pale(TAP), TAP, List.of(PlanQuestions.acid("phosphoric", 10, 0.5, 200)));
        assertThat(check(high, "plan.ph").expected()).hasValue(5.5);
        assertThat(check(low, "plan.ph").expected()).hasValue(5.3);
        assertThat(check(met, "plan.ph").expected()).hasValue(5.4);
        Finding probability = check(met, "plan.probability");
        assertThat(probability.observed()).hasValueCloseTo(100 * met.best().probabilityInRange(), within(0.5));
        assertThat(probability.expected()).hasValueCloseTo(80.0, within(1e-9));
    }

    @Test
    void aMashAsItIsScoresItsDistanceFromTheTarget() {
        PlanAnswer answer = ask(pale(TAP), TAP, List.of(PlanQuestions.acid("phosphoric", 10, 0.5, 200)));
        MashPlan none = MashPlan.asItIs(answer.best().question(), answer.before());
        double ph = pale(TAP).ph();
        assertThat(none.additions()).isEmpty();
        assertThat(none.score().phOff()).isCloseTo((ph - 5.4) / 0.1, within(1e-9));
        assertThat(none.score().phBeyond()).isCloseTo(ph - 5.5, within(1e-9));
    }

    @Test
    void aUsualIonIsHeldAgainstItsLimit() {
        MashPlan plan = ask(pale(TAP), TAP, List.of(PlanQuestions.acid("phosphoric", 10, 0.5, 200)))
                .best();
        assertThat(PlanChecks.usual(plan, "Cl", "chloride", 28.0001).outcome()).isEqualTo(Outcome.PASS);
        Finding passed = PlanChecks.usual(plan, "Cl", "chloride", 27.9);
        assertThat(passed.outcome()).isEqualTo(Outcome.CAUTION);
        assertThat(passed.subject()).isEqualTo("chloride");
    }

    @Test
    void aRatioWithoutSulfateHasNoValue() {
        Water bare = Water.distilled();
        PlanAnswer answer = ask(
                pale(bare),
                bare,
                List.of(
                        PlanQuestions.salt("calcium-chloride-dihydrate", 0.1, 20),
                        PlanQuestions.salt("gypsum", 0.1, 20)),
                PlanQuestions.want(Ion.CHLORIDE, 40, 60),
                IonWant.of(
                        IonWant.Kind.CHLORIDE_TO_SULFATE,
                        OptionalDouble.of(0.9),
                        OptionalDouble.of(1.1),
                        "/ions/chlorideToSulfate"));
        WantedValue ratio = WantedValue.of(answer).get(1);
        assertThat(ratio.before()).isEmpty();
        assertThat(ratio.after().orElseThrow()).isBetween(0.9, 1.1);
        assertThat(ratio.finding().subject()).isEqualTo("chloride to sulfate");
        WantedValue none = new WantedValue(ratio.want(), OptionalDouble.empty(), OptionalDouble.empty());
        assertThat(none.met()).isFalse();
    }

    @Test
    void manySuppliesAreStillPlanned() {
        List<PlanSupply> supplies = new ArrayList<>();
        for (String acid : List.of("lactic", "phosphoric", "hydrochloric", "sulfuric", "citric")) {
            supplies.add(PlanQuestions.acid(acid, 10, 0.5, 100));
        }
        for (String salt : List.of(
                "gypsum",
                "calcium-chloride-dihydrate",
                "epsom-salt",
                "sodium-chloride",
                "magnesium-chloride-hexahydrate",
                "potassium-chloride",
                "magnesium-sulfate",
                "sodium-bicarbonate",
                "calcium-hydroxide")) {
            supplies.add(PlanQuestions.salt(salt, 0.1, 20));
        }
        supplies.add(PlanQuestions.acidulated(5, 0.05));
        supplies.add(PlanQuestions.distilled(18, 0.9));
        PlanAnswer answer = ask(
                pale(TAP),
                TAP,
                supplies,
                PlanQuestions.want(Ion.CALCIUM, 70, 90),
                PlanQuestions.want(Ion.MAGNESIUM, 12, 18),
                PlanQuestions.want(Ion.SODIUM, 0, 20),
                PlanQuestions.want(Ion.CHLORIDE, 40, 60),
                PlanQuestions.want(Ion.SULFATE, 60, 100));
        assertThat(answer.result()).isEqualTo(PlanAnswer.Result.PLAN);
        assertThat(answer.best().additions()).hasSizeLessThanOrEqualTo(4);
        assertThat(answer.alternatives().stream()
                        .map(plan -> plan.setters().get(0).id()))
                .contains("lactic", "acidulated");
        assertThat(answer.best().score().total()).isLessThan(5.2);
    }
}

package tunside.mash.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tunside.chemistry.AcidProduct;
import tunside.chemistry.Acids;
import tunside.chemistry.Ion;
import tunside.chemistry.Salts;
import tunside.finding.Finding;
import tunside.finding.Outcome;
import tunside.mash.Malt;
import tunside.mash.Mash;
import tunside.quantity.Strength;
import tunside.water.Water;

class PlanValuesTest {
    @ParameterizedTest
    @CsvSource({
        "5.4,5.3,5.5,true", "5.3,5.3,5.5,true", "5.5,5.3,5.5,true", "5.4,5.5,5.3,false", "5.4,5.4,5.4,false",
        "5.29,5.3,5.5,false", "5.51,5.3,5.5,false", "4,4,7.5,true", "4,3.99,7.5,false", "7.5,4,7.51,false",
        "NaN,5.3,5.5,false", "5.4,NaN,5.5,false", "5.4,5.3,NaN,false"
    })
    void anAimLiesInARangeThatRunsUpwards(double target, double low, double high, boolean good) {
        if (good) {
            assertThat(new PhAim(target, low, high).halfWidth()).isCloseTo((high - low) / 2, within(1e-12));
        } else {
            assertThatThrownBy(() -> new PhAim(target, low, high)).isInstanceOf(IllegalArgumentException.class);
        }
    }

    @Test
    void aPhLiesBeyondARangeByItsDistance() {
        PhAim aim = new PhAim(5.4, 5.3, 5.5);
        assertThat(aim.beyond(5.25)).isCloseTo(0.05, within(1e-12));
        assertThat(aim.beyond(5.3)).isZero();
        assertThat(aim.beyond(5.5)).isZero();
        assertThat(aim.beyond(5.7)).isCloseTo(0.2, within(1e-12));
    }

    @Test
    void aScoreWeighsRangesThenTargetThenNumberThenAmount() {
        assertThat(new PlanScore(0, 0, 0, 0, 0).total()).isZero();
        assertThat(new PlanScore(0.01, 0.02, 0.5, 3, 0.25).total()).isCloseTo(10 + 20 + 2 + 3 + 0.25, within(1e-9));
        assertThat(new PlanScore(0, 0, 1, 0, 0).total()).isEqualTo(8);
        assertThat(new PlanScore(0, 0, 2, 0, 0).total()).isEqualTo(24);
        assertThat(new PlanScore(0, 0, 2, 1, 1).meetsAll()).isTrue();
        assertThat(new PlanScore(1e-7, 0, 0, 0, 0).meetsAll()).isTrue();
        assertThat(new PlanScore(0, 2e-7, 0, 0, 0).meetsAll()).isFalse();
    }

    @Test
    void aRangeRunsUpwardsAndHasAnEnd() {
        IonWant want = PlanQuestions.want(Ion.CALCIUM, 50, 100);
        assertThat(want.name()).isEqualTo("Ca");
        assertThat(want.unit()).isEqualTo("mg/L");
        IonWant alkalinity =
                IonWant.of(IonWant.Kind.ALKALINITY, OptionalDouble.empty(), OptionalDouble.of(2), "/ions/alkalinity");
        assertThat(alkalinity.name()).isEqualTo("alkalinity");
        assertThat(alkalinity.unit()).isEqualTo("mEq/L");
        IonWant ratio =
                IonWant.of(IonWant.Kind.CHLORIDE_TO_SULFATE, OptionalDouble.of(1), OptionalDouble.of(1), "/ions/ratio");
        assertThat(ratio.name()).isEqualTo("chloride to sulfate");
        assertThat(ratio.unit()).isEqualTo("1");
        for (double[] bad : new double[][] {{100, 50}, {-1, 50}, {Double.NaN, 1}, {1, Double.NaN}, {0, 1e6}}) {
            assertThatThrownBy(() -> PlanQuestions.want(Ion.CALCIUM, bad[0], bad[1]))
                    .isInstanceOf(IllegalArgumentException.class);
        }
        assertThatThrownBy(() -> IonWant.of(Ion.SODIUM, OptionalDouble.empty(), OptionalDouble.empty(), ""))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() ->
                        new IonWant(IonWant.Kind.ION, Optional.empty(), OptionalDouble.of(1), OptionalDouble.of(2), ""))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new IonWant(
                        IonWant.Kind.ALKALINITY,
                        Optional.of(Ion.SODIUM),
                        OptionalDouble.of(1),
                        OptionalDouble.of(2),
                        ""))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void aLiquidAcidIsCountedInMillilitres() {
        PlanSupply.OfAcid acid = PlanQuestions.acid("phosphoric", 10, 0.5, 10.2);
        assertThat(acid.id()).isEqualTo("phosphoric");
        assertThat(acid.name()).isEqualTo("phosphoric acid");
        assertThat(acid.role()).isEqualTo(PlanSupply.Role.ACID);
        assertThat(acid.mostSteps()).isEqualTo(20);
        assertThat(acid.millimolesPerUnit()).isCloseTo(1.0747, within(1e-3));
        assertThat(acid.countedPerUnit()).isEqualTo(acid.millimolesPerUnit());
        assertThat(acid.grams(10)).isCloseTo(10.531, within(1e-3));
        assertThat(acid.addition(10).millimoles().value()).isCloseTo(10 * acid.millimolesPerUnit(), within(1e-9));
        assertThat(acid.limitCode()).isEqualTo("plan.amount-volume");
        assertThat(acid.limitPointer()).isEqualTo("/atHand/acids/phosphoric/most");
        assertThat(acid.stepPointer()).isEqualTo("/steps/syringe");
        assertThat(acid.withMost(3).most()).isEqualTo(3);
        assertThat(acid.withStep(3).step()).isEqualTo(3);
        assertThat(acid.withStep(3).most()).isEqualTo(10.2);
    }

    @Test
    void aPowderIsCountedInGrams() {
        PlanSupply.OfAcid citric =
                new PlanSupply.OfAcid("/x", AcidProduct.of(Acids.get("citric"), Strength.percent(100)), 0.1, 5);
        assertThat(citric.millimolesPerUnit()).isCloseTo(1000 / 192.123, within(1e-6));
        assertThat(citric.grams(2)).isEqualTo(2);
        assertThat(citric.limitCode()).isEqualTo("plan.amount-mass");
        assertThat(citric.stepPointer()).isEqualTo("/steps/scale");
    }

    @Test
    void acidulatedMaltIsCountedInKilogramsOnTopOfTheGrist() {
        PlanSupply.OfMalt malt = PlanQuestions.acidulated(5, 0.05);
        assertThat(malt.most()).isCloseTo(5 * 0.05 / 0.95, within(1e-12));
        assertThat(malt.most() / (5 + malt.most())).isCloseTo(0.05, within(1e-12));
        assertThat(PlanSupply.OfMalt.mostKilograms(5, 0.1, 0.05)).isCloseTo(0.15 / 0.95, within(1e-12));
        assertThat(PlanSupply.OfMalt.mostKilograms(5, 0.5, 0.05)).isZero();
        assertThat(malt.id()).isEqualTo("acidulated");
        assertThat(malt.name()).isEqualTo("acidulated malt");
        assertThat(malt.role()).isEqualTo(PlanSupply.Role.ACID);
        assertThat(malt.millimolesPerUnit()).isCloseTo(30_000 / 90.078, within(1e-9));
        assertThat(malt.limitCode()).isEqualTo("plan.acidulated-share");
        assertThat(malt.limitPointer()).isEqualTo("/atHand/acidulatedMalt/mostPercent");
        assertThat(malt.stepPointer()).isEqualTo("/steps/maltScale");
        assertThat(malt.withMost(1).most()).isEqualTo(1);
        assertThat(malt.withStep(1).step()).isEqualTo(1);
        assertThatThrownBy(() -> new PlanSupply.OfMalt("", Malt.of("pale"), 0.01, 1))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void aSaltWithAlkalinityIsABase() {
        PlanSupply.OfSalt gypsum = PlanQuestions.salt("gypsum", 0.1, 2);
        assertThat(gypsum.role()).isEqualTo(PlanSupply.Role.SALT);
        assertThat(gypsum.id()).isEqualTo("gypsum");
        assertThat(gypsum.name()).isEqualTo("gypsum");
        assertThat(gypsum.mostSteps()).isEqualTo(20);
        assertThat(gypsum.millimolesPerUnit()).isCloseTo(1000 / 172.164, within(1e-9));
        assertThat(gypsum.countedPerUnit()).isEqualTo(gypsum.millimolesPerUnit());
        assertThat(gypsum.limitCode()).isEqualTo("plan.amount-mass");
        assertThat(gypsum.limitPointer()).isEqualTo("/atHand/salts/gypsum/most");
        assertThat(gypsum.stepPointer()).isEqualTo("/steps/scale");
        assertThat(gypsum.addition(3).mass().grams()).isCloseTo(3, within(1e-12));
        PlanSupply.OfSalt lime = PlanQuestions.salt("calcium-hydroxide", 0.1, 2);
        assertThat(lime.role()).isEqualTo(PlanSupply.Role.BASE);
        assertThat(lime.countedPerUnit()).isCloseTo(2000 / 74.092, within(1e-6));
        assertThat(lime.withMost(1).most()).isEqualTo(1);
        assertThat(lime.withStep(1).step()).isEqualTo(1);
    }

    @Test
    void waterIsCountedInLitres() {
        PlanSupply.OfWater water = PlanQuestions.distilled(20, 0.5);
        assertThat(water.most()).isEqualTo(10);
        assertThat(water.id()).isEqualTo("diluting-water");
        assertThat(water.name()).isEqualTo("diluting water");
        assertThat(water.role()).isEqualTo(PlanSupply.Role.WATER);
        assertThat(water.millimolesPerUnit()).isZero();
        assertThat(water.limitCode()).isEqualTo("plan.dilution-share");
        assertThat(water.limitPointer()).isEqualTo("/atHand/dilutingWater/mostPercent");
        assertThat(water.stepPointer()).isEqualTo("/steps/jug");
        assertThat(water.withMost(1).most()).isEqualTo(1);
        assertThat(water.withStep(1).step()).isEqualTo(1);
    }

    @ParameterizedTest
    @CsvSource({"0,1", "-1,1", "NaN,1", "Infinity,1", "1,-1", "1,NaN", "1,Infinity"})
    void aSupplyNeedsAStepAndALimit(double step, double most) {
        assertThatThrownBy(() -> PlanQuestions.acid("lactic", 80, step, most))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> PlanQuestions.salt("gypsum", step, most)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new PlanSupply.OfMalt("", Malt.of("acidulated"), step, most))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new PlanSupply.OfWater("", Water.distilled(), step, most))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void defaultsAreThoseOfTheTable() {
        AcidProduct lactic = AcidProduct.of(Acids.get("lactic"), Strength.percent(80));
        double perMl = PlanQuestions.acid("lactic", 80, 1, 1).millimolesPerUnit();
        assertThat(PlanDefaults.most(lactic, 20)).isCloseTo(600 / perMl, within(1e-9));
        assertThat(PlanDefaults.most(Salts.get("gypsum"), 20)).isEqualTo(40);
        assertThat(PlanDefaults.most(Salts.get("sodium-bicarbonate"), 20)).isEqualTo(20);
        assertThat(PlanDefaults.mostAcidulatedShare()).isEqualTo(0.05);
        assertThat(PlanDefaults.mostDilutionShare()).isEqualTo(1);
    }

    @Test
    void aRowSaysWhatIsLeftOfALimit() {
        PlanRow row = new PlanRow("plan.ion-low", "Ca", "/ions/calcium/low", 50, -0.2, new double[] {0.1, 0}, 0.02);
        double[] three = {3, 7};
        assertThat(row.slack(three)).isCloseTo(0.1, within(1e-12));
        assertThat(row.beyond(three)).isZero();
        assertThat(row.beyond(new double[] {1, 0})).isCloseTo(0.1, within(1e-12));
        Finding finding = row.finding(Outcome.NOTE, three);
        assertThat(finding.code()).isEqualTo("plan.ion-low");
        assertThat(finding.subject()).isEqualTo("Ca");
        assertThat(finding.observed().orElseThrow()).isCloseTo(55, within(1e-9));
        assertThat(finding.expected()).hasValue(50);
        assertThat(row.lifted().slack(three)).isEqualTo(1);
        PlanRow ratio = new PlanRow("plan.ratio-low", "r", "/r/low", 1, 0, new double[2], 0);
        assertThat(ratio.finding(Outcome.NOTE, three).observed()).isEmpty();
    }

    @Test
    void acidOrBaseInTheMashIsSeen() {
        Water water = PlanQuestions.water(50, 5, 10, 30, 40, 2);
        Mash pale = PlanQuestions.mash(20, water, PlanQuestions.part(Malt.of("pale"), 5));
        Mash sour = PlanQuestions.mash(
                20, water, PlanQuestions.part(Malt.of("pale"), 5), PlanQuestions.part(Malt.of("acidulated"), 0.2));
        PlanSupply.OfAcid acid = PlanQuestions.acid("lactic", 80, 0.5, 5);
        PlanSupply.OfSalt soda = PlanQuestions.salt("sodium-bicarbonate", 0.1, 5);
        PlanSupply.OfSalt gypsum = PlanQuestions.salt("gypsum", 0.1, 5);
        assertThat(ask(pale, water).hasAcid()).isFalse();
        assertThat(ask(pale, water).hasBase()).isFalse();
        assertThat(ask(sour, water).hasAcid()).isTrue();
        assertThat(PlanQuestion.acidulatedKilograms(sour.grist())).isEqualTo(0.2);
        assertThat(ask(pale.plus(acid.addition(1)), water).hasAcid()).isTrue();
        assertThat(ask(pale.plus(acid.addition(0)), water).hasAcid()).isFalse();
        assertThat(ask(pale.plus(acid.addition(1)), water).hasBase()).isFalse();
        assertThat(ask(pale.plus(soda.addition(1)), water).hasBase()).isTrue();
        assertThat(ask(pale.plus(soda.addition(0)), water).hasBase()).isFalse();
        assertThat(ask(pale.plus(gypsum.addition(1)), water).hasBase()).isFalse();
        assertThat(PlanSearch.mayUse(ask(sour, water), PlanSupply.Role.BASE)).isFalse();
        assertThat(PlanSearch.mayUse(ask(sour, water), PlanSupply.Role.ACID)).isTrue();
        assertThat(PlanSearch.mayUse(ask(pale.plus(soda.addition(1)), water), PlanSupply.Role.ACID))
                .isFalse();
        assertThat(PlanSearch.mayUse(ask(sour, water), PlanSupply.Role.SALT)).isTrue();
        assertThatThrownBy(
                        () -> new PlanQuestion(pale, water, new PhAim(5.4, 5.3, 5.5), List.of(), List.of(), Double.NaN))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new PlanQuestion(pale, water, new PhAim(5.4, 5.3, 5.5), List.of(), List.of(), -1))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void noLactateMayBeAcceptedButNotAnyAmount() {
        Water water = PlanQuestions.water(50, 5, 10, 30, 40, 2);
        Mash pale = PlanQuestions.mash(20, water, PlanQuestions.part(Malt.of("pale"), 5));
        PhAim aim = new PhAim(5.4, 5.3, 5.5);
        assertThat(new PlanQuestion(pale, water, aim, List.of(), List.of(), 0).mostLactateMgPerL())
                .isZero();
        assertThatThrownBy(() -> new PlanQuestion(pale, water, aim, List.of(), List.of(), Double.POSITIVE_INFINITY))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void anObstacleIsEnoughAloneWhereNothingIsMissedWithoutIt() {
        Finding limit = Finding.of("plan.lactate", Outcome.CAUTION, "/mostLactate");
        assertThat(new PlanObstacle(limit, 0.2, 0).enoughAlone()).isTrue();
        assertThat(new PlanObstacle(limit, 0.2, 1e-6).enoughAlone()).isTrue();
        assertThat(new PlanObstacle(limit, 0.2, 1e-5).enoughAlone()).isFalse();
    }

    @Test
    void amountsGoIntoTheMashAsWhatTheyAre() {
        Water water = PlanQuestions.water(50, 5, 10, 30, 40, 2);
        PlanSupply.OfAcid acid = PlanQuestions.acid("lactic", 80, 0.5, 5);
        PlanSupply.OfSalt gypsum = PlanQuestions.salt("gypsum", 0.1, 5);
        PlanSupply.OfMalt malt = PlanQuestions.acidulated(5, 0.05);
        PlanSupply.OfWater distilled = PlanQuestions.distilled(20, 1);
        Mash pale = PlanQuestions.mash(20, water, PlanQuestions.part(Malt.of("pale"), 5));
        PlanQuestion question = new PlanQuestion(
                pale, water, new PhAim(5.4, 5.3, 5.5), List.of(acid, gypsum, malt, distilled), List.of(), 400);
        Mash mash = question.with(new double[] {2, 3, 0.1, 5});
        assertThat(mash.additions()).containsExactly(acid.addition(2), gypsum.addition(3));
        assertThat(mash.grist().kilograms()).isCloseTo(5.1, within(1e-12));
        assertThat(mash.liquor().alkalinityMeqPerL())
                .isCloseTo(0.75 * pale.liquor().alkalinityMeqPerL(), within(1e-9));
        Mash none = question.with(new double[] {0, 1e-12, 0, 0});
        assertThat(none.additions()).isEmpty();
        assertThat(none.grist()).isEqualTo(pale.grist());
        assertThat(none.liquor()).isEqualTo(pale.liquor());
        assertThat(question.with(new double[] {0, 0, 0, 20}).liquor().alkalinityMeqPerL())
                .isCloseTo(0, within(1e-6));
    }

    private static PlanQuestion ask(Mash mash, Water water) {
        return new PlanQuestion(mash, water, new PhAim(5.4, 5.3, 5.5), List.of(), List.of(), 400);
    }
}

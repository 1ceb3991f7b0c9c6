package tunside.dosing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tunside.chemistry.AcidProduct;
import tunside.chemistry.Salts;
import tunside.mash.AcidAddition;
import tunside.mash.Mash;
import tunside.quantity.Mass;

/** Laws of a dose, on drawn mashes with fixed seeds. */
class AcidDosePropertiesTest {
    private static final List<AcidProduct> PRODUCTS = List.of(
            Doses.acid("phosphoric", 10),
            Doses.acid("lactic", 80),
            Doses.acid("hydrochloric", 10),
            Doses.acid("sulfuric", 10),
            Doses.acid("citric", 50));

    private record Drawn(Mash mash, AcidProduct product, double ph, double uncertainty, DoseAim aim) {
        DoseQuestion question(PastAddition... history) {
            return Doses.question(mash, product, ph, uncertainty, aim, history);
        }

        Drawn with(DoseAim other) {
            return new Drawn(mash, product, ph, uncertainty, other);
        }
    }

    static Stream<Drawn> drawn() {
        SplittableRandom random = new SplittableRandom(77);
        return Stream.generate(() -> {
                    double kilograms = 1 + 9 * random.nextDouble();
                    Mash mash = Doses.mash(kilograms, kilograms * (2 + 3 * random.nextDouble()));
                    double low = 5.15 + 0.1 * random.nextDouble();
                    double target = low + 0.05 + 0.1 * random.nextDouble();
                    double high = target + 0.03 + 0.1 * random.nextDouble();
                    return new Drawn(
                            mash,
                            PRODUCTS.get(random.nextInt(PRODUCTS.size())),
                            high + 0.05 + 0.4 * random.nextDouble(),
                            0.01 + 0.05 * random.nextDouble(),
                            new DoseAim(target, low, high, 0.01 + 0.2 * random.nextDouble()));
                })
                .limit(40);
    }

    @ParameterizedTest
    @MethodSource("drawn")
    void dosingTheWholeDoseAndAskingAgainReturnsTheTarget(Drawn drawn) {
        DoseQuestion question = drawn.question();
        StagedDose dose = Doses.dose(question);
        Knowledge after = Doses.after(
                        question, List.of(new PastAddition(dose.reagent(), dose.totalGrams(), Optional.empty())))
                .learn()
                .now();
        assertThat(after.quantile(0.5)).isCloseTo(drawn.aim().targetPh(), within(1e-5));
    }

    @ParameterizedTest
    @MethodSource("drawn")
    void theMashModelItselfMovesByAsMuchAsTheDoseWasFor(Drawn drawn) {
        double predicted = drawn.mash().ph();
        DoseAim aim = new DoseAim(predicted - 0.2, predicted - 0.4, predicted - 0.1, 0.05);
        double grams = Doses.dose(Doses.question(drawn.mash(), drawn.product(), predicted, 0.01, aim))
                .totalGrams();
        Mash dosed = drawn.mash().plus(AcidAddition.of(drawn.product(), new Mass(grams / 1000)));
        assertThat(dosed.ph()).isCloseTo(aim.targetPh(), within(0.002));
    }

    @ParameterizedTest
    @MethodSource("drawn")
    void nothingIsDosedInRange(Drawn drawn) {
        for (double ph : new double[] {
            drawn.aim().lowPh(), drawn.aim().targetPh(), drawn.aim().highPh()
        }) {
            DoseAdvice answer = DoseAdvice.of(
                    Doses.question(drawn.mash(), drawn.product(), ph, drawn.uncertainty(), drawn.aim()), List.of());
            assertThat(answer.outcome()).isEqualTo(new DoseOutcome.NoneNeeded());
            assertThat(answer.staged()).isEmpty();
        }
    }

    @ParameterizedTest
    @MethodSource("drawn")
    void aSmallerAcceptedRiskNeverMakesTheFirstStageLarger(Drawn drawn) {
        double last = 0;
        for (double risk : new double[] {0.001, 0.01, 0.05, 0.1, 0.25, 0.5}) {
            DoseAim aim = new DoseAim(
                    drawn.aim().targetPh(), drawn.aim().lowPh(), drawn.aim().highPh(), risk);
            double now = Doses.dose(drawn.with(aim).question())
                    .now()
                    .map(DoseStage::grams)
                    .orElse(0.0);
            assertThat(now).isGreaterThanOrEqualTo(last);
            last = now;
        }
    }

    @ParameterizedTest
    @MethodSource("drawn")
    void theFirstStageKeepsTheRiskAndIsAWholeNumberOfSteps(Drawn drawn) {
        DoseQuestion question = drawn.question();
        StagedDose dose = Doses.dose(question);
        double step = question.acid().orElseThrow().stepGrams();
        DoseStage now = dose.now().orElseThrow();
        assertThat(now.overshootProbability()).isLessThanOrEqualTo(drawn.aim().acceptedRisk() + 1e-9);
        assertThat(now.grams() / step).isCloseTo(Math.rint(now.grams() / step), within(1e-6));
        assertThat(now.grams()).isLessThanOrEqualTo(dose.totalGrams() + 1e-9);
        double more = now.grams() + step;
        double moreRisk = question.learn().now().probabilityBelow(drawn.aim().lowPh(), dose.reagent(), more);
        assertThat(moreRisk > drawn.aim().acceptedRisk() || more > dose.totalGrams())
                .as("one step more would break the risk or pass the target")
                .isTrue();
    }

    @ParameterizedTest
    @MethodSource("drawn")
    void twiceTheMashNeedsTwiceTheAcid(Drawn drawn) {
        double kilograms = drawn.mash().grist().kilograms();
        double litres = drawn.mash().liquor().volume().litres();
        Mash twice = Doses.mash(2 * kilograms, 2 * litres);
        double once = Doses.dose(drawn.question()).totalGrams();
        double doubled = Doses.dose(
                        Doses.question(twice, drawn.product(), drawn.ph(), drawn.uncertainty(), drawn.aim()))
                .totalGrams();
        assertThat(doubled / once).isCloseTo(2, within(1e-6));
    }

    @ParameterizedTest
    @MethodSource("drawn")
    void aReadingNarrowsWhatIsKnownOfTheBuffering(Drawn drawn) {
        DoseQuestion question = drawn.question();
        DoseStage now = Doses.dose(question).now().orElseThrow();
        Knowledge before = question.learn().now();
        Knowledge after = Doses.after(
                        question, List.of(Doses.past(question, now.grams(), now.expectedPh(), drawn.uncertainty())))
                .learn()
                .now();
        assertThat(after.logScaleMoments()[1]).isLessThan(before.logScaleMoments()[1]);
        assertThat(after.scaleQuantiles(0.95)[0] - after.scaleQuantiles(0.05)[0])
                .isLessThan(before.scaleQuantiles(0.95)[0] - before.scaleQuantiles(0.05)[0]);
    }

    @ParameterizedTest
    @MethodSource("drawn")
    void aSmallerDropThanExpectedTeachesMoreBuffering(Drawn drawn) {
        DoseQuestion question = drawn.question();
        DoseStage now = Doses.dose(question).now().orElseThrow();
        double last = 0;
        for (double share : new double[] {1.4, 1.2, 1.0, 0.8, 0.6}) {
            double ph = drawn.ph() - share * (drawn.ph() - now.expectedPh());
            double median = Doses.after(question, List.of(Doses.past(question, now.grams(), ph, drawn.uncertainty())))
                    .learn()
                    .now()
                    .scaleQuantiles(0.5)[0];
            assertThat(median).isGreaterThan(last);
            last = median;
        }
    }

    @ParameterizedTest
    @MethodSource("drawn")
    void theSameQuestionHasTheSameAnswer(Drawn drawn) {
        assertThat(Doses.dose(drawn.question()))
                .usingRecursiveComparison()
                .ignoringFields("reagent")
                .isEqualTo(Doses.dose(drawn.question()));
    }

    @ParameterizedTest
    @MethodSource("drawn")
    void whatABaseRaisesItsDoseIsFor(Drawn drawn) {
        double ph = drawn.aim().lowPh() - 0.15;
        DoseQuestion question = Doses.question(drawn.mash(), drawn.product(), ph, drawn.uncertainty(), drawn.aim());
        DoseOutcome outcome = DoseAdvice.of(question, List.of()).outcome();
        StagedDose dose = ((DoseOutcome.RaiseInstead) outcome).staged();
        assertThat(dose.reagent().id()).isEqualTo(Salts.get(Bases.USUAL).id());
        Knowledge after = Doses.after(
                        question,
                        List.of(new PastAddition(
                                dose.reagent().withoutUncertainty(), dose.totalGrams(), Optional.empty())))
                .learn()
                .now();
        assertThat(after.quantile(0.5)).isCloseTo(drawn.aim().targetPh(), within(2e-3));
        DoseStage now = dose.now().orElseThrow();
        assertThat(now.expectedPh()).isGreaterThan(ph);
        assertThat(now.overshootProbability()).isLessThanOrEqualTo(drawn.aim().acceptedRisk() + 1e-9);
    }
}

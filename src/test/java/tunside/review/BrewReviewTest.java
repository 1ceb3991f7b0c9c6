package tunside.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;
import static tunside.review.Records.brew;
import static tunside.review.Records.distilled;
import static tunside.review.Records.dose;
import static tunside.review.Records.lactic;
import static tunside.review.Records.part;
import static tunside.review.Records.predicted;
import static tunside.review.Records.read;
import static tunside.review.Records.tap;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tunside.dosing.PhReading;
import tunside.finding.Finding;
import tunside.finding.Outcome;
import tunside.mash.Estimate;
import tunside.mash.Experience;
import tunside.mash.LearntParameter;
import tunside.mash.LearntQuantity;
import tunside.mash.Malt;
import tunside.mash.Mash;
import tunside.mash.MashModel;
import tunside.mash.MashPrediction;

class BrewReviewTest {
    private static final Malt PALE = Malt.of("pale");
    private static final Mash MASH = distilled(part(PALE, 5));
    private static final double PUBLISHED = 5.72;
    /** Variances of what all brews of pale malt share: biases, class and product; by hand from the tables. */
    private static final double OF_BIASES = 0.03 * 0.03 + 0.1 * 0.1;

    private static final double OF_CLASS = 0.00162;
    private static final double OF_PRODUCT = 0.0065;
    private static final double SHARED = OF_BIASES + OF_CLASS + OF_PRODUCT;
    /** Variance of one reading at known shared values. */
    private static final double OWN =
            Math.pow(MashPrediction.of(MASH).standardUncertainty(), 2) - SHARED + Records.READING * Records.READING;

    private static BrewReview same(int n, double ph) {
        return BrewReview.of(Collections.nCopies(n, brew("brew", MASH, ph)));
    }

    private static BrewReview review(MeasuredBrew... brews) {
        return BrewReview.of(List.of(brews));
    }

    private static List<MeasuredBrew> five() {
        List<MeasuredBrew> brews = new ArrayList<>();
        double[] readings = {5.66, 5.60, 5.63, 5.68, 5.62};
        for (int i = 0; i < readings.length; i++) {
            Mash mash = tap(part(PALE, 4), part(Malt.of(i % 2 == 0 ? "munich" : "wheat"), 0.4));
            brews.add(brew("brew " + i, mash, readings[i], dose(20, readings[i] - 0.11)));
        }
        return brews;
    }

    private static Estimate together(BrewReview review, int malt) {
        return review.malts().get(malt).together().learnt();
    }

    /** The normal mean with a normal prior: the shift is n T / (n T + s²) of what is seen. */
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 5, 20})
    void aHouseholdMovesAsFarAsTheClosedFormSays(int n) {
        BrewReview review = same(n, PUBLISHED - 0.15);
        double share = n * SHARED / (n * SHARED + OWN);
        assertThat(together(review, 0).value()).isCloseTo(-0.15 * share, within(2e-4));
        assertThat(Math.pow(together(review, 0).standardUncertainty(), 2))
                .isCloseTo(SHARED * OWN / (n * SHARED + OWN), within(5e-6));
        double ofBias = n * OF_BIASES / (n * SHARED + OWN);
        assertThat(review.householdBias().learnt().value()).isCloseTo(-0.15 * ofBias, within(2e-4));
        assertThat(Math.pow(review.householdBias().learnt().standardUncertainty(), 2))
                .isCloseTo(OF_BIASES * (1 - ofBias), within(5e-6));
        assertThat(review.householdBias().published()).isEqualTo(new Estimate(0, Math.sqrt(OF_BIASES)));
        assertThat(review.malts().get(0).offset().published().standardUncertainty())
                .isCloseTo(Math.sqrt(OF_CLASS + OF_PRODUCT), within(1e-12));
    }

    /** Two products, one brew each: what they share moves by A (a + b) / (2 A + B + s²). */
    @Test
    void productsAreLearntApartAsTheClosedFormSays() {
        BrewReview review = review(
                brew("river", distilled(part(PALE.named("river"), 5)), PUBLISHED + 0.1),
                brew("hill", distilled(part(PALE.named("hill"), 5)), PUBLISHED - 0.2));
        double common = OF_BIASES + OF_CLASS;
        double shared = -0.1 * common / (2 * common + OF_PRODUCT + OWN);
        double rest = OF_PRODUCT / (OF_PRODUCT + OWN);
        assertThat(review.malts())
                .extracting(LearntMalt::product)
                .containsExactly(Optional.empty(), Optional.of("hill"), Optional.of("river"));
        assertThat(review.malts()).extracting(LearntMalt::brews).containsExactly(2, 1, 1);
        assertThat(together(review, 0).value()).isCloseTo(shared, within(2e-4));
        assertThat(together(review, 1).value()).isCloseTo(shared + rest * (-0.2 - shared), within(2e-4));
        assertThat(together(review, 2).value()).isCloseTo(shared + rest * (0.1 - shared), within(2e-4));
        assertThat(together(review, 1).standardUncertainty())
                .isLessThan(together(review, 0).standardUncertainty() + Math.sqrt(OF_PRODUCT));
        // a third product is as unsure as the class and the scatter of products and brews together
        Mash third = distilled(part(PALE.named("valley"), 5));
        assertThat(Math.pow(predicted(third, review.experience()).standardUncertainty(), 2))
                .isCloseTo(
                        Math.pow(together(review, 0).standardUncertainty(), 2)
                                + OF_PRODUCT
                                + OWN
                                - Records.READING * Records.READING,
                        within(1e-5));
        assertThat(predicted(third, review.experience()).ph()).isCloseTo(PUBLISHED + shared, within(1e-3));
    }

    /** Where a product is named, a malt of its class without a name is another product each time. */
    @Test
    void aMaltWithoutANameBesideNamedOnesTellsOfItsClassOnly() {
        BrewReview review = review(
                brew("named", distilled(part(PALE.named("river"), 5)), PUBLISHED - 0.2),
                brew("unnamed", MASH, PUBLISHED - 0.2));
        assertThat(review.experience().parameters())
                .filteredOn(parameter -> parameter.quantity() == LearntQuantity.PRODUCT_OFFSET)
                .extracting(LearntParameter::product)
                .containsExactly("river");
        double common = OF_BIASES + OF_CLASS;
        assertThat(together(review, 0).value())
                .isCloseTo(-0.4 * common / (2 * common + OF_PRODUCT + OWN), within(2e-4));
    }

    @Test
    void theMoreBrewsTheNearerToTheReadingsAndNeverBeyond() {
        double last = 0;
        for (int n : new int[] {1, 2, 4, 8, 16}) {
            double shift = together(same(n, PUBLISHED - 0.15), 0).value();
            assertThat(shift).isLessThan(last).isGreaterThan(-0.15);
            last = shift;
        }
        assertThat(last).isLessThan(-0.14);
    }

    @Test
    void aRecordThatReadsAsPublishedMovesNothing() {
        BrewReview review = same(3, PUBLISHED);
        assertThat(review.householdBias().learnt().value()).isCloseTo(0, within(1e-6));
        assertThat(review.logBuffering().learnt().value()).isCloseTo(0, within(1e-6));
        assertThat(review.brews().get(0).published().value()).isCloseTo(PUBLISHED, within(1e-6));
        assertThat(review.errors().before().rootMeanSquare()).isCloseTo(0, within(1e-6));
        assertThat(review.errors().after().rootMeanSquare()).isCloseTo(0, within(1e-6));
    }

    @Test
    void leavingABrewOutIsReviewingTheOthersAndPredictingIt() {
        List<MeasuredBrew> all = five();
        BrewReview review = BrewReview.of(all);
        assertThat(review.experience().brews()).isEqualTo(5);
        for (int j = 0; j < all.size(); j++) {
            List<MeasuredBrew> others = new ArrayList<>(all);
            MeasuredBrew left = others.remove(j);
            MashPrediction refitted =
                    predicted(left.mash(), BrewReview.of(others).experience());
            Estimate fromOthers = review.brews().get(j).fromOthers();
            assertThat(fromOthers.value()).isCloseTo(refitted.ph(), within(0.002));
            assertThat(fromOthers.standardUncertainty())
                    .isCloseTo(refitted.standardUncertainty(), within(0.02 * refitted.standardUncertainty()));
        }
    }

    @Test
    void theErrorsAreThoseOfThePredictionsShown() {
        BrewReview review = BrewReview.of(five());
        double squaresBefore = 0;
        double squaresAfter = 0;
        for (ReviewedBrew brew : review.brews()) {
            double ph = brew.brew().first().ph();
            MashPrediction published = MashPrediction.of(brew.brew().mash());
            assertThat(brew.published().value()).isCloseTo(published.ph(), within(1e-9));
            assertThat(brew.published().standardUncertainty()).isCloseTo(published.standardUncertainty(), within(1e-6));
            squaresBefore += Math.pow(ph - published.ph(), 2);
            squaresAfter += Math.pow(ph - brew.fromOthers().value(), 2);
        }
        assertThat(review.errors().before().rootMeanSquare()).isCloseTo(Math.sqrt(squaresBefore / 5), within(1e-9));
        assertThat(review.errors().after().rootMeanSquare()).isCloseTo(Math.sqrt(squaresAfter / 5), within(1e-9));
        assertThat(review.errors().before().n()).isEqualTo(5);
        assertThat(review.errorsOfCounted()).contains(review.errors());
    }

    @Test
    void theOrderOfTheBrewsDoesNotMatter() {
        List<MeasuredBrew> brews = new ArrayList<>(five());
        brews.add(brew("odd", MASH, 6.6));
        BrewReview first = BrewReview.of(brews);
        Collections.shuffle(brews, new Random(11));
        BrewReview second = BrewReview.of(brews);
        assertThat(second.experience().brews()).isEqualTo(first.experience().brews());
        for (int k = 0; k < first.experience().parameters().size(); k++) {
            LearntParameter one = first.experience().parameters().get(k);
            LearntParameter other = second.experience().parameters().get(k);
            assertThat(other.subject()).isEqualTo(one.subject());
            assertThat(other.mean()).isCloseTo(one.mean(), within(1e-7));
            for (int l = 0; l < first.experience().parameters().size(); l++) {
                assertThat(second.experience().covariance().get(k).get(l))
                        .isCloseTo(first.experience().covariance().get(k).get(l), within(1e-8));
            }
        }
        for (ReviewedBrew brew : first.brews()) {
            ReviewedBrew again = second.brews().stream()
                    .filter(one -> one.brew().label().equals(brew.brew().label()))
                    .findFirst()
                    .orElseThrow();
            assertThat(again.standing()).isEqualTo(brew.standing());
            assertThat(again.fromOthers().value()).isCloseTo(brew.fromOthers().value(), within(1e-7));
        }
    }

    /** Doses on half the buffering move the pH twice as far; the record must say so, drawn towards 1. */
    @ParameterizedTest
    @CsvSource({"0.7, 0.66, 0.85", "1.4, 1.2, 1.45"})
    void dosesTellHowStronglyTheMashesBuffer(double truly, double low, double high) {
        MashModel model = MashModel.standard().withBufferingScale(new Estimate(truly, 0.2));
        Mash written = tap(part(PALE, 5));
        MeasuredBrew brew = read("brew", written, written.withModel(model), 25, 25);
        BrewReview review = review(brew, brew, brew, brew);
        assertThat(Math.exp(review.logBuffering().learnt().value())).isBetween(low, high);
        assertThat(review.logBuffering().learnt().standardUncertainty())
                .isLessThan(0.55 * review.logBuffering().published().standardUncertainty());
        BrewReview withoutDoses = review(brew("brew", written, brew.first().ph()));
        assertThat(withoutDoses.logBuffering().learnt().standardUncertainty())
                .isGreaterThan(review.logBuffering().learnt().standardUncertainty());
        // the next dose is foreseen
        Mash dosed = written.plus(lactic(25));
        assertThat(Math.abs(predicted(dosed, review.experience()).ph()
                        - dosed.withModel(model).ph()))
                .isLessThan(0.6 * Math.abs(dosed.ph() - dosed.withModel(model).ph()));
    }

    @Test
    void aBrewFarFromTheOthersIsLeftOutOfTheLearning() {
        List<MeasuredBrew> brews = five();
        Experience without = BrewReview.of(brews).experience();
        brews.add(2, brew("odd", tap(part(PALE, 4), part(Malt.of("munich"), 0.4)), 6.4));
        BrewReview review = BrewReview.of(brews);
        ReviewedBrew odd = review.brews().get(2);
        assertThat(odd.standing()).isEqualTo(Standing.FAR_FROM_OTHERS);
        assertThat(odd.studentised()).isGreaterThan(3);
        assertThat(odd.slips()).isNotEmpty();
        assertThat(odd.fromOthers().value()).isBetween(5.55, 5.75);
        isCloseTo(review.experience(), without);
        assertThat(review.errors().after().n()).isEqualTo(6);
        assertThat(review.errorsOfCounted().orElseThrow().after().n()).isEqualTo(5);
        assertThat(review.errors().after().rootMeanSquare())
                .isGreaterThan(
                        5 * review.errorsOfCounted().orElseThrow().after().rootMeanSquare());
        assertThat(odd.bits()).isPositive();
    }

    private static void isCloseTo(Experience one, Experience other) {
        assertThat(one.brews()).isEqualTo(other.brews());
        assertThat(one.parameters()).hasSameSizeAs(other.parameters());
        for (int k = 0; k < one.parameters().size(); k++) {
            assertThat(one.parameters().get(k).at(0))
                    .isEqualTo(other.parameters().get(k).at(0));
            assertThat(one.parameters().get(k).mean())
                    .isCloseTo(other.parameters().get(k).mean(), within(1e-7));
            assertThat(one.covariance().get(k).get(k))
                    .isCloseTo(other.covariance().get(k).get(k), within(1e-8));
        }
    }

    @Test
    void aBrewThatLandsBeyondTheModelIsLeftOutOfTheLearning() {
        List<MeasuredBrew> brews = five();
        Experience without = BrewReview.of(brews).experience();
        Mash drowned = tap(part(PALE, 4)).plus(lactic(900));
        assertThat(drowned.ph()).isLessThan(4);
        brews.add(brew("drowned", drowned, 5.4));
        brews.add(brew("drowned by a dose", tap(part(PALE, 4)), 5.65, dose(20, 5.54), dose(900, 5.4)));
        BrewReview review = BrewReview.of(brews);
        assertThat(review.brews().get(5).standing()).isEqualTo(Standing.BEYOND_MODEL);
        assertThat(review.brews().get(6).standing()).isEqualTo(Standing.BEYOND_MODEL);
        isCloseTo(review.experience(), without);
        assertThat(findings(review, "review.beyond-model"))
                .extracting(Finding::pointer)
                .containsExactly("/brews/5/mash", "/brews/6/doses/1");
        Finding first = findings(review, "review.beyond-model").get(0);
        assertThat(first.subject()).isEqualTo("drowned");
        assertThat(first.expected()).hasValue(4);
        assertThat(first.observed().orElseThrow()).isCloseTo(drowned.ph(), within(0.051));
        Mash caustic = tap(part(PALE, 0.001));
        assertThat(caustic.ph()).isBetween(5.0, 7.5);
    }

    /** A malt and a product that only set-aside brews hold are not in the experience: nothing is known about them. */
    @Test
    void whatOnlyBrewsThatAreSetAsideHoldIsNotLearnt() {
        List<MeasuredBrew> brews = five();
        brews.add(brew("drowned", tap(part(Malt.of("rye"), 4)).plus(lactic(900)), 5.4));
        BrewReview review = BrewReview.of(brews);
        assertThat(review.experience().parameters())
                .extracting(LearntParameter::malt)
                .doesNotContain("rye")
                .contains("pale", "munich", "wheat");
        assertThat(review.malts())
                .filteredOn(malt -> malt.maltClass().id().equals("rye"))
                .singleElement()
                .satisfies(malt -> {
                    assertThat(malt.brews()).isZero();
                    assertThat(malt.offset().learnt().value()).isZero();
                });
    }

    @Test
    void aRecordWithoutACountedBrewTeachesNothing() {
        BrewReview review = review(brew("drowned", tap(part(PALE, 4)).plus(lactic(900)), 5.4));
        assertThat(review.experience().brews()).isZero();
        assertThat(review.errorsOfCounted()).isEmpty();
        assertThat(review.errors().before().n()).isEqualTo(1);
        assertThat(review.householdBias().learnt().value()).isEqualTo(0);
        assertThat(review.outlook().now()).isCloseTo(review.outlook().published(), within(1e-9));
        Mash mash = tap(part(PALE, 4));
        assertThat(predicted(mash, review.experience()).standardUncertainty())
                .isCloseTo(MashPrediction.of(mash).standardUncertainty(), within(1e-9));
    }

    /** Brews that agree on a pH that no mash has: the household cannot be shifted that far. */
    @Test
    void brewsThatOnlyAnImpossibleHouseholdExplainsAreSetAside() {
        List<MeasuredBrew> brews = new ArrayList<>();
        for (int i = 0; i < 12; i++) {
            brews.add(brew("brew " + i, tap(part(PALE, 4), part(Malt.of("munich"), 0.1 * i + 0.1)), 10.4));
        }
        BrewReview review = BrewReview.of(brews);
        assertThat(review.brews()).extracting(ReviewedBrew::standing).contains(Standing.UNEXPLAINABLE);
        assertThat(review.experience().parameters())
                .allSatisfy(parameter -> assertThat(Math.abs(parameter.mean())).isLessThanOrEqualTo(2));
        assertThat(findings(review, "review.unexplainable"))
                .isNotEmpty()
                .allSatisfy(finding -> assertThat(finding.outcome()).isEqualTo(Outcome.CAUTION));
        assertThat(findings(review, "review.brews").get(0).outcome()).isEqualTo(Outcome.CAUTION);
        assertThat(review.experience().brews()).isZero();
    }

    @ParameterizedTest
    @CsvSource({"4, 1", "7, 1", "8, 2", "12, 3", "3, 1", "1, 1"})
    void aQuarterOfTheBrewsMayBeSetAside(int brews, int most) {
        assertThat(BrewReview.mostOutliers(brews)).isEqualTo(most);
    }

    @Test
    void moreOddBrewsThanMayBeSetAsideAreCountedAndSaidToBe() {
        List<MeasuredBrew> brews = new ArrayList<>(Collections.nCopies(5, brew("sound", MASH, 5.65)));
        brews.add(brew("high", MASH, 6.6));
        brews.add(brew("low", MASH, 4.6));
        BrewReview review = BrewReview.of(brews);
        assertThat(review.experience().brews()).isEqualTo(6);
        Finding setAside = findings(review, "review.set-aside").get(0);
        assertThat(setAside.outcome()).isEqualTo(Outcome.CAUTION);
        assertThat(setAside.observed()).hasValue(1);
        assertThat(setAside.expected()).hasValue(1);
        assertThat(findings(review, "review.scatter").get(0).outcome()).isEqualTo(Outcome.CAUTION);
        brews.add(brew("sound", MASH, 5.65));
        BrewReview ofEight = BrewReview.of(brews);
        assertThat(ofEight.experience().brews()).isEqualTo(6);
        assertThat(findings(ofEight, "review.set-aside").get(0).outcome()).isEqualTo(Outcome.NOTE);
        assertThat(findings(ofEight, "review.scatter").get(0).outcome()).isEqualTo(Outcome.PASS);
    }

    @Test
    void theReadingFarthestFromWhatIsExpectedIsNamed() {
        List<MeasuredBrew> brews = five();
        brews.add(brew("a dose", tap(part(PALE, 4)), 5.66, dose(20, 5.55), dose(20, 4.9), dose(20, 4.8)));
        BrewReview review = BrewReview.of(brews);
        ReviewedBrew odd = review.brews().get(5);
        assertThat(odd.reading()).isEqualTo(2);
        assertThat(odd.studentised()).isLessThan(-3);
        Finding finding = findings(review, "review.brew-dose").stream()
                .filter(one -> one.subject().equals("a dose"))
                .findFirst()
                .orElseThrow();
        assertThat(finding.pointer()).isEqualTo("/brews/5/doses/1");
        assertThat(finding.outcome()).isEqualTo(Outcome.CAUTION);
    }

    @ParameterizedTest
    @CsvSource({"1, NOTE", "2, NOTE", "3, PASS", "5, PASS"})
    void fewBrewsAreSaidToBeFew(int n, Outcome outcome) {
        Finding finding = findings(same(n, 5.65), "review.brews").get(0);
        assertThat(finding.outcome()).isEqualTo(outcome);
        assertThat(finding.observed()).hasValue(n);
        assertThat(findings(same(n, 5.65), "review.scatter")).hasSize(n >= 5 ? 1 : 0);
    }

    @Test
    void theChecksOfBiasAndBufferingSayWhenTheyAreUnusual() {
        assertThat(findings(same(5, 5.60), "review.household-bias").get(0).outcome())
                .isEqualTo(Outcome.PASS);
        BrewReview low = same(8, 5.25);
        assertThat(low.householdBias().learnt().value()).isLessThan(-0.209);
        Finding bias = findings(low, "review.household-bias").get(0);
        assertThat(bias.outcome()).isEqualTo(Outcome.CAUTION);
        assertThat(bias.expected().orElseThrow()).isCloseTo(0.21, within(1e-12));
        assertThat(bias.observed().orElseThrow())
                .isCloseTo(low.householdBias().learnt().value(), within(0.0051));
        assertThat(findings(same(5, 5.60), "review.buffering").get(0).outcome()).isEqualTo(Outcome.NOTE);
        assertThat(buffering(1.0).outcome()).isEqualTo(Outcome.PASS);
        Finding strong = buffering(2.0);
        assertThat(strong.outcome()).isEqualTo(Outcome.CAUTION);
        assertThat(strong.observed().orElseThrow()).isBetween(1.5, 2.0);
        assertThat(strong.expected().orElseThrow()).isCloseTo(1.49, within(1e-12));
        assertThat(buffering(0.5).outcome()).isEqualTo(Outcome.CAUTION);
    }

    private static Finding buffering(double truly) {
        Mash written = tap(part(PALE, 5));
        Mash real = written.withModel(MashModel.standard().withBufferingScale(new Estimate(truly, 0.2)));
        MeasuredBrew brew = read("brew", written, real, 30, 30, 30);
        return findings(BrewReview.of(Collections.nCopies(10, brew)), "review.buffering")
                .get(0);
    }

    @Test
    void theOutlookIsThatOfTheClosedForm() {
        Outlook outlook = same(4, 5.65).outlook();
        double floor = OWN - Records.READING * Records.READING;
        double now = SHARED * OWN / (4 * SHARED + OWN);
        assertThat(outlook.floor()).isCloseTo(Math.sqrt(floor), within(1e-4));
        assertThat(outlook.now()).isCloseTo(Math.sqrt(floor + now), within(1e-4));
        assertThat(outlook.published()).isCloseTo(Math.sqrt(floor + SHARED), within(1e-4));
        // four times the information: (4 + m) T + s² = 4 (4 T + s²)
        int more = (int) Math.ceil(12 + 3 * OWN / SHARED);
        assertThat(outlook.brewsToHalveTheLearnable()).hasValue(more);
        assertThat(outlook.brewsToHalve()).isEmpty();
        assertThat(outlook.steps().get(2).standardUncertainty())
                .isCloseTo(Math.sqrt(floor + SHARED * OWN / (9 * SHARED + OWN)), within(1e-4));
    }

    @Test
    void whatABrewTeachesIsTheInformationOfTheClosedForm() {
        ReviewedBrew first = same(1, 5.65).brews().get(0);
        assertThat(first.bits()).isCloseTo(0.5 * Math.log(1 + SHARED / OWN) / Math.log(2), within(1e-3));
        assertThat(first.studentised()).isCloseTo(-0.07 / Math.sqrt(SHARED + OWN), within(0.01));
        ReviewedBrew second = same(2, 5.65).brews().get(0);
        double left = SHARED * OWN / (SHARED + OWN);
        assertThat(second.bits()).isCloseTo(0.5 * Math.log(1 + left / OWN) / Math.log(2), within(1e-3));
    }

    @Test
    void whatNoReviewTakesIsRefused() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> BrewReview.of(List.of()))
                .withMessageContaining("1 to 200 brews but has 0");
        assertThatIllegalArgumentException().isThrownBy(() -> same(201, 5.6)).withMessageContaining("has 201");
        MashModel other = MashModel.standard().withCarbonDioxideLost(Estimate.exactly(0.5));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> review(brew("one", MASH, 5.6), brew("two", MASH.withModel(other), 5.6)))
                .withMessageContaining("same model");
        List<MeasuredBrew> products = IntStream.rangeClosed(1, 51)
                .mapToObj(i -> brew("brew", distilled(part(PALE.named("product " + i), 5)), 5.6))
                .toList();
        assertThat(BrewReview.products(products)).isEqualTo(51);
        assertThat(BrewReview.products(five())).isZero();
        assertThatIllegalArgumentException()
                .isThrownBy(() -> BrewReview.of(products))
                .withMessageContaining("at most 50 products of malt but names 51");
        assertThat(BrewReview.of(products.subList(0, 50)).experience().parameters())
                .hasSize(3 + 1 + 50);
        MeasuredBrew.Dose dose = dose(1, 5.5);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new MeasuredBrew("b", MASH, new PhReading(5.6, 0.03), Collections.nCopies(9, dose)))
                .withMessageContaining("at most 8 doses but has 9");
        assertThat(new MeasuredBrew("b", MASH, new PhReading(5.6, 0.03), Collections.nCopies(8, dose))
                        .dosed()
                        .additions())
                .hasSize(8);
        Mash taught =
                MASH.withModel(MashModel.standard().withExperience(same(1, 5.6).experience()));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> brew("taught", taught, 5.6))
                .withMessageContaining("leave its experience out");
    }

    @Test
    void twoHundredBrewsAreTaken() {
        assertThat(same(200, 5.65).experience().brews()).isEqualTo(200);
    }

    private static List<Finding> findings(BrewReview review, String code) {
        return review.findings().stream()
                .filter(finding -> finding.code().equals(code))
                .toList();
    }
}

package tunside.review;

import static org.assertj.core.api.Assertions.assertThat;
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
import java.util.List;
import java.util.function.DoubleFunction;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.DiagonalMatrix;
import org.junit.jupiter.api.Test;
import tunside.mash.Experience;
import tunside.mash.Grist;
import tunside.mash.Liquor;
import tunside.mash.Malt;
import tunside.mash.Mash;
import tunside.mash.MashModel;
import tunside.quantity.Volume;

/** What may lie behind a brew that the others do not explain. */
class SlipSearchTest {
    private static final Malt PALE = Malt.of("pale");

    /** The odd brew, after five sound ones with doses that read as published. */
    private static BrewReview review(MeasuredBrew odd) {
        List<MeasuredBrew> brews = new ArrayList<>();
        for (int i = 0; i < 5; i++) {
            Mash mash = tap(part(PALE, 4 + 0.2 * i));
            brews.add(read("brew " + i, mash, mash, 20, 20));
        }
        brews.add(odd);
        return BrewReview.of(brews);
    }

    private static ReviewedBrew odd(MeasuredBrew odd) {
        ReviewedBrew reviewed = review(odd).brews().get(5);
        assertThat(reviewed.counted()).isFalse();
        return reviewed;
    }

    private static SuspectedSlip slip(ReviewedBrew brew, String id) {
        return slip(brew, id, null);
    }

    private static SuspectedSlip slip(ReviewedBrew brew, String id, String subject) {
        return brew.slips().stream()
                .filter(one -> one.slip().id().equals(id)
                        && (subject == null || one.subject().equals(subject)))
                .findFirst()
                .orElseThrow();
    }

    private static double variance(ReviewedBrew brew) {
        return Math.pow(brew.fromOthers().standardUncertainty(), 2) + Records.READING * Records.READING;
    }

    /** A shift s of prior variance 0.3² that a reading of variance V off by r asks for is r 0.09 / (0.09 + V). */
    @Test
    void aMeterTakesTheShiftOfTheClosedForm() {
        ReviewedBrew brew = odd(brew("odd", tap(part(PALE, 5)), 6.4));
        double off = 6.4 - brew.fromOthers().value();
        SuspectedSlip meter = slip(brew, "meter");
        assertThat(meter.stated()).isEqualTo(6.4);
        assertThat(meter.needed()).isCloseTo(6.4 - off * 0.09 / (0.09 + variance(brew)), within(1e-6));
        assertThat(meter.subject()).isEmpty();
        assertThat(meter.explains()).isTrue();
    }

    @Test
    void noSlipIsTakenForLargerThanSlipsAre() {
        ReviewedBrew brew = odd(brew("odd", tap(part(PALE, 5)), 3.0));
        SuspectedSlip meter = slip(brew, "meter");
        assertThat(meter.needed()).isCloseTo(3.0 + 3.5 * 0.3, within(1e-9));
        assertThat(meter.explains()).isFalse();
        assertThat(slip(odd(brew("odd", tap(part(PALE, 5)), 9.5)), "meter").needed())
                .isCloseTo(9.5 - 3.5 * 0.3, within(1e-9));
    }

    /** In distilled water a malt's own pH shifts the mash as a meter does, so only their commonness differs: 0.10 to 0.25. */
    @Test
    void slipsThatDoTheSameAreWeighedByHowCommonTheyAre() {
        ReviewedBrew brew = odd(brew("odd", distilled(part(PALE, 5)), 6.3));
        SuspectedSlip kind = slip(brew, "malt-kind");
        SuspectedSlip meter = slip(brew, "meter");
        assertThat(meter.weight() / kind.weight()).isCloseTo(2.5, within(0.02));
        assertThat(kind.subject()).isEqualTo("pale");
        assertThat(kind.stated()).isCloseTo(5.72, within(1e-9));
        assertThat(kind.needed()).isCloseTo(5.72 + (6.3 - meter.needed()), within(0.01));
        ReviewedBrew ofTwo = odd(brew("odd", distilled(part(PALE, 3), part(Malt.of("pale", 5), 3)), 6.3));
        double two = slip(ofTwo, "malt-kind", "pale").weight()
                + slip(ofTwo, "malt-kind", "pale (5 EBC)").weight();
        assertThat(slip(ofTwo, "malt-kind", "pale").weight()).isCloseTo(two / 2, within(1e-6));
    }

    /** Misfits of three readings that err apart, so that every shift has a closed form. */
    private static final double[] RESIDUAL = {0.3, 0.1, -0.05};

    private static final double[] VARIANCE = {0.01, 0.04, 0.02};

    /** Density of the misfits where some readings share a shift of variance 0.3², times how common that is. */
    private static double evidence(double weight, int... touched) {
        double squares = 0;
        double pull = 0;
        double information = 0;
        for (int r = 0; r < RESIDUAL.length; r++) {
            squares += RESIDUAL[r] * RESIDUAL[r] / VARIANCE[r];
        }
        for (int r : touched) {
            pull += RESIDUAL[r] / VARIANCE[r];
            information += 1 / VARIANCE[r];
        }
        double misfit = squares - pull * pull / (1 / 0.09 + information);
        return weight * Math.exp(-misfit / 2) / Math.sqrt(1 + 0.09 * information);
    }

    private static List<SuspectedSlip> suspected(Mash mash) {
        MeasuredBrew brew = brew("odd", mash, 5.9, dose(20, 5.6), dose(20, 5.4));
        Experience prior = Experience.prior(MashModel.standard(), brew.maltsByClass());
        return SlipSearch.of(
                new BrewEquation(brew, prior),
                HouseholdFit.means(prior),
                new Departure(new ArrayRealVector(RESIDUAL), new DiagonalMatrix(VARIANCE)));
    }

    private static SuspectedSlip one(List<SuspectedSlip> slips, String id, String subject) {
        return slips.stream()
                .filter(slip -> slip.slip().id().equals(id) && slip.subject().equals(subject))
                .findFirst()
                .orElseThrow();
    }

    /** Shifts of readings are linear, so their evidence is the density of the misfits: 0.25, 0.10 and a tenth among two. */
    @Test
    void theEvidenceIsThatOfTheClosedForm() {
        List<SuspectedSlip> slips = suspected(tap(part(PALE, 5)));
        SuspectedSlip meter = one(slips, "meter", "");
        SuspectedSlip first = one(slips, "first-reading", "");
        SuspectedSlip dose = one(slips, "reading-after-dose", "2");
        double ofMeter = evidence(0.25, 0, 1, 2);
        assertThat(first.weight() / meter.weight()).isCloseTo(evidence(0.10, 0) / ofMeter, within(1e-6));
        assertThat(dose.weight() / meter.weight()).isCloseTo(evidence(0.05, 2) / ofMeter, within(1e-6));
        // pull over information: (30 + 2.5 - 2.5) / (100 + 25 + 50 + 1 / 0.09)
        assertThat(meter.needed()).isCloseTo(5.9 - 30 / (175 + 1 / 0.09), within(1e-6));
        assertThat(first.needed()).isCloseTo(5.9 - 30 / (100 + 1 / 0.09), within(1e-6));
        assertThat(dose.stated()).isEqualTo(5.4);
        assertThat(dose.needed()).isCloseTo(5.4 + 2.5 / (50 + 1 / 0.09), within(1e-6));
        assertThat(first.explains()).isTrue();
        // the first reading stays three deviations off
        assertThat(dose.explains()).isFalse();
        assertThat(slips.stream().mapToDouble(SuspectedSlip::weight).sum()).isCloseTo(1, within(1e-9));
        assertThat(slips).isSortedAccordingTo((a, b) -> Double.compare(b.weight(), a.weight()));
    }

    /** What is not in the mash cannot be multiplied; but alkalinity and calcium can be missing. */
    @Test
    void nothingTimesAFactorIsNoSlip() {
        Mash mash = tap(part(PALE, 5)).plus(lactic(0));
        List<SuspectedSlip> slips = suspected(mash);
        SuspectedSlip acid = one(slips, "acid-strength", "lactic");
        assertThat(acid.stated()).as("the doses alone").isCloseTo(40, within(1e-9));
        List<String> ofWater = suspected(distilled(part(PALE, 5))).stream()
                .map(slip -> slip.slip().id())
                .toList();
        assertThat(ofWater).contains("water", "hardness").doesNotContain("salt-mass");
    }

    /** Least of misfit and rarity over a fine grid of whole mashes, which knows nothing of slopes. */
    private static double best(
            ReviewedBrew brew, Experience experience, double spread, boolean times, DoubleFunction<Mash> at) {
        double best = Double.POSITIVE_INFINITY;
        double size = 0;
        for (int i = -700; i <= 700; i++) {
            double candidate = spread * i / 200;
            double left = brew.brew().first().ph()
                    - predicted(at.apply(times ? Math.exp(candidate) : candidate), experience)
                            .ph();
            double cost = left * left / variance(brew) + candidate * candidate / (spread * spread);
            if (cost < best) {
                best = cost;
                size = candidate;
            }
        }
        return size;
    }

    @Test
    void theMassOfAMaltThatIsNeededIsThatOfAGridOfMashes() {
        Mash written = tap(part(PALE, 4), part(Malt.of("roasted"), 0.05));
        BrewReview review = review(brew("stout", written, 5.25));
        ReviewedBrew brew = review.brews().get(5);
        SuspectedSlip slip = slip(brew, "malt-mass", "roasted");
        double size = best(
                brew,
                review.experience(),
                0.7,
                true,
                factor -> new Mash(
                        new Grist(List.of(part(PALE, 4), part(Malt.of("roasted"), 0.05 * factor))),
                        written.liquor(),
                        List.of(),
                        written.conditions(),
                        written.model()));
        assertThat(slip.stated()).isCloseTo(0.05, within(1e-12));
        assertThat(Math.log(slip.needed() / 0.05)).isCloseTo(size, within(0.03));
        assertThat(slip.needed()).isGreaterThan(0.2);
    }

    @Test
    void theWaterThatIsNeededIsThatOfAGridOfMashes() {
        Mash written = tap(part(PALE, 5));
        BrewReview review = review(brew("odd", written, 6.15));
        ReviewedBrew brew = review.brews().get(5);
        SuspectedSlip slip = slip(brew, "water");
        double size = best(
                brew,
                review.experience(),
                1.5,
                false,
                // the stated carbonic acid stays beside the alkalinity, as a report's pH of 7.6 has little of it
                more -> Mash.of(
                        written.grist(), Liquor.titrated(new Volume(20), Math.max(0, 2 + more), 4.4, 7.6, 3, 0.5)));
        assertThat(slip.stated()).isCloseTo(2, within(0.05));
        assertThat(slip.needed() - slip.stated()).isCloseTo(size, within(0.15));
        assertThat(slip.needed()).isGreaterThan(4);
    }

    @Test
    void theAcidThatIsNeededIsThatOfAGridOfMashes() {
        Mash plain = tap(part(PALE, 5));
        BrewReview review = review(brew("odd", plain.plus(lactic(20)), 5.2));
        ReviewedBrew brew = review.brews().get(5);
        SuspectedSlip slip = slip(brew, "acid-strength");
        double size = best(brew, review.experience(), 0.7, true, factor -> plain.plus(lactic(20 * factor)));
        assertThat(slip.subject()).isEqualTo("lactic");
        assertThat(slip.stated()).isCloseTo(20, within(1e-9));
        assertThat(Math.log(slip.needed() / 20)).isCloseTo(size, within(0.02));
    }

    /** Ten times the acid on the label, in the mash and in its doses: one bottle, one slip. */
    @Test
    void allAdditionsOfAnAcidAreOneBottle() {
        Mash base = tap(part(PALE, 5));
        MeasuredBrew truly = read("odd", base, base.plus(lactic(10)), 10, 10);
        MeasuredBrew written = brew(
                "odd",
                base.plus(lactic(30)),
                truly.first().ph(),
                dose(30, truly.doses().get(0).after().ph()),
                dose(30, truly.doses().get(1).after().ph()));
        ReviewedBrew brew = odd(written);
        SuspectedSlip first = brew.slips().get(0);
        assertThat(first.slip().id()).isEqualTo("acid-strength");
        assertThat(first.stated()).isCloseTo(90, within(1e-9));
        assertThat(first.needed()).isBetween(28.0, 40.0);
        assertThat(first.explains()).isTrue();
    }

    @Test
    void aReadingAfterADoseIsNamedByTheNumberOfTheDose() {
        Mash mash = tap(part(PALE, 5));
        MeasuredBrew sound = read("odd", mash, mash, 15, 15, 15);
        double third = sound.doses().get(2).after().ph();
        double second = sound.doses().get(1).after().ph();
        ReviewedBrew brew = odd(brew(
                "odd",
                mash,
                sound.first().ph(),
                dose(15, sound.doses().get(0).after().ph()),
                dose(15, second + 0.6),
                dose(15, third)));
        SuspectedSlip first = brew.slips().get(0);
        assertThat(first.slip().id()).isEqualTo("reading-after-dose");
        assertThat(first.subject()).isEqualTo("2");
        assertThat(first.stated()).isCloseTo(second + 0.6, within(1e-12));
        assertThat(first.needed()).isCloseTo(second, within(0.05));
        assertThat(brew.slips().stream().filter(slip -> slip.slip().id().equals("reading-after-dose")))
                .hasSize(3);
    }

    @Test
    void aMistypedFirstReadingIsToldFromAMeterByTheDosesAfterIt() {
        Mash mash = tap(part(PALE, 5));
        MeasuredBrew sound = read("odd", mash, mash, 15, 15);
        ReviewedBrew mistyped = odd(brew(
                "odd",
                mash,
                sound.first().ph() + 0.7,
                sound.doses().get(0),
                sound.doses().get(1)));
        assertThat(mistyped.slips().get(0).slip().id()).isEqualTo("first-reading");
        assertThat(mistyped.slips().get(0).needed()).isCloseTo(sound.first().ph(), within(0.05));
        ReviewedBrew meter = odd(brew(
                "odd",
                mash,
                sound.first().ph() + 0.5,
                dose(15, sound.doses().get(0).after().ph() + 0.5),
                dose(15, sound.doses().get(1).after().ph() + 0.5)));
        assertThat(meter.slips().get(0).slip().id()).isEqualTo("meter");
        assertThat(meter.slips().get(0).needed()).isCloseTo(sound.first().ph(), within(0.06));
        // without a dose both are the same, and only the meter is named
        ReviewedBrew single = odd(brew("odd", mash, sound.first().ph() + 0.7));
        assertThat(single.slips())
                .extracting(slip -> slip.slip().id())
                .doesNotContain("first-reading", "reading-after-dose");
    }

    /** Pounds taken for kilograms: the doses move the pH more than twice as far. */
    @Test
    void aSlipOfTheWholeGristIsNamedWithItsFactor() {
        double factor = 0.4536;
        Mash truly = tap(part(PALE, 4), part(Malt.of("munich"), 1));
        Mash written = new Mash(
                new Grist(List.of(part(PALE, 4 / factor), part(Malt.of("munich"), 1 / factor))),
                truly.liquor(),
                List.of(),
                truly.conditions(),
                truly.model());
        ReviewedBrew brew = odd(read("odd", written, truly, 30, 30, 30));
        SuspectedSlip slip = slip(brew, "grist-mass");
        assertThat(slip.stated()).isCloseTo(5 / factor, within(1e-9));
        assertThat(slip.needed() / slip.stated()).isBetween(0.75 * factor, 1.25 * factor);
        assertThat(slip.explains()).isTrue();
        assertThat(brew.slips().subList(0, 4)).contains(slip);
    }

    @Test
    void aGristOfOneMaltHasNoSlipOfTheWholeBesideThatOfTheMalt() {
        ReviewedBrew brew = odd(brew("odd", tap(part(PALE, 5)), 6.4));
        assertThat(brew.slips())
                .extracting(slip -> slip.slip().id())
                .doesNotContain("grist-mass")
                .contains("malt-mass");
    }

    @Test
    void aBrewThatFitsHasNoSlip() {
        Mash mash = tap(part(PALE, 5));
        assertThat(review(read("sound", mash, mash, 20)).brews()).allSatisfy(brew -> {
            assertThat(brew.counted()).isTrue();
            assertThat(brew.slips()).isEmpty();
        });
    }
}

package tunside.mash;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tunside.chemistry.Acids;
import tunside.chemistry.ProtonBalance;
import tunside.chemistry.Solution;
import tunside.quantity.Colour;
import tunside.quantity.Volume;

/** Laws that hold for every mash; each seed draws another mash. */
class MashPropertiesTest {
    private static final List<String> ACIDS = List.copyOf(Acids.all().keySet());
    private static final List<String> CLASSES = List.copyOf(MaltClasses.all().keySet());

    static LongStream seeds() {
        return LongStream.range(0, 200);
    }

    /** A random mash, with what is needed to build it again in another size or with another water. */
    private record Drawn(
            List<GristPart> parts,
            double litres,
            double alkalinity,
            double calcium,
            double magnesium,
            String acid,
            double millimoles) {
        static Drawn of(long seed) {
            SplittableRandom random = new SplittableRandom(seed);
            List<GristPart> parts = new ArrayList<>();
            int malts = random.nextInt(1, 7);
            double kilograms = 0;
            for (int i = 0; i < malts; i++) {
                double mass = random.nextDouble(0.05, 5);
                kilograms += mass;
                parts.add(Mashes.part(malt(random), mass));
            }
            return new Drawn(
                    parts,
                    kilograms * random.nextDouble(2, 6),
                    random.nextDouble(0, 8),
                    random.nextDouble(0, 8),
                    random.nextDouble(0, 3),
                    ACIDS.get(random.nextInt(ACIDS.size())),
                    kilograms * random.nextDouble(0, 30));
        }

        private static Malt malt(SplittableRandom random) {
            MaltClass maltClass = MaltClasses.get(CLASSES.get(random.nextInt(CLASSES.size())));
            Optional<Colour> colour =
                    random.nextBoolean() ? Optional.of(new Colour(random.nextDouble(2, 900))) : Optional.empty();
            MeasuredMalt measured = random.nextInt(3) > 0
                    ? MeasuredMalt.NOTHING
                    : MeasuredMalt.of(
                            new Estimate(random.nextDouble(4.4, 6.1), 0.04),
                            BufferCurve.linear(random.nextDouble(20, 60), 0.1));
            return new Malt(maltClass, colour, measured, Optional.empty(), Optional.empty());
        }

        Mash mash() {
            return mash(1, alkalinity, millimoles);
        }

        Mash mash(double factor, double meqPerL, double acidMillimoles) {
            return Mash.of(
                    new Grist(parts.stream()
                            .map(part -> Mashes.part(
                                    part.malt(), factor * part.mass().kilograms()))
                            .toList()),
                    Liquor.titrated(new Volume(factor * litres), meqPerL, 4.3, 8.0, calcium, magnesium),
                    Mashes.acid(acid, factor * acidMillimoles));
        }
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void theBalanceIsZeroAtThePredictedPh(long seed) {
        Mash mash = Drawn.of(seed).mash();
        MashPrediction prediction = MashPrediction.of(mash);
        double sum = prediction.contributions().stream()
                .mapToDouble(MashPrediction.Contribution::meq)
                .sum();
        assertThat(sum).isCloseTo(0, within(1e-6 * prediction.bufferingMeqPerPh()));
        assertThat(mash.balance().uptakeMeq(prediction.ph()))
                .isCloseTo(0, within(1e-6 * prediction.bufferingMeqPerPh()));
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void twoHalfGristsGiveTheWhole(long seed) {
        Drawn drawn = Drawn.of(seed);
        List<GristPart> halves = new ArrayList<>();
        for (int half = 0; half < 2; half++) {
            drawn.parts()
                    .forEach(part ->
                            halves.add(Mashes.part(part.malt(), part.mass().kilograms() / 2)));
        }
        Mash whole = drawn.mash();
        Mash joined = new Mash(new Grist(halves), whole.liquor(), whole.additions(), whole.conditions(), whole.model());
        MashPrediction one = MashPrediction.of(whole);
        MashPrediction other = MashPrediction.of(joined);
        assertThat(other.ph()).isCloseTo(one.ph(), within(1e-9));
        assertThat(other.standardUncertainty()).isCloseTo(one.standardUncertainty(), within(1e-9));
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void scalingEverythingChangesNoPh(long seed) {
        Drawn drawn = Drawn.of(seed);
        MashPrediction small = MashPrediction.of(drawn.mash());
        MashPrediction large = MashPrediction.of(drawn.mash(37, drawn.alkalinity(), drawn.millimoles()));
        assertThat(large.ph()).isCloseTo(small.ph(), within(1e-8));
        assertThat(large.standardUncertainty()).isCloseTo(small.standardUncertainty(), within(1e-8));
        assertThat(large.bufferingMeqPerPh()).isCloseTo(37 * small.bufferingMeqPerPh(), within(1e-4));
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void moreAlkalinityNeverLowersThePh(long seed) {
        Drawn drawn = Drawn.of(seed);
        double last = Double.NEGATIVE_INFINITY;
        for (double alkalinity = 0; alkalinity <= 10; alkalinity += 0.5) {
            double ph = drawn.mash(1, alkalinity, drawn.millimoles()).ph();
            assertThat(ph).isGreaterThanOrEqualTo(last);
            last = ph;
        }
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void moreAcidNeverRaisesThePh(long seed) {
        Drawn drawn = Drawn.of(seed);
        double last = Double.POSITIVE_INFINITY;
        for (double millimoles = 0; millimoles <= 200 * drawn.litres(); millimoles += 5 * drawn.litres()) {
            double ph = drawn.mash(1, drawn.alkalinity(), millimoles).ph();
            assertThat(ph).isLessThan(last);
            last = ph;
        }
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void theUptakeNeverRisesWithThePh(long seed) {
        ProtonBalance balance = Drawn.of(seed).mash().balance();
        double last = Double.POSITIVE_INFINITY;
        for (double ph = 0; ph <= 14; ph += 0.25) {
            assertThat(balance.uptakeMeq(ph)).isLessThan(last);
            last = balance.uptakeMeq(ph);
        }
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void acidOfTheTitrationCurveBringsTheMashThere(long seed) {
        Mash mash = Drawn.of(seed).mash();
        for (MashPrediction.TitrationPoint point : MashPrediction.of(mash).titration()) {
            if (point.acidMeq() > 0) {
                assertThat(mash.plus(Mashes.acid("hydrochloric", point.acidMeq()))
                                .ph())
                        .isCloseTo(point.ph(), within(1e-6));
            }
        }
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void varianceSharesSumToOneAndFall(long seed) {
        List<MashPrediction.Influence> influences =
                MashPrediction.of(Drawn.of(seed).mash()).influences();
        double sum = 0;
        double last = 1;
        for (MashPrediction.Influence influence : influences) {
            assertThat(influence.varianceShare()).isBetween(0.0, last);
            last = influence.varianceShare();
            sum += last;
        }
        assertThat(sum).isCloseTo(1, within(1e-9));
    }

    /** An input is looked for only in the components that it is in: the difference of all says the same. */
    @ParameterizedTest
    @MethodSource("seeds")
    void everyInputIsLookedForWhereItIs(long seed) {
        Mash drawn = Drawn.of(seed).mash();
        List<Malt> malts = drawn.grist().parts().stream().map(GristPart::malt).toList();
        Mash mash = new Mash(
                drawn.grist(),
                drawn.liquor(),
                List.of(
                        Mashes.salt(Mashes.CHALK, 3),
                        Mashes.acid("lactic", 9),
                        Mashes.salt(Mashes.EPSOM, 4),
                        Mashes.acid("phosphoric", 5)),
                new MashConditions(OptionalDouble.of(0.9), Optional.empty(), true),
                drawn.model().withExperience(Experience.prior(drawn.model(), malts)));
        MashEquation equation = MashEquation.of(mash);
        double[] centre = equation.centre();
        double ph = mash.ph();
        double[] slopes = equation.phPerUnit(centre, ph, 1);
        for (int i = 0; i < centre.length; i++) {
            double step = equation.inputs().get(i).standardUncertainty() / 50;
            double[] above = centre.clone();
            double[] below = centre.clone();
            above[i] += step;
            below[i] -= step;
            double whole = (equation.uptakeMeq(above, ph) - equation.uptakeMeq(below, ph)) / (2 * step);
            double expected = step > 0 ? whole : 0;
            assertThat(slopes[i])
                    .as(equation.inputs().get(i).id())
                    .isCloseTo(expected, within(1e-6 * (1 + Math.abs(expected))));
        }
    }

    /** What was dosed into the liquor before is the same as the same acid in the mash; bisulfate, 3e-5 of a pH, is not in a liquor. */
    @Test
    void anAcidInTheLiquorActsAsOneInTheMash() {
        for (String id : ACIDS) {
            Mash hard = Mashes.porter();
            Liquor liquor = hard.liquor();
            Solution treated = liquor.solution().plus(Acids.get(id).perMole().scaled(0.001));
            Mash inLiquor = new Mash(
                    hard.grist(),
                    new Liquor(liquor.volume(), treated, liquor.samplePh()),
                    hard.additions(),
                    hard.conditions(),
                    hard.model());
            Mash inMash = hard.plus(Mashes.acid(id, liquor.volume().litres()));
            assertThat(inLiquor.ph())
                    .as(id)
                    .isCloseTo(inMash.ph(), within(5e-5))
                    .isLessThan(hard.ph() - 0.01);
        }
    }
}

package tunside.review;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import tunside.mash.Mash;
import tunside.mash.MashModel;
import tunside.mash.MashPrediction;

/**
 * 500 virtual brewers with six brews each: what the first five teach is tried on the sixth, of the same malts and of other
 * products of the same classes, for brewers who write the products' names down and for those who do not.
 */
class BrewReviewSimulationTest {
    private static final int BREWERS = 500;
    private static final int LEARNED_FROM = 5;
    private static final String SAME = "river";
    private static final String OTHER = "hill";
    private static final Tally PUBLISHED = new Tally();
    private static final Tally UNNAMED = new Tally();
    private static final Tally NAMED = new Tally();
    private static final Tally PUBLISHED_AFTER_A_CHANGE = new Tally();
    private static final Tally UNNAMED_AFTER_A_CHANGE = new Tally();
    private static final Tally NAMED_AFTER_A_CHANGE = new Tally();

    private static final class Tally {
        private final List<Double> errors = new ArrayList<>();
        private int inside;

        void add(MashPrediction prediction, double truePh) {
            errors.add(Math.abs(prediction.ph() - truePh));
            inside += truePh >= prediction.low90() && truePh <= prediction.high90() ? 1 : 0;
        }

        double median() {
            double[] sorted =
                    errors.stream().mapToDouble(Double::doubleValue).sorted().toArray();
            return (sorted[(sorted.length - 1) / 2] + sorted[sorted.length / 2]) / 2;
        }

        double coverage() {
            return (double) inside / errors.size();
        }

        @Override
        public String toString() {
            return "median error %.4f pH, 90 %% intervals cover %.1f %%".formatted(median(), 100 * coverage());
        }
    }

    @BeforeAll
    static void brew() {
        for (int seed = 0; seed < BREWERS; seed++) {
            sixBrews(seed, false, SAME, PUBLISHED, UNNAMED);
            sixBrews(seed, true, SAME, new Tally(), NAMED);
            sixBrews(seed, false, OTHER, PUBLISHED_AFTER_A_CHANGE, UNNAMED_AFTER_A_CHANGE);
            sixBrews(seed, true, OTHER, new Tally(), NAMED_AFTER_A_CHANGE);
        }
        System.out.printf(
                "500 virtual brewers, same malts: published %s; without names %s; with names %s%n"
                        + "after a change of malts: published %s; without names %s; with names %s%n",
                PUBLISHED, UNNAMED, NAMED, PUBLISHED_AFTER_A_CHANGE, UNNAMED_AFTER_A_CHANGE, NAMED_AFTER_A_CHANGE);
    }

    private static void sixBrews(int seed, boolean names, String shop, Tally published, Tally learnt) {
        VirtualHousehold household = new VirtualHousehold(1000 + seed, names);
        List<MeasuredBrew> record = new ArrayList<>();
        for (int i = 0; i < LEARNED_FROM; i++) {
            record.add(household.brew("brew " + i, SAME, i % 2 == 1).brew());
        }
        VirtualHousehold.Brew next = household.brew("next", shop, false);
        Mash mash = next.brew().mash();
        MashModel model =
                MashModel.standard().withExperience(BrewReview.of(record).experience());
        published.add(MashPrediction.of(mash), next.truePh());
        learnt.add(MashPrediction.of(mash.withModel(model)), next.truePh());
    }

    @Test
    void fiveBrewsHalveTheErrorOfTheNext() {
        assertThat(UNNAMED.median()).isLessThan(0.5 * PUBLISHED.median());
        assertThat(NAMED.median()).isLessThan(0.5 * PUBLISHED.median());
    }

    @Test
    void theIntervalsHoldForTheSameMalts() {
        for (Tally tally : List.of(PUBLISHED, UNNAMED, NAMED)) {
            assertThat(tally.coverage()).as(tally.toString()).isBetween(0.87, 0.93);
        }
    }

    @Test
    void theIntervalsHoldAfterAChangeOfMaltsWhereProductsAreNamed() {
        assertThat(NAMED_AFTER_A_CHANGE.coverage()).isBetween(0.87, 0.93);
        assertThat(NAMED_AFTER_A_CHANGE.median()).isLessThan(PUBLISHED_AFTER_A_CHANGE.median());
    }

    /** What the check about an unnamed product warns of. */
    @Test
    void theIntervalsClaimTooMuchAfterAChangeThatNobodyNames() {
        assertThat(UNNAMED_AFTER_A_CHANGE.coverage()).isLessThan(0.8);
    }
}

package tunside.review;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import tunside.mash.Mash;
import tunside.mash.MashModel;
import tunside.mash.MashPrediction;

/** 500 virtual brewers with six brews each: what the first five teach is tried on the sixth. */
class BrewReviewSimulationTest {
    private static final int BREWERS = 500;

    private static final class Tally {
        final List<Double> errors = new ArrayList<>();
        int inside;

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
    }

    @Test
    void probe() {
        for (int n : new int[] {1, 2, 3, 5, 10}) {
            Tally without = new Tally();
            Tally with = new Tally();
            int aside = 0;
            long t0 = System.nanoTime();
            for (int seed = 0; seed < BREWERS; seed++) {
                VirtualHousehold household = new VirtualHousehold(1000 + seed);
                List<MeasuredBrew> record = new ArrayList<>();
                for (int i = 0; i < n; i++) {
                    record.add(household.brew("brew " + i, i % 2 == 1).brew());
                }
                VirtualHousehold.Brew next = household.brew("next", false);
                BrewReview review = BrewReview.of(record);
                aside += record.size() - review.experience().brews();
                Mash mash = next.brew().mash();
                without.add(MashPrediction.of(mash), next.truePh());
                with.add(
                        MashPrediction.of(mash.withModel(MashModel.standard().withExperience(review.experience()))),
                        next.truePh());
            }
            System.out.printf(
                    "n %d: without median %.4f coverage %.3f; with median %.4f coverage %.3f; ratio %.3f; aside %d; %.1f ms each%n",
                    n,
                    without.median(),
                    without.coverage(),
                    with.median(),
                    with.coverage(),
                    with.median() / without.median(),
                    aside,
                    (System.nanoTime() - t0) / 1e6 / BREWERS);
        }
    }
}

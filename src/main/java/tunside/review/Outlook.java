package tunside.review;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import org.hipparchus.linear.RealMatrix;

/**
 * How sure the next prediction is for a grist like those of the record, and what more brews like them would bring.
 *
 * @param published standard uncertainty from published values alone, pH
 * @param now with the experience
 * @param floor that no number of brews goes below: lots, weighing, water and the time of the sample differ each time
 * @param brewsToHalve more brews that halve {@code now}; empty where the floor forbids it
 * @param brewsToHalveTheLearnable more brews that halve the part of {@code now} above the floor (variances subtracted)
 * @param steps the uncertainty after a few more brews
 */
public record Outlook(
        double published,
        double now,
        double floor,
        OptionalInt brewsToHalve,
        OptionalInt brewsToHalveTheLearnable,
        List<Step> steps) {
    private static final int MOST_BREWS = 1000;
    private static final int[] STEPS = {1, 3, 5, 10, 20};

    public Outlook {
        steps = List.copyOf(steps);
    }

    /**
     * After more brews.
     *
     * @param moreBrews how many
     * @param standardUncertainty of the next prediction, pH
     */
    public record Step(int moreBrews, double standardUncertainty) {}

    /**
     * @param belief after the record
     * @param slopes of each brew's first reading to the parameters
     * @param ownVariances of each brew's first reading at known parameters
     * @param perBrew information of one more brew like those of the record
     */
    static Outlook of(
            NormalBelief belief,
            RealMatrix priorCovariance,
            List<RealMatrix> slopes,
            List<Double> ownVariances,
            RealMatrix perBrew) {
        double floor = ownVariances.stream().mapToDouble(Double::doubleValue).sum() / ownVariances.size();
        double learnable = learnable(slopes, belief.covariance());
        List<Step> steps = new ArrayList<>();
        for (int more : STEPS) {
            steps.add(new Step(more, Math.sqrt(floor + after(belief, slopes, perBrew, more))));
        }
        return new Outlook(
                Math.sqrt(floor + learnable(slopes, priorCovariance)),
                Math.sqrt(floor + learnable),
                Math.sqrt(floor),
                fewest(belief, slopes, perBrew, (floor + learnable) / 4 - floor),
                fewest(belief, slopes, perBrew, learnable / 4),
                steps);
    }

    private static double learnable(List<RealMatrix> slopes, RealMatrix covariance) {
        double sum = 0;
        for (RealMatrix slope : slopes) {
            sum += NormalBelief.carried(slope, covariance).getEntry(0, 0);
        }
        return sum / slopes.size();
    }

    private static double after(NormalBelief belief, List<RealMatrix> slopes, RealMatrix perBrew, int more) {
        return learnable(slopes, belief.covarianceAfter(perBrew.scalarMultiply(more)));
    }

    /** Fewest brews that bring the learnable variance down to a value; by halving, since it falls with every brew. */
    private static OptionalInt fewest(
            NormalBelief belief, List<RealMatrix> slopes, RealMatrix perBrew, double variance) {
        if (!(variance > 0) || after(belief, slopes, perBrew, MOST_BREWS) > variance) {
            return OptionalInt.empty();
        }
        int tooFew = 0;
        int enough = MOST_BREWS;
        while (enough - tooFew > 1) {
            int middle = (tooFew + enough) / 2;
            if (after(belief, slopes, perBrew, middle) > variance) {
                tooFew = middle;
            } else {
                enough = middle;
            }
        }
        return OptionalInt.of(enough);
    }
}

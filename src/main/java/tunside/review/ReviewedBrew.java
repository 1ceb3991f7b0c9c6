package tunside.review;

import java.util.List;
import tunside.mash.Estimate;

/**
 * A brew as the review sees it.
 *
 * @param brew which
 * @param published prediction of the first reading's true pH from published values alone
 * @param publishedReadings pH that published values let expect of each reading, the first and then one a dose
 * @param fromOthers the same with what all other counted brews taught
 * @param studentised the reading, or the answer to a dose, that is farthest from what the others let expect, in standard
 *     deviations with its sign
 * @param reading where that is: 0 the first reading, then one a dose
 * @param standing whether the experience rests on it
 * @param bits information that it added to the others'; that it would have added where it is not counted
 * @param slips what may lie behind it, the most likely first, where it lies far from the others
 */
public record ReviewedBrew(
        MeasuredBrew brew,
        Estimate published,
        List<Double> publishedReadings,
        Estimate fromOthers,
        double studentised,
        int reading,
        Standing standing,
        double bits,
        List<SuspectedSlip> slips) {
    public ReviewedBrew {
        publishedReadings = List.copyOf(publishedReadings);
        slips = List.copyOf(slips);
    }

    /** Whether the experience rests on it. */
    public boolean counted() {
        return standing == Standing.COUNTED;
    }
}

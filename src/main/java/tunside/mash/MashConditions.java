package tunside.mash;

import java.util.Optional;
import java.util.OptionalDouble;
import tunside.quantity.TimeSpan;

/**
 * How the mash is made, where known.
 *
 * @param millGapMm gap of the mill, 0 (pulverised) to 2 mm; a coarser crush buffers less
 * @param rest time from mashing in to the sample; absent: the sample is taken after about ten minutes
 * @param decoction whether a part of the mash is boiled before the sample
 */
public record MashConditions(OptionalDouble millGapMm, Optional<TimeSpan> rest, boolean decoction) {
    /** Nothing known: a fine crush, a sample after about ten minutes, no decoction. */
    public static final MashConditions UNSTATED = new MashConditions(OptionalDouble.empty(), Optional.empty(), false);

    public MashConditions {
        millGapMm.ifPresent(gap -> {
            if (!(gap >= 0 && gap <= 2)) {
                throw new IllegalArgumentException("gap of the mill (%s mm) must be from 0 to 2".formatted(gap));
            }
        });
    }
}

package tunside.electrode;

import java.util.List;
import java.util.OptionalDouble;

/**
 * A cause after it was tried on the readings.
 *
 * @param cause which
 * @param weight share of all causes' evidence, 0 to 1; the weights of all causes sum to 1
 * @param parameter the value that explains the readings best on average, in {@link Cause#unit}; empty without one
 * @param parameterUncertainty its standard deviation after the readings
 * @param readings that it touches, counted from 0, in the variant that explains most; empty for all
 * @param improvement how much better it explains the readings than a sound electrode does: natural logarithm of the
 *     ratio of both evidences, priors left out
 */
public record SuspectedCause(
        Cause cause,
        double weight,
        OptionalDouble parameter,
        OptionalDouble parameterUncertainty,
        List<Integer> readings,
        double improvement) {
    public SuspectedCause {
        readings = List.copyOf(readings);
    }
}

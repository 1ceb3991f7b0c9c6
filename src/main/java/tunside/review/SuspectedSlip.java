package tunside.review;

import java.util.OptionalDouble;

/**
 * A slip after it was tried on an odd brew.
 *
 * @param slip which
 * @param subject whose: a malt, an acid, the number of a dose; empty for meter and liquor
 * @param stated value as written down, in the slip's unit
 * @param needed value that explains the readings best, slips that size being as rare as they are
 * @param weight share of all slips' evidence, 0 to 1
 * @param explains whether the readings would no longer be odd
 */
public record SuspectedSlip(Slip slip, String subject, double stated, double needed, double weight, boolean explains) {
    /** How many times what is stated is needed; empty where the slip does not multiply, as then there may be none. */
    public OptionalDouble times() {
        return slip.scale() == Slip.Scale.TIMES ? OptionalDouble.of(needed / stated) : OptionalDouble.empty();
    }
}

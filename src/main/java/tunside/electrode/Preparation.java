package tunside.electrode;

import java.util.Optional;
import java.util.OptionalDouble;
import tunside.quantity.TimeSpan;

/**
 * How a buffer came to be in the cup.
 *
 * @param waterRatio water used over the label's volume, 0.5 to 2; empty for a ready solution or where not known
 * @param age since {@code state}; empty where not known, then it counts as fresh
 * @param state what the age counts from
 */
public record Preparation(OptionalDouble waterRatio, Optional<TimeSpan> age, BufferState state) {
    private static final double SECONDS_PER_DAY = 86400;

    public Preparation {
        if (waterRatio.isPresent() && !(waterRatio.getAsDouble() >= 0.5 && waterRatio.getAsDouble() <= 2)) {
            throw new IllegalArgumentException(
                    "water used must be from 0.5 to 2 times the label's volume but is %s times"
                            .formatted(waterRatio.getAsDouble()));
        }
    }

    /** Fresh, made up as the label says, as far as is known. */
    public static Preparation fresh() {
        return new Preparation(OptionalDouble.empty(), Optional.empty(), BufferState.OPENED);
    }

    /** Water beyond the label's volume, as a fraction of it; 0 where not known. */
    double excessWater() {
        return waterRatio.orElse(1) - 1;
    }

    /** Age in shelf lives; 0 where not known, not above the number after which nothing more is assumed. */
    double shelfLives(BufferSubstance substance) {
        double days = age.map(span -> span.seconds() / SECONDS_PER_DAY).orElse(0.0);
        return Math.min(
                days / BufferChange.shelfLifeDays(substance, state), ElectrodeLimits.preparation("most-shelf-lives"));
    }
}

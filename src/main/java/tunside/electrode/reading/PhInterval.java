package tunside.electrode.reading;

import java.util.OptionalDouble;

/** A range of pH, open at an end that is empty. */
public record PhInterval(OptionalDouble low, OptionalDouble high) {
    public PhInterval {
        if (!(low.orElse(0) < high.orElse(14) && low.orElse(0) >= 0 && high.orElse(14) <= 14)) {
            throw new IllegalArgumentException(
                    "the range must rise within 0 to 14 but is from %s to %s".formatted(low, high));
        }
    }
}

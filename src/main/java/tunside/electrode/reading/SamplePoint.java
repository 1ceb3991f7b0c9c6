package tunside.electrode.reading;

import tunside.quantity.Potential;
import tunside.quantity.Temperature;

/**
 * One reading in the sample.
 *
 * @param seconds since the first reading or any other fixed moment, 0 to 86,400
 * @param potential of the electrode, or behind the display
 * @param temperature of the sample
 */
public record SamplePoint(double seconds, Potential potential, Temperature temperature) {
    /** Longest series, s. */
    public static final double LONGEST_S = 86_400;

    public SamplePoint {
        if (!(seconds >= 0 && seconds <= LONGEST_S)) {
            throw new IllegalArgumentException("time must be from 0 to %s s but is %s s".formatted(LONGEST_S, seconds));
        }
    }
}

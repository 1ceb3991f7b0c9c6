package tunside.electrode;

import java.util.Optional;
import tunside.quantity.Potential;
import tunside.quantity.Temperature;
import tunside.quantity.TimeSpan;

/**
 * One reading in one cup.
 *
 * @param cup what stands in it
 * @param temperature of the buffer
 * @param potential of the electrode, or behind the display
 * @param settlingTime until the reading stood still, where it was watched
 */
public record BufferReading(
        BufferCup cup, Temperature temperature, Potential potential, Optional<TimeSpan> settlingTime) {
    public BufferReading {
        cup.value(temperature); // refuses a temperature outside the buffer's table
    }

    /** A reading of a meter that shows pH. */
    public static BufferReading displayed(
            BufferCup cup,
            Temperature temperature,
            double displayedPh,
            MeterCompensation compensation,
            Optional<TimeSpan> settlingTime) {
        return new BufferReading(
                cup, temperature, compensation.potentialBehind(displayedPh, temperature), settlingTime);
    }

    /** What the buffer is taken to be. */
    public BufferValue buffer() {
        return cup.value(temperature);
    }
}

package tunside.electrode;

import java.util.Optional;
import tunside.quantity.Potential;
import tunside.quantity.Temperature;
import tunside.quantity.TimeSpan;

/** One reading in one cup. */
public final class BufferReading {
    private final BufferCup cup;
    private final Temperature temperature;
    private final Potential potential;
    private final Optional<TimeSpan> settlingTime;
    private final BufferValue buffer;

    /**
     * A reading.
     *
     * @param cup what stands in it
     * @param temperature of the buffer
     * @param potential of the electrode, or behind the display
     * @param settlingTime until the reading stood still, where it was watched
     * @throws IllegalArgumentException for a temperature outside the buffer's table
     */
    public BufferReading(BufferCup cup, Temperature temperature, Potential potential, Optional<TimeSpan> settlingTime) {
        this.cup = cup;
        this.temperature = temperature;
        this.potential = potential;
        this.settlingTime = settlingTime;
        this.buffer = cup.value(temperature);
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

    /** What stands in the cup. */
    public BufferCup cup() {
        return cup;
    }

    /** Temperature of the buffer. */
    public Temperature temperature() {
        return temperature;
    }

    /** Potential of the electrode, or behind the display. */
    public Potential potential() {
        return potential;
    }

    /** Time until the reading stood still, where it was watched. */
    public Optional<TimeSpan> settlingTime() {
        return settlingTime;
    }

    /** What the buffer is taken to be. */
    public BufferValue buffer() {
        return buffer;
    }
}

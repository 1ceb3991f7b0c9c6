package tunside.electrode.reading;

import tunside.electrode.BufferCup;
import tunside.quantity.Potential;
import tunside.quantity.Temperature;

/**
 * A buffer read again after the calibration.
 *
 * @param sinceCalibrationS s after the calibration, above 0
 * @param cup what was read
 * @param potential of the electrode, or behind the display
 * @param temperature of the buffer, within its table
 */
public record Recheck(double sinceCalibrationS, BufferCup cup, Potential potential, Temperature temperature) {
    public Recheck {
        if (!(sinceCalibrationS > 0)) {
            throw new IllegalArgumentException(
                    "time since the calibration must be above 0 s but is %s s".formatted(sinceCalibrationS));
        }
        cup.value(temperature); // refuses a temperature outside the buffer's table
    }
}

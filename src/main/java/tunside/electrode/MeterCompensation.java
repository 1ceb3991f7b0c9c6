package tunside.electrode;

import tunside.quantity.Potential;
import tunside.quantity.Temperature;

/**
 * How a meter that shows pH brings in the temperature of the solution. It corrects the slope and nothing else: not the
 * change of the sample itself, not the buffers, not a shifted intersection.
 *
 * @param kind automatic, manual or none
 * @param setting the temperature that the meter computes with where it does not measure: the one set by hand, or 25 degC
 */
public record MeterCompensation(TemperatureCompensation kind, Temperature setting) {
    private static final Temperature USUAL_SETTING = new Temperature(25);

    /** Measures the temperature itself. */
    public static MeterCompensation automatic() {
        return new MeterCompensation(TemperatureCompensation.AUTOMATIC, USUAL_SETTING);
    }

    /** Set by hand. */
    public static MeterCompensation manual(Temperature setting) {
        return new MeterCompensation(TemperatureCompensation.MANUAL, setting);
    }

    /** Computes with 25 degC. */
    public static MeterCompensation none() {
        return new MeterCompensation(TemperatureCompensation.NONE, USUAL_SETTING);
    }

    /**
     * The temperature that the meter computes with.
     *
     * @param solution the temperature of the solution
     */
    public Temperature meterTemperature(Temperature solution) {
        return kind == TemperatureCompensation.AUTOMATIC ? solution : setting;
    }

    /**
     * The potential that makes such a meter, if its stored calibration is ideal, show this pH.
     *
     * @param displayedPh as the meter shows it
     * @param solution the temperature of the solution
     */
    public Potential potentialBehind(double displayedPh, Temperature solution) {
        return new Potential((7 - displayedPh) * NernstSlope.millivoltsPerPh(meterTemperature(solution)));
    }

    /** What such a meter shows at this potential, if its stored calibration is ideal. */
    public double displayedPh(Potential potential, Temperature solution) {
        return 7 - potential.millivolts() / NernstSlope.millivoltsPerPh(meterTemperature(solution));
    }
}

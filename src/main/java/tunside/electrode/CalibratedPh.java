package tunside.electrode;

/**
 * A pH read back through a calibration, with the standard uncertainty that each cause brings, in pH.
 *
 * @param ph at the temperature of the solution
 * @param fromLine slope and offset of the calibration, their covariance included
 * @param fromPotential the reading itself
 * @param fromTemperature the temperature of the solution
 * @param fromLiquidJunction the junction between sample and reference
 * @param fromIsothermalPoint not knowing where the lines of different temperatures cross; zero at the calibration's
 *     temperature
 */
public record CalibratedPh(
        double ph,
        double fromLine,
        double fromPotential,
        double fromTemperature,
        double fromLiquidJunction,
        double fromIsothermalPoint) {

    /** All causes together. */
    public double standardUncertainty() {
        return Math.sqrt(square(fromLine)
                + square(fromPotential)
                + square(fromTemperature)
                + square(fromLiquidJunction)
                + square(fromIsothermalPoint));
    }

    /** Calibration line and potential alone: how well the reading repeats against the same buffers. */
    public double fromLineAndPotential() {
        return Math.hypot(fromLine, fromPotential);
    }

    private static double square(double value) {
        return value * value;
    }
}

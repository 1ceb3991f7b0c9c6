package tunside.electrode;

import tunside.quantity.Temperature;

/** The ideal sensitivity of a hydrogen-ion electrode. Source CODATA-2018: R and F are exact. */
public final class NernstSlope {
    private static final double GAS_CONSTANT_J_PER_MOL_K = 8.31446261815324;
    private static final double FARADAY_C_PER_MOL = 96485.33212331;
    private static final double MV_PER_PH_AND_KELVIN =
            1000 * Math.log(10) * GAS_CONSTANT_J_PER_MOL_K / FARADAY_C_PER_MOL;

    private NernstSlope() {}

    /**
     * Potential change per pH unit of an ideal hydrogen-ion electrode, {@code k = R T ln 10 / F}.
     *
     * @param temperature of the solution, not of the meter
     * @return mV per pH unit, positive; 59.159 at 25 degC
     */
    public static double millivoltsPerPh(Temperature temperature) {
        return MV_PER_PH_AND_KELVIN * temperature.kelvin();
    }
}

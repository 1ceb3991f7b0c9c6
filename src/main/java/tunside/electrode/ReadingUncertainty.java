package tunside.electrode;

/**
 * How sure one reading is, apart from the calibration; standard uncertainties.
 *
 * @param potentialMv of the potential, mV; for a meter that shows pH: of the potential behind the display
 * @param temperatureK of the temperature of the solution, K
 * @param liquidJunctionPh residual liquid-junction potential between buffers and sample, in pH
 */
public record ReadingUncertainty(double potentialMv, double temperatureK, double liquidJunctionPh) {
    /** Usual: 0.5 mV, 0.5 K, and 0.01 for the junction; from memory. */
    public static final ReadingUncertainty USUAL = new ReadingUncertainty(0.5, 0.5, 0.01);

    public ReadingUncertainty {
        check("potential", potentialMv, 100);
        check("temperature", temperatureK, 50);
        check("liquid junction", liquidJunctionPh, 1);
    }

    private static void check(String name, double value, double high) {
        if (!(value >= 0 && value <= high)) {
            throw new IllegalArgumentException(
                    "uncertainty of the %s must be from 0 to %s but is %s".formatted(name, high, value));
        }
    }
}

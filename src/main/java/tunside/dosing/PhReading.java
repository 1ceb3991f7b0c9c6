package tunside.dosing;

/**
 * A pH as measured.
 *
 * @param ph 2.5 to 10.5
 * @param standardUncertainty of this reading alone, 0.001 to 1
 */
public record PhReading(double ph, double standardUncertainty) {
    public PhReading {
        if (!(ph >= 2.5 && ph <= 10.5)) {
            throw new IllegalArgumentException("a pH reading (%s) must be from 2.5 to 10.5".formatted(ph));
        }
        if (!(standardUncertainty >= 0.001 && standardUncertainty <= 1)) {
            throw new IllegalArgumentException(
                    "standard uncertainty of a pH reading (%s) must be from 0.001 to 1".formatted(standardUncertainty));
        }
    }
}

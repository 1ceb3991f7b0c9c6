package tunside.dosing;

/**
 * Where to go, and how careful to be.
 *
 * @param lowPh lower end of the range, below {@code ph}
 * @param ph wanted
 * @param highPh upper end, above {@code ph}
 * @param acceptedRisk probability of ending below the range that a stage may take, 0.001 to 0.5
 */
public record DoseTarget(double lowPh, double ph, double highPh, double acceptedRisk) {
    public DoseTarget {
        if (!(lowPh >= 2 && lowPh < ph && ph < highPh && highPh <= 10)) {
            throw new IllegalArgumentException(
                    "the range must be low < target < high, from 2 to 10, but is %s < %s < %s"
                            .formatted(lowPh, ph, highPh));
        }
        if (!(acceptedRisk >= 0.001 && acceptedRisk <= 0.5)) {
            throw new IllegalArgumentException("accepted risk (%s) must be from 0.001 to 0.5".formatted(acceptedRisk));
        }
    }
}

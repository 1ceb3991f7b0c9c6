package tunside.dosing;

/**
 * Where the pH is to go.
 *
 * @param targetPh 3 to 9
 * @param lowPh below this the liquid is overshot; at most the target, not more than 3 below it
 * @param highPh at or below this no acid is needed; at least the target, not more than 3 above it
 * @param acceptedRisk probability that is accepted of passing the far limit with one addition, 0.001 to 0.5
 */
public record DoseAim(double targetPh, double lowPh, double highPh, double acceptedRisk) {
    /** Risk taken where the caller names none. */
    public static final double USUAL_RISK = 0.05;

    public DoseAim {
        if (!(targetPh >= 3 && targetPh <= 9)) {
            throw new IllegalArgumentException("target pH (%s) must be from 3 to 9".formatted(targetPh));
        }
        if (!(lowPh <= targetPh && targetPh <= highPh && lowPh < highPh)) {
            throw new IllegalArgumentException("the range (%s to %s) must hold the target (%s) and have a width"
                    .formatted(lowPh, highPh, targetPh));
        }
        if (!(targetPh - lowPh <= 3 && highPh - targetPh <= 3)) {
            throw new IllegalArgumentException(
                    "the range (%s to %s) must end within 3 pH of the target (%s)".formatted(lowPh, highPh, targetPh));
        }
        if (!(acceptedRisk >= 0.001 && acceptedRisk <= 0.5)) {
            throw new IllegalArgumentException("accepted risk (%s) must be from 0.001 to 0.5".formatted(acceptedRisk));
        }
    }

    /** Whether a pH lies in the range, both ends included. */
    public boolean contains(double ph) {
        return ph >= lowPh && ph <= highPh;
    }
}

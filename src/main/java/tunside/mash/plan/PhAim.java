package tunside.mash.plan;

/**
 * The pH wanted.
 *
 * @param targetPh aimed at, within the range
 * @param lowPh lower end of the range, at or above 4
 * @param highPh upper end, above the lower, at or below 7.5
 */
public record PhAim(double targetPh, double lowPh, double highPh) {
    public PhAim {
        if (!(lowPh >= 4 && lowPh < highPh && highPh <= 7.5)) {
            throw new IllegalArgumentException(
                    "the range must run upwards within 4 to 7.5 but runs from %s to %s".formatted(lowPh, highPh));
        }
        if (!(targetPh >= lowPh && targetPh <= highPh)) {
            throw new IllegalArgumentException(
                    "the target (%s) must lie in the range from %s to %s".formatted(targetPh, lowPh, highPh));
        }
    }

    /** Half the width of the range. */
    double halfWidth() {
        return (highPh - lowPh) / 2;
    }

    /** How far a pH lies outside the range; 0 within. */
    double beyond(double ph) {
        return Math.max(0, Math.max(lowPh - ph, ph - highPh));
    }
}

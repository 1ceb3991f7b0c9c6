package tunside.dosing;

/** A quantity against pH. */
@FunctionalInterface
public interface PhCurve {
    /** Half of what a difference is taken over where a curve does not know its slope. */
    double HALF_STEP_PH = 0.001;

    /** The quantity at a pH. */
    double at(double ph);

    /** What it changes by per pH there; a central difference over 0.002 pH unless the curve knows better. */
    default double slope(double ph) {
        return (at(ph + HALF_STEP_PH) - at(ph - HALF_STEP_PH)) / (2 * HALF_STEP_PH);
    }
}

package tunside.chemistry;

import java.util.concurrent.atomic.LongAdder;

/**
 * What iterates to its answer, and how often it has done so since the start. Counted for whoever runs the service; no result
 * depends on it.
 */
public enum Solver {
    /** State of a water; Newton steps. */
    WATER,
    /** pH of a mash; evaluations of its proton balance. */
    MASH,
    /** An amount or a pH that goes with a risk; evaluations of the risk. */
    DOSE,
    /** Additions that reach a pH; nodes of the search, or plans where each is tried. */
    PLAN,
    /** Line of a calibration; improvements of its slope. */
    CALIBRATION,
    /** Curve of a reading that settles; Levenberg-Marquardt steps. */
    SETTLING;

    private final LongAdder solves = new LongAdder();
    private final LongAdder iterations = new LongAdder();

    /**
     * Counts one solve.
     *
     * @param taken iterations that it took
     */
    public void solved(int taken) {
        solves.increment();
        iterations.add(taken);
    }

    /** Solves since the start. */
    public long solves() {
        return solves.sum();
    }

    /** Iterations of all of them. */
    public long iterations() {
        return iterations.sum();
    }
}

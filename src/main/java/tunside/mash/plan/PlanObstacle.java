package tunside.mash.plan;

import tunside.finding.Finding;

/**
 * A limit that keeps a plan from meeting all that is wanted.
 *
 * @param limit which, with what it is now
 * @param now how far pH and ions must lie outside their ranges with it, as {@link PlanScore} counts
 * @param without the same if only this limit were given up; less than {@code now}
 */
public record PlanObstacle(Finding limit, double now, double without) {
    private static final double NEGLIGIBLE = 1e-6;

    /** Whether giving up this limit alone is enough. */
    public boolean enoughAlone() {
        return without <= NEGLIGIBLE;
    }
}

package tunside.electrode;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One way in which a cause can have come about: which readings it touches, and what an ideal electrode would have given in
 * them.
 *
 * @param readings that it touches, counted from 0; empty for all
 * @param share of the cause's prior; the shares of all variants of a cause sum to 1
 * @param grid values of the cause's parameter
 * @param changedMv potentials in mV of an ideal electrode, by reading and point of the grid; NaN where the tables do not
 *     reach, null for a reading that it does not change
 */
record CauseVariant(List<Integer> readings, double share, ParameterGrid grid, double[] @Nullable [] changedMv) {
    boolean hasParameter() {
        return grid.size() > 1;
    }
}

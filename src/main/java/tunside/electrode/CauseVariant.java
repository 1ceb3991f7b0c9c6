package tunside.electrode;

import java.util.Arrays;
import java.util.List;

/**
 * One way in which a cause can have come about: which readings it touches, and what an ideal electrode would have given.
 *
 * @param readings that it touches, counted from 0; empty for all
 * @param share of the cause's prior; the shares of all variants of a cause sum to 1
 * @param grid values of the cause's parameter
 * @param idealMv potentials in mV of an ideal electrode, by reading and point of the grid; NaN where the tables do not
 *     reach
 */
record CauseVariant(List<Integer> readings, double share, ParameterGrid grid, double[][] idealMv) {

    /**
     * A variant without a parameter.
     *
     * @param idealMv one potential a reading
     */
    static CauseVariant fixed(List<Integer> readings, double share, double[] idealMv) {
        return new CauseVariant(
                readings,
                share,
                ParameterGrid.NONE,
                Arrays.stream(idealMv)
                        .mapToObj(potential -> new double[] {potential})
                        .toArray(double[][]::new));
    }

    boolean hasParameter() {
        return grid.size() > 1;
    }
}

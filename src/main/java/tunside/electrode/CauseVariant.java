package tunside.electrode;

import java.util.List;

/**
 * One way in which a cause can have come about: which readings it touches and, for a parameter, what the cups were.
 *
 * @param readings that it touches, counted from 0; empty for all
 * @param share of the cause's prior; the shares of all variants of a cause sum to 1
 * @param low least parameter; the same as {@code high} for a cause without one
 * @param high largest parameter
 * @param picture of the cups at a parameter
 */
record CauseVariant(List<Integer> readings, double share, double low, double high, Picture picture) {

    /** What an ideal electrode would have given. */
    interface Picture {
        /** The potentials in mV of an ideal electrode; NaN in any where the tables do not reach. */
        double[] idealMv(double parameter);
    }

    static CauseVariant fixed(List<Integer> readings, double share, double[] idealMv) {
        return new CauseVariant(readings, share, 0, 0, parameter -> idealMv);
    }

    boolean hasParameter() {
        return high > low;
    }
}

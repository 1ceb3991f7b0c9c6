package tunside.http.picture;

/** How far values reach, for an axis that shows them all. */
final class Extent {
    private double low = Double.POSITIVE_INFINITY;
    private double high = Double.NEGATIVE_INFINITY;

    Extent add(double value) {
        low = Math.min(low, value);
        high = Math.max(high, value);
        return this;
    }

    /** The lowest value less a share of the whole; never the same as {@link #high(double)}. */
    double low(double share) {
        return low - share * width();
    }

    /** The highest value and a share of the whole. */
    double high(double share) {
        return high + share * width();
    }

    private double width() {
        return high > low ? high - low : Math.max(1, Math.abs(high));
    }
}

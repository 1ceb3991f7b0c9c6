package tunside.quantity;

/** The interval that holds the middle 90 % of a normal distribution. */
public final class Interval90 {
    /** Half of it in standard uncertainties: the 95 % quantile. */
    public static final double HALF_WIDTH = 1.6448536269514722;

    private Interval90() {}
}

package tunside.dosing;

/**
 * Protons that a liquid takes up on its way down in pH, in two parts: one whose size is uncertain as a whole, such as the
 * malt's, and one that is known, such as the liquor's carbonate. On the way from pH {@code a} to pH {@code b} the liquid
 * takes up {@code s scaled(b) + fixed(b) - s scaled(a) - fixed(a)} mEq, where {@code s} is the unknown factor.
 *
 * @param scaledMeq uncertain part, mEq against pH, falling
 * @param fixedMeq known part, mEq against pH, never rising
 */
public record TitrationCurve(PhCurve scaledMeq, PhCurve fixedMeq) {
    /** Lowest pH of a curve. */
    public static final double LOWEST_PH = 2;

    /** Highest pH of a curve. */
    public static final double HIGHEST_PH = 11;

    private static final int MOST_EVALUATIONS = 200;
    private static final double NEAR_PH = 5e-4; // from so near the last step of Newton's method comes within 1e-6

    /** The same laid out as a table, for functions that are costly. */
    public static TitrationCurve tabulated(PhCurve scaledMeq, PhCurve fixedMeq) {
        return new TitrationCurve(
                new TabulatedCurve(scaledMeq, LOWEST_PH, HIGHEST_PH),
                new TabulatedCurve(fixedMeq, LOWEST_PH, HIGHEST_PH));
    }

    /** The curve at a pH with its slope, for any factor on the uncertain part. */
    record Point(double ph, double scaledMeq, double scaledSlope, double fixedMeq, double fixedSlope) {
        /** Both parts together at a factor, mEq. */
        double meq(double scale) {
            return scale * scaledMeq + fixedMeq;
        }

        /** Buffering at a factor, mEq per pH, above 0. */
        double bufferingMeqPerPh(double scale) {
            return -scale * scaledSlope - fixedSlope;
        }
    }

    /** Both parts at a pH. */
    Point at(double ph) {
        return new Point(ph, scaledMeq.at(ph), scaledMeq.slope(ph), fixedMeq.at(ph), fixedMeq.slope(ph));
    }

    /**
     * The pH at which the liquid has taken up what it was given; the end of the curve where it goes beyond. Newton's method,
     * halving what encloses the pH where that leads outside.
     *
     * @param startMeq the curve where nothing was given
     * @param nearPh where to look first
     */
    double ph(double scale, double startMeq, Given given, double nearPh) {
        double lowest = LOWEST_PH;
        double highest = HIGHEST_PH;
        double ph = Math.max(lowest, Math.min(highest, nearPh));
        for (int i = 0; i < MOST_EVALUATIONS; i++) {
            Point at = at(ph);
            double missing = at.meq(scale) - startMeq - given.meq(ph);
            if (missing > 0) {
                lowest = ph;
            } else {
                highest = ph;
            }
            double step = missing / (at.bufferingMeqPerPh(scale) + given.slope(ph));
            double next = ph + step;
            if (!(next >= lowest && next <= highest)) {
                next = (lowest + highest) / 2;
                step = next - ph;
            }
            ph = next;
            if (Math.abs(step) <= NEAR_PH) {
                break;
            }
        }
        return ph;
    }
}

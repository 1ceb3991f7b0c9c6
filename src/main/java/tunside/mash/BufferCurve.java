package tunside.mash;

/**
 * Protons that a malt takes up on the way from its own pH: {@code a1 d + a2 d^2 + a3 d^3} mEq/kg with {@code d} the pH
 * less the malt's own (DELANGE-2015). Beyond 1.5 pH the curve goes on along its tangent, so that it never turns.
 *
 * @param a1 mEq/(kg pH), below 0
 * @param a2 mEq/(kg pH2)
 * @param a3 mEq/(kg pH3)
 * @param relativeStandardUncertainty of the whole curve, 0 to 1
 */
public record BufferCurve(double a1, double a2, double a3, double relativeStandardUncertainty) {
    /** How far from the malt's own pH the curve is followed. */
    public static final double REACH = 1.5;

    public BufferCurve {
        if (!(a1 < 0 && a1 >= -500)) {
            throw new IllegalArgumentException(
                    "a1 (%s mEq/(kg pH)) must be below 0 and at or above -500".formatted(a1));
        }
        if (!(Math.abs(a2) <= 500 && Math.abs(a3) <= 500)) {
            throw new IllegalArgumentException("a2 (%s) and a3 (%s) must lie within 500".formatted(a2, a3));
        }
        if (!(relativeStandardUncertainty >= 0 && relativeStandardUncertainty <= 1)) {
            throw new IllegalArgumentException(
                    "relative standard uncertainty (%s) must be from 0 to 1".formatted(relativeStandardUncertainty));
        }
        if (!(steepest(a1, a2, a3) < 0)) {
            throw new IllegalArgumentException(
                    "a1 (%s), a2 (%s), a3 (%s): uptake must fall everywhere within %s pH of the malt's own pH"
                            .formatted(a1, a2, a3, REACH));
        }
    }

    /**
     * A straight line: buffering alone.
     *
     * @param bufferingMeqPerKgPh above 0
     */
    public static BufferCurve linear(double bufferingMeqPerKgPh, double relativeStandardUncertainty) {
        return new BufferCurve(-bufferingMeqPerKgPh, 0, 0, relativeStandardUncertainty);
    }

    /** Buffering at the malt's own pH, mEq/(kg pH). */
    public double bufferingMeqPerKgPh() {
        return -a1;
    }

    /** Protons taken up at {@code d} pH above the malt's own, mEq/kg; falls with {@code d}. */
    public double uptakeMeqPerKg(double d) {
        double inside = Math.max(-REACH, Math.min(REACH, d));
        return inside * (a1 + inside * (a2 + inside * a3)) + slope(a1, a2, a3, inside) * (d - inside);
    }

    private static double slope(double a1, double a2, double a3, double d) {
        return a1 + 2 * a2 * d + 3 * a3 * d * d;
    }

    private static double steepest(double a1, double a2, double a3) {
        double largest = Math.max(slope(a1, a2, a3, -REACH), slope(a1, a2, a3, REACH));
        double turn = a3 == 0 ? REACH : -a2 / (3 * a3);
        return Math.abs(turn) < REACH ? Math.max(largest, slope(a1, a2, a3, turn)) : largest;
    }
}

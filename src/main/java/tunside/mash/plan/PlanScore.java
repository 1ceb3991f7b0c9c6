package tunside.mash.plan;

/**
 * How good a plan is; less is better. In order of weight: the pH lies in its range and the ions in theirs (one hundredth of
 * a pH, or of an ion's limit, costs as much as ten additions); the pH lies at the target (half the way to the end of the
 * range costs as much as two additions, the whole way as much as eight); few additions; small ones. Limits of supplies and of lactate, and that acid and
 * base never go in together, are never given up and so not part of it.
 *
 * @param phBeyond how far the pH lies outside its range
 * @param ionsBeyond how far all ions together lie outside theirs, relative to the limit passed
 * @param phOff distance from the target in half widths of the range
 * @param additions how many
 * @param amount of all: each 10 mmol per litre of liquor (of a base: 10 mEq) counts 1, and diluting the whole liquor counts 1
 */
public record PlanScore(double phBeyond, double ionsBeyond, double phOff, int additions, double amount) {
    static final double BEYOND_WEIGHT = 1000;
    static final double OFF_WEIGHT = 8;
    static final double NEGLIGIBLE = 1e-7;

    /** All in one number. */
    public double total() {
        return BEYOND_WEIGHT * (phBeyond + ionsBeyond) + OFF_WEIGHT * off() + additions + amount;
    }

    /** The square of the distance, going on along its tangent from one half width on. */
    private double off() {
        return phOff <= 1 ? phOff * phOff : 2 * phOff - 1;
    }

    /** Whether pH and ions lie in their ranges. */
    public boolean meetsAll() {
        return phBeyond + ionsBeyond <= NEGLIGIBLE;
    }
}

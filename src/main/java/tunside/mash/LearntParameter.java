package tunside.mash;

/**
 * A parameter and its mean after learning.
 *
 * @param quantity what it is
 * @param malt id of the malt class of a {@link LearntQuantity#MALT_OFFSET}; empty for the others
 * @param mean in pH, of the buffering scale the natural logarithm; -2 to 2
 */
public record LearntParameter(LearntQuantity quantity, String malt, double mean) {
    /** Largest size of a mean. */
    public static final double FARTHEST = 2;

    public LearntParameter {
        if (quantity.ofMalt()) {
            if (malt.isEmpty()) {
                throw new IllegalArgumentException("%s needs its malt class".formatted(quantity.input()));
            }
            MaltClasses.get(malt);
        } else if (!malt.isEmpty()) {
            throw new IllegalArgumentException(
                    "%s belongs to all malts but names '%s'".formatted(quantity.input(), malt));
        }
        if (!(Math.abs(mean) <= FARTHEST)) {
            throw new IllegalArgumentException("%s (%s) must be from -2 to 2".formatted(quantity.input(), mean));
        }
    }

    /** Whether both are the same parameter, whatever their means. */
    boolean isSameAs(LearntParameter other) {
        return quantity == other.quantity && malt.equals(other.malt);
    }
}

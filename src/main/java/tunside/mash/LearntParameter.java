package tunside.mash;

/**
 * A parameter and its mean after learning.
 *
 * @param quantity what it is
 * @param malt id of the malt class of a {@link LearntQuantity#MALT_OFFSET} or {@link LearntQuantity#PRODUCT_OFFSET}; empty
 *     for the others
 * @param product name of the product of a {@link LearntQuantity#PRODUCT_OFFSET}; empty for the one product that goes
 *     without a name, and for the others
 * @param mean in pH, of the buffering scale the natural logarithm; -2 to 2
 */
public record LearntParameter(LearntQuantity quantity, String malt, String product, double mean) {
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
        if (!product.isEmpty()) {
            if (quantity != LearntQuantity.PRODUCT_OFFSET) {
                throw new IllegalArgumentException(
                        "%s belongs to no product but names '%s'".formatted(quantity.input(), product));
            }
            Malt.requireProduct(product);
        }
        if (!(Math.abs(mean) <= FARTHEST)) {
            throw new IllegalArgumentException("%s (%s) must be from -2 to 2".formatted(quantity.input(), mean));
        }
    }

    /** Of no malt class. */
    public static LearntParameter of(LearntQuantity quantity, double mean) {
        return new LearntParameter(quantity, "", "", mean);
    }

    /** Of a malt class. */
    public static LearntParameter of(LearntQuantity quantity, String malt, double mean) {
        return new LearntParameter(quantity, malt, "", mean);
    }

    /** The same at another mean. */
    public LearntParameter at(double other) {
        return new LearntParameter(quantity, malt, product, other);
    }

    /** Whose it is, as the inputs of a prediction name it. */
    public String subject() {
        return product.isEmpty() ? malt : malt + ", " + product;
    }

    /** Whether it shifts the own pH of this malt, and perhaps of others of its class. */
    public boolean isOffsetOf(Malt other) {
        return quantity.ofMalt()
                && other.isKnownByClass()
                && other.maltClass().id().equals(malt)
                && (quantity == LearntQuantity.MALT_OFFSET
                        || other.product().orElse("").equals(product));
    }

    /** Whether both are the same parameter, whatever their means. */
    boolean isSameAs(LearntParameter other) {
        return is(other.quantity, other.malt, other.product);
    }

    /** Whether it is this one. */
    boolean is(LearntQuantity which, String ofMalt, String ofProduct) {
        return quantity == which && malt.equals(ofMalt) && product.equals(ofProduct);
    }
}

package tunside.mash;

/** A parameter of the model that a brewer's own mashes shift. */
public enum LearntQuantity {
    /** pH by which the own pH of every malt is off, however it is known. */
    MODEL_BIAS("model-bias"),
    /** pH by which the own pH of every malt known by its class only is off, besides. */
    MALT_TYPES_BIAS("malt-types-bias"),
    /** Natural logarithm of the factor on the buffering of all malts known by their class only. */
    BUFFERING_SCALE("buffering-scale"),
    /** pH by which the own pH of all products of one malt class is off, besides. */
    MALT_OFFSET("malt-offset"),
    /** pH by which the own pH of the lots of one product is off, besides. */
    PRODUCT_OFFSET("product-offset");

    private final String input;

    LearntQuantity(String input) {
        this.input = input;
    }

    /** Id of the uncertain input of a prediction that it shifts. */
    public String input() {
        return input;
    }

    /** Whether it belongs to one malt class. */
    public boolean ofMalt() {
        return this == MALT_OFFSET || this == PRODUCT_OFFSET;
    }
}

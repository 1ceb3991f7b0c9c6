package tunside.mash;

import java.util.Optional;
import java.util.regex.Pattern;
import tunside.quantity.Colour;

/**
 * A malt as the brewer knows it. Two equal malts are taken for the same lot: their errors are one error.
 *
 * @param maltClass what it is
 * @param colour if known
 * @param measured what was measured on the lot
 * @param lacticAcidPercent of an acidulated malt's mass, from its label; only where the class carries lactic acid
 * @param product which malt of the class it is, as the brewer calls it, if told
 */
public record Malt(
        MaltClass maltClass,
        Optional<Colour> colour,
        MeasuredMalt measured,
        Optional<Estimate> lacticAcidPercent,
        Optional<String> product) {
    /** Most characters of a product's name. */
    public static final int LONGEST_PRODUCT = 40;

    /** Letters of any script and digits, in ranges that readers of the contract know in every language. */
    private static final String LETTERS = "0-9A-Za-z\\u00C0-\\u00D6\\u00D8-\\u00F6\\u00F8-\\u1FFF\\u2C00-\\uD7FF";

    /** What a product's name looks like. */
    public static final String PRODUCT_PATTERN = "^[" + LETTERS + "]([" + LETTERS + " .,'-]*[" + LETTERS + ".])?$";

    /** The same in words. */
    public static final String PRODUCT_WORDS =
            "must be letters and digits, between them also spaces, full stops, commas, hyphens and apostrophes";

    private static final Pattern PRODUCT = Pattern.compile(PRODUCT_PATTERN);

    public Malt {
        product.ifPresent(Malt::requireProduct);
        if (lacticAcidPercent.isPresent()) {
            double percent = lacticAcidPercent.get().value();
            if (maltClass.lacticAcidPercent().isEmpty()) {
                throw new IllegalArgumentException(
                        "malt '%s' carries no lactic acid of its own".formatted(maltClass.id()));
            }
            if (!(percent >= 0.1 && percent <= 10)) {
                throw new IllegalArgumentException("lactic acid (%s %%) must be from 0.1 to 10".formatted(percent));
            }
            if (measured.knowsProtons()) {
                throw new IllegalArgumentException(
                        "state the lactic acid of a malt or what was measured on the malt itself, never both: it would count twice");
            }
        }
    }

    /** Refuses what is no name of a product. */
    static void requireProduct(String name) {
        if (name.isEmpty() || name.length() > LONGEST_PRODUCT) {
            throw new IllegalArgumentException("name of a product must have 1 to %s characters but has %s"
                    .formatted(LONGEST_PRODUCT, name.length()));
        }
        if (!PRODUCT.matcher(name).matches()) {
            throw new IllegalArgumentException("name of a product %s".formatted(PRODUCT_WORDS));
        }
    }

    /** A malt known by its class only. */
    public static Malt of(String classId) {
        return new Malt(
                MaltClasses.get(classId), Optional.empty(), MeasuredMalt.NOTHING, Optional.empty(), Optional.empty());
    }

    /** A malt known by its class and colour. */
    public static Malt of(String classId, double ebc) {
        return new Malt(
                MaltClasses.get(classId),
                Optional.of(new Colour(ebc)),
                MeasuredMalt.NOTHING,
                Optional.empty(),
                Optional.empty());
    }

    /** The same malt with what was measured on it. */
    public Malt with(MeasuredMalt values) {
        return new Malt(maltClass, colour, values, lacticAcidPercent, product);
    }

    /** The same malt as a product by name. */
    public Malt named(String productName) {
        return new Malt(maltClass, colour, measured, lacticAcidPercent, Optional.of(productName));
    }

    /**
     * Lactic acid to count apart from the malt's body, % of its mass: that of the label, else the class's; empty where
     * the class has none, or where the malt itself was measured and its values hold the acid already.
     */
    public Optional<Estimate> countedLacticAcidPercent() {
        if (measured.knowsProtons()) {
            return Optional.empty();
        }
        return lacticAcidPercent.or(
                () -> maltClass.lacticAcidPercent().map(value -> new Estimate(value.value(), value.lotUncertainty())));
    }

    /** Whether its own pH is taken from its class: nothing about it was measured, and it is no acidulated malt. */
    public boolean isKnownByClass() {
        return !measured.knowsAcidity() && countedLacticAcidPercent().isEmpty();
    }

    /** Its name in answers: the class, with the colour and the product where they are known. */
    public String label() {
        return maltClass.id()
                + colour.map(shade -> " (" + Math.round(shade.ebc()) + " EBC)").orElse("")
                + product.map(name -> ", " + name).orElse("");
    }

    /** Class and product tell most malts apart: faster than all of it. */
    @Override
    public int hashCode() {
        return 31 * maltClass.hashCode() + product.hashCode();
    }
}

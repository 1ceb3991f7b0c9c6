package tunside.safety;

import java.math.BigDecimal;
import java.math.RoundingMode;
import tunside.chemistry.AcidProduct;
import tunside.chemistry.Salt;

/**
 * A substance that is handled, at its strength.
 *
 * @param substance id, as {@code acids.csv} or {@code salts.csv} has it
 * @param name in words
 * @param percent strength in %w/w, above 0, at most 100
 * @param kind what it is to the one who handles it
 * @param bicarbonatePer100G grams of sodium bicarbonate that neutralise 100 g of it; 0 where that is no question
 */
public record Chemical(String substance, String name, double percent, Kind kind, double bicarbonatePer100G) {
    /** What a substance is to the one who handles it. */
    public enum Kind {
        ACID_SOLUTION,
        ACID_POWDER,
        BASE,
        SALT
    }

    public Chemical {
        if (!(percent > 0 && percent <= 100)) {
            throw new IllegalArgumentException(
                    "strength (%s %%w/w) must be above 0 and at most 100".formatted(percent));
        }
        if (!(bicarbonatePer100G >= 0 && bicarbonatePer100G < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "sodium bicarbonate (%s g) must be finite and not negative".formatted(bicarbonatePer100G));
        }
    }

    /** An acid as bought or as diluted. */
    public static Chemical of(AcidProduct product) {
        return new Chemical(
                product.acid().id(),
                product.acid().name(),
                product.massPercent(),
                product.solid() ? Kind.ACID_POWDER : Kind.ACID_SOLUTION,
                SpillNeutraliser.sodiumBicarbonateGrams(product, 100));
    }

    /** A salt or base, weighed as a powder. */
    public static Chemical of(Salt salt) {
        return new Chemical(salt.id(), salt.name(), 100, salt.alkalinityMeqPerGram() > 0 ? Kind.BASE : Kind.SALT, 0);
    }

    /** Whether it is an acid. */
    public boolean acid() {
        return kind == Kind.ACID_SOLUTION || kind == Kind.ACID_POWDER;
    }

    /** With its strength, as a note names it: {@code lactic acid 80 %w/w}; powders without strength. */
    public String title() {
        return kind == Kind.ACID_SOLUTION ? "%s %s %%w/w".formatted(name, text(percent)) : name;
    }

    private static String text(double percent) {
        BigDecimal rounded =
                BigDecimal.valueOf(percent).setScale(2, RoundingMode.HALF_EVEN).stripTrailingZeros();
        return rounded.scale() < 0
                ? rounded.setScale(0, RoundingMode.UNNECESSARY).toString()
                : rounded.toString();
    }
}

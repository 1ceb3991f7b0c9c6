package tunside.dosing;

/**
 * A reagent at hand.
 *
 * @param reagent what
 * @param stepGrams smallest amount that can be measured, above 0
 * @param mostGrams most that can be added, not negative
 */
public record Supply(Reagent reagent, double stepGrams, double mostGrams) {
    public Supply {
        if (!(stepGrams > 0 && stepGrams < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("smallest step (%s g) must be above 0".formatted(stepGrams));
        }
        if (!(mostGrams >= 0 && mostGrams < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "most that can be added (%s g) must be finite and not negative".formatted(mostGrams));
        }
    }

    /** The largest whole number of steps that is not more than this, g. */
    double roundedDown(double grams) {
        return Math.floor(grams / stepGrams + 1e-9) * stepGrams;
    }
}

package tunside.dosing;

import java.util.Optional;

/**
 * What happened: an addition, a reading, or both in this order.
 *
 * @param reagent what went in
 * @param grams of it, not negative; 0 where only a reading was taken
 * @param after the reading that followed, if one was taken
 */
public record PastAddition(Reagent reagent, double grams, Optional<PhReading> after) {
    public PastAddition {
        if (!(grams >= 0 && grams < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("an addition (%s g) must be finite and not negative".formatted(grams));
        }
    }

    /** A reading alone. */
    public static PastAddition read(PhReading reading) {
        return new PastAddition(Reagent.NOTHING, 0, Optional.of(reading));
    }
}

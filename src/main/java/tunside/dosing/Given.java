package tunside.dosing;

import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What went in so far: each reagent once, with all of it.
 *
 * @param grams of each reagent
 */
record Given(Map<Reagent, Double> grams) {
    static final Given NOTHING = new Given(Map.of());

    /** The same and one more addition. */
    Given plus(PastAddition addition) {
        if (addition.grams() == 0) {
            return this;
        }
        Map<Reagent, Double> more = new LinkedHashMap<>(grams); // in order: sums must not depend on hashing
        more.merge(addition.reagent(), addition.grams(), Double::sum);
        return new Given(more);
    }

    /** Protons that all of it has given where the liquid is at a pH, mEq. */
    double meq(double ph) {
        double sum = 0;
        for (Map.Entry<Reagent, Double> entry : grams.entrySet()) {
            sum += entry.getValue() * entry.getKey().meqPerGram(ph);
        }
        return sum;
    }
}

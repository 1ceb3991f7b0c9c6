package tunside.dosing;

import java.util.List;
import tunside.chemistry.AcidProduct;
import tunside.chemistry.Salt;
import tunside.quantity.Volume;

/** A liquid that can be brought to a pH. */
public sealed interface DosableLiquid permits MashDose, LiquorDose, WortDose {
    /** How it takes up protons. */
    TitrationCurve curve();

    /** What is known of its buffering before anything went in. */
    BufferingPrior prior();

    /** All of it; of a mash the liquor. */
    Volume volume();

    /**
     * An acid as it acts in it.
     *
     * @param stepGrams smallest amount that can be measured
     * @param mostGrams most at hand; no more is taken than such a liquid can explain
     */
    Supply acid(AcidProduct product, double stepGrams, double mostGrams);

    /**
     * A base as it acts in it.
     *
     * @param stepGrams smallest amount that can be weighed
     */
    Supply base(Salt salt, double stepGrams);

    /** More protons than such a liquid can explain to take up or give, mEq. */
    double mostMeq();

    /**
     * A history that may be true: ten times what the liquid can explain is a wrong unit or a wrong volume.
     *
     * @return the same
     * @throws IllegalArgumentException if more went in
     */
    default List<PastAddition> plausible(List<PastAddition> history, double ph) {
        double added = 0;
        for (PastAddition entry : history) {
            added += Math.abs(entry.grams() * entry.reagent().meqPerGram(ph));
        }
        double limit = 10 * mostMeq();
        if (!(added <= limit)) {
            throw new IllegalArgumentException(
                    "must not add more than %s mEq in all, ten times what such a liquid can explain, but adds %s mEq"
                            .formatted(Math.round(limit), Math.round(added)));
        }
        return history;
    }
}

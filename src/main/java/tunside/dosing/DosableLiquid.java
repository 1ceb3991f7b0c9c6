package tunside.dosing;

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

    /** A base as it acts in it. @param stepGrams smallest amount that can be weighed */
    Supply base(Salt salt, double stepGrams);
}

package tunside.water;

import java.util.List;
import tunside.quantity.Volume;

/** Something done to the whole of a liquor. */
public sealed interface Treatment permits SaltTreatment, AcidTreatment, Boiling, Liming {
    /**
     * Does it.
     *
     * @param water before, in a closed vessel
     * @param volume of it, above 0
     */
    TreatmentStep applied(Water water, Volume volume);

    /**
     * The same with each of its uncertain values one standard uncertainty off, amounts towards less: what may be added may
     * also be varied.
     */
    List<Treatment> varied();
}

package tunside.http.chemical;

import java.util.Optional;
import tunside.chemistry.AcidProduct;
import tunside.chemistry.Salt;
import tunside.quantity.Mass;
import tunside.quantity.Volume;

/** A chemical that was measured out. */
public sealed interface MeasuredChemical {
    /** A salt or base by mass. */
    record OfSalt(Salt salt, Mass mass) implements MeasuredChemical {}

    /** An acid by mass or by volume: one of the two. */
    record OfAcid(AcidProduct product, Optional<Mass> mass, Optional<Volume> volume) implements MeasuredChemical {}
}

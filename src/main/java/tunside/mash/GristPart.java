package tunside.mash;

import tunside.quantity.Mass;

/**
 * A malt and how much of it.
 *
 * @param malt which
 * @param mass above 0
 */
public record GristPart(Malt malt, Mass mass) {
    public GristPart {
        if (!(mass.kilograms() > 0)) {
            throw new IllegalArgumentException("mass of a malt (%s kg) must be above 0".formatted(mass.kilograms()));
        }
    }
}

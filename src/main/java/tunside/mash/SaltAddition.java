package tunside.mash;

import tunside.chemistry.Salt;
import tunside.quantity.Mass;

/**
 * A salt or base weighed into the mash.
 *
 * @param salt which
 * @param mass of the salt with its crystal water
 */
public record SaltAddition(Salt salt, Mass mass) implements Addition {
    /** Formula of chalk, which dissolves in a mash only in part. */
    private static final String CHALK = "CaCO3";

    @Override
    public double millimolesAdded() {
        return 1000 * mass.grams() / salt.molarMassGPerMol();
    }

    /** Whether the salt is chalk. */
    public boolean isChalk() {
        return salt.formula().equals(CHALK);
    }
}

package tunside.safety;

import tunside.chemistry.AcidProduct;
import tunside.chemistry.Salts;
import tunside.quantity.Temperature;

/**
 * Sodium bicarbonate that a spilt acid takes: one mole for each proton that the acid has given up when it is neutral; or
 * sodium carbonate, half a mole.
 */
public final class SpillNeutraliser {
    /**
     * pH at which the fizzing has stopped, between 7 and 8. It matters for acids with a step near it: phosphoric acid has
     * given up 1.7 of its 3 protons there.
     */
    private static final double NEUTRAL_PH = 7.6;

    /** Molar volume of a gas at 20 degC and 1 atm, L/mol. */
    private static final double GAS_L_PER_MOL = 24.06;

    /** Molar mass of carbon dioxide (IUPAC-WEIGHTS). */
    private static final double GAS_G_PER_MOL = 44.009;

    private static final Temperature ROOM = new Temperature(25);
    private static final double BICARBONATE_G_PER_MOL =
            Salts.get("sodium-bicarbonate").molarMassGPerMol();
    private static final double CARBONATE_G_PER_MOL =
            Salts.get("sodium-carbonate").molarMassGPerMol();

    private SpillNeutraliser() {}

    /**
     * Grams of sodium bicarbonate.
     *
     * @param product what was spilt; all of its acid counts, the part bound in oligomers too
     * @param grams how much of it
     */
    public static double sodiumBicarbonateGrams(AcidProduct product, double grams) {
        return equivalents(product, grams) * BICARBONATE_G_PER_MOL;
    }

    /**
     * Grams of water-free sodium carbonate (washing soda) that do the same; it takes up two protons a mole.
     *
     * @param product what was spilt
     * @param grams how much of it
     */
    public static double sodiumCarbonateGrams(AcidProduct product, double grams) {
        return equivalents(product, grams) / 2 * CARBONATE_G_PER_MOL;
    }

    private static double equivalents(AcidProduct product, double grams) {
        double protonsPerMol = -product.acid().system().meanCharge(NEUTRAL_PH, ROOM);
        return product.molPerKg() * grams / 1000 * protonsPerMol;
    }

    /** Grams of carbon dioxide that so much bicarbonate gives off in acid. */
    public static double carbonDioxideGrams(double bicarbonateGrams) {
        return bicarbonateGrams / BICARBONATE_G_PER_MOL * GAS_G_PER_MOL;
    }

    /** Litres of carbon dioxide at 20 degC that so much bicarbonate gives off in acid. */
    public static double carbonDioxideLitres(double bicarbonateGrams) {
        return bicarbonateGrams / BICARBONATE_G_PER_MOL * GAS_L_PER_MOL;
    }
}

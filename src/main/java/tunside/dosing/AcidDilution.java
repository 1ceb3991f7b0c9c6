package tunside.dosing;

import tunside.chemistry.AcidProduct;
import tunside.quantity.Mass;
import tunside.quantity.Strength;

/**
 * A weaker acid made from a stronger one. Masses add up; volumes do not, the mixture is smaller than its parts.
 *
 * @param strong in hand
 * @param weak wanted, weaker
 * @param strongMass to weigh in
 * @param waterMass to have ready; the acid goes into it
 */
public record AcidDilution(AcidProduct strong, AcidProduct weak, Mass strongMass, Mass waterMass) {
    /** Strength to which a mineral acid is brought before it is dosed, %w/w. */
    public static final double DOSING_PERCENT = 10;

    public AcidDilution {
        if (!(weak.massPercent() < strong.massPercent())) {
            throw new IllegalArgumentException(
                    "the strength wanted (%s %%w/w) must be above 0 and below the one in hand (%s %%w/w)"
                            .formatted(weak.massPercent(), strong.massPercent()));
        }
    }

    /**
     * Mass balance of the acid.
     *
     * @param weakMass how much of the weaker acid to make
     * @throws IllegalArgumentException if the strength wanted is not below the one in hand
     */
    public static AcidDilution of(AcidProduct strong, double wantedPercent, Mass weakMass) {
        if (!(wantedPercent > 0)) {
            throw new IllegalArgumentException(
                    "the strength wanted (%s %%w/w) must be above 0 and below the one in hand (%s %%w/w)"
                            .formatted(wantedPercent, strong.massPercent()));
        }
        return making(strong, AcidProduct.of(strong.acid(), Strength.percent(wantedPercent)), weakMass);
    }

    /**
     * So much of the weaker acid.
     *
     * @throws IllegalArgumentException if it is not weaker than the strong one
     */
    public static AcidDilution making(AcidProduct strong, AcidProduct weak, Mass weakMass) {
        double acid = Math.min(weakMass.kilograms(), weakMass.kilograms() * weak.massPercent() / strong.massPercent());
        return new AcidDilution(strong, weak, new Mass(acid), new Mass(weakMass.kilograms() - acid));
    }

    /**
     * All of an amount of strong acid.
     *
     * @throws IllegalArgumentException if the weaker acid is not weaker
     */
    public static AcidDilution using(AcidProduct strong, AcidProduct weak, Mass strongMass) {
        double water = strongMass.kilograms() * (strong.massPercent() / weak.massPercent() - 1);
        return new AcidDilution(strong, weak, strongMass, new Mass(Math.max(0, water)));
    }

    /** Volume of the strong acid at 20 degC, mL. */
    public double strongMillilitres() {
        return strongMass.grams() / strong.densityGPerMl();
    }

    /** Volume of the water at 20 degC, mL. */
    public double waterMillilitres() {
        return waterMass.grams() / AcidDilutionLimits.of("water_density_g_per_ml");
    }

    /** Mass of the weaker acid, g. */
    public double weakGrams() {
        return strongMass.grams() + waterMass.grams();
    }

    /** Volume of the weaker acid at 20 degC, mL. */
    public double weakMillilitres() {
        return weakGrams() / weak.densityGPerMl();
    }

    /** What the volumes of acid and water lose when they become one, mL at 20 degC; negative where they gain. */
    public double lostMillilitres() {
        return strongMillilitres() + waterMillilitres() - weakMillilitres();
    }
}

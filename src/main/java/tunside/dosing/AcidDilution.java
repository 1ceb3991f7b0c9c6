package tunside.dosing;

import tunside.chemistry.AcidProduct;
import tunside.quantity.Mass;
import tunside.quantity.Strength;

/**
 * A weaker acid made from a stronger one.
 *
 * @param strong in hand
 * @param weak wanted, weaker
 * @param strongMass to weigh in
 * @param waterMass to have ready; the acid goes into it
 */
public record AcidDilution(AcidProduct strong, AcidProduct weak, Mass strongMass, Mass waterMass) {
    /** Strength to which a mineral acid is brought before it is dosed, %w/w. */
    public static final double DOSING_PERCENT = 10;

    /**
     * Mass balance of the acid.
     *
     * @param weakMass how much of the weaker acid to make
     * @throws IllegalArgumentException if the strength wanted is not below the one in hand
     */
    public static AcidDilution of(AcidProduct strong, double wantedPercent, Mass weakMass) {
        if (!(wantedPercent > 0 && wantedPercent < strong.massPercent())) {
            throw new IllegalArgumentException(
                    "the strength wanted (%s %%w/w) must be above 0 and below the one in hand (%s %%w/w)"
                            .formatted(wantedPercent, strong.massPercent()));
        }
        double acid = weakMass.kilograms() * wantedPercent / strong.massPercent();
        return new AcidDilution(
                strong,
                AcidProduct.of(strong.acid(), Strength.percent(wantedPercent)),
                new Mass(acid),
                new Mass(weakMass.kilograms() - acid));
    }

    /** Volume of the strong acid at 20 degC, mL. */
    public double strongMillilitres() {
        return strongMass.grams() / strong.densityGPerMl();
    }

    /** Volume of the weaker acid at 20 degC, mL. */
    public double weakMillilitres() {
        return (strongMass.grams() + waterMass.grams()) / weak.densityGPerMl();
    }
}

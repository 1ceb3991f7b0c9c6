package tunside.mash;

import tunside.chemistry.Acid;
import tunside.chemistry.AcidProduct;
import tunside.quantity.Mass;
import tunside.quantity.Volume;

/**
 * An acid poured into the mash.
 *
 * @param acid which
 * @param millimoles that act during the mash, not negative; the uncertainty is that of the product, not of the measuring
 */
public record AcidAddition(Acid acid, Estimate millimoles) implements Addition {
    public AcidAddition {
        if (!(millimoles.value() >= 0)) {
            throw new IllegalArgumentException(
                    "amount of acid (%s mmol) must not be negative".formatted(millimoles.value()));
        }
    }

    @Override
    public double millimolesAdded() {
        return millimoles.value();
    }

    /** A weighed acid product. */
    public static AcidAddition of(AcidProduct product, Mass mass) {
        return new AcidAddition(product.acid(), acting(product, 1000 * mass.kilograms() * product.molPerKg()));
    }

    /** An acid product measured by volume at 20 degC. */
    public static AcidAddition of(AcidProduct product, Volume volume) {
        double millimoles = 1000 * volume.litres() * product.molPerL();
        Estimate acting = acting(product, millimoles);
        double density = acting.value() * product.densityUncertaintyGPerMl() / product.densityGPerMl();
        return new AcidAddition(
                product.acid(), new Estimate(acting.value(), Math.hypot(acting.standardUncertainty(), density)));
    }

    /**
     * Oligomers of strong lactic acid give their protons back on hydrolysis, in hours to days, faster when hot (VU-2005).
     * In a mash between none and all of them act: the middle is taken, as a rectangular distribution.
     */
    private static Estimate acting(AcidProduct product, double totalMillimoles) {
        double slow = 1 - product.directShare();
        return new Estimate(totalMillimoles * (1 - slow / 2), totalMillimoles * slow / Math.sqrt(12));
    }
}

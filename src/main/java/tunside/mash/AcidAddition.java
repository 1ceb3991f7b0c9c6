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
        return new AcidAddition(product.acid(), acting(product, mass.kilograms()));
    }

    /** An acid product measured by volume at 20 degC. */
    public static AcidAddition of(AcidProduct product, Volume volume) {
        Estimate acting = acting(product, volume.litres() * product.densityGPerMl());
        double density = acting.value() * product.densityUncertaintyGPerMl() / product.densityGPerMl();
        return new AcidAddition(
                product.acid(), new Estimate(acting.value(), Math.hypot(acting.standardUncertainty(), density)));
    }

    private static Estimate acting(AcidProduct product, double kilograms) {
        return new Estimate(
                1000 * kilograms * product.actingMolPerKg(), 1000 * kilograms * product.actingUncertaintyMolPerKg());
    }
}

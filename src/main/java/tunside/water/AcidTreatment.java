package tunside.water;

import java.util.List;
import java.util.OptionalDouble;
import tunside.chemistry.AcidProduct;
import tunside.chemistry.NeatAcidLimits;
import tunside.finding.Finding;
import tunside.finding.Outcome;
import tunside.quantity.Mass;
import tunside.quantity.Volume;

/**
 * An acid poured into the liquor.
 *
 * @param product as bought
 * @param mass of it
 */
public record AcidTreatment(AcidProduct product, Mass mass) implements Treatment {
    private static final double MOST_MMOL_PER_L = 250;

    /** An acid measured by volume at 20 degC. */
    public static AcidTreatment of(AcidProduct product, Volume volume) {
        return new AcidTreatment(product, new Mass(volume.litres() * product.densityGPerMl()));
    }

    @Override
    public TreatmentStep applied(Water water, Volume volume) {
        double molPerKg = mass.kilograms() * product.actingMolPerKg() / volume.litres();
        if (!(1000 * molPerKg <= MOST_MMOL_PER_L)) {
            throw new IllegalArgumentException("an acid must be at most %s mmol per litre of liquor but is %s"
                    .formatted(MOST_MMOL_PER_L, 1000 * molPerKg));
        }
        Water after = Water.closed(
                water.solution().plus(product.acid().perMole().scaled(molPerKg)),
                water.temperature(),
                water.samplePh(),
                List.of());
        return new TreatmentStep("acid", product.acid().id(), mass.grams(), after, 0, strength());
    }

    private List<Finding> strength() {
        OptionalDouble limit = NeatAcidLimits.percent(product.acid());
        if (limit.isEmpty()) {
            return List.of();
        }
        return List.of(Finding.of(
                        "water.acid-strength",
                        NeatAcidLimits.reachedBy(product) ? Outcome.STOP : Outcome.PASS,
                        "/strength",
                        product.massPercent(),
                        limit.getAsDouble())
                .about(product.acid().name()));
    }

    @Override
    public List<Treatment> varied() {
        double relative = Math.hypot(
                WaterModel.value("acid-amount-relative"),
                product.actingUncertaintyMolPerKg() / product.actingMolPerKg());
        return List.of(new AcidTreatment(product, new Mass(mass.kilograms() * (1 - relative))));
    }
}

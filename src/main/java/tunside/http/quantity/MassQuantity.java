package tunside.http.quantity;

import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.NotNull;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import tunside.http.answer.Rounded;
import tunside.http.problem.Place;
import tunside.quantity.Mass;
import tunside.quantity.MassUnit;

/** A mass with its unit. */
@Schema(description = "A mass with its unit; no unit is ever assumed.")
public record MassQuantity(
        @NotNull @DecimalMin("0") @DecimalMax("1e9") @Schema(description = "How many of the unit.", required = true)
        Double value,

        @NotNull @Schema(description = "The unit.", required = true)
        MassUnit unit) {

    /** The domain's value, checked against the range of its use, in kg; the low bound after a fault. */
    public Mass toMass(Place place, double low, double high) {
        return new Mass(
                place.within(unit.toBase(value), low, high, "kg", () -> Rounded.text(value) + " " + unit.symbol()));
    }

    /** As an answer states it, in kg, to {@code decimals}. */
    public static MassQuantity kilograms(double value, int decimals) {
        return new MassQuantity(Rounded.decimals(value, decimals), MassUnit.KG);
    }

    /** As an answer states it, in g, to {@code decimals}. */
    public static MassQuantity grams(double value, int decimals) {
        return new MassQuantity(Rounded.decimals(value, decimals), MassUnit.G);
    }
}

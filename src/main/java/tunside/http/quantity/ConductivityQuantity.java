package tunside.http.quantity;

import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.NotNull;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import tunside.http.answer.Rounded;
import tunside.http.problem.Place;
import tunside.quantity.Conductivity;
import tunside.quantity.ConductivityUnit;

/** An electrical conductivity with its unit. */
@Schema(description = "An electrical conductivity with its unit; no unit is ever assumed.")
public record ConductivityQuantity(
        @NotNull @DecimalMin("0") @DecimalMax("200000") @Schema(description = "How many of the unit.", required = true)
        Double value,

        @NotNull @Schema(description = "The unit.", required = true)
        ConductivityUnit unit) {

    /** The domain's value, checked against the range of its use, in uS/cm; the low bound after a fault. */
    public Conductivity toConductivity(Place place, double low, double high) {
        return new Conductivity(
                place.within(unit.toBase(value), low, high, "uS/cm", Rounded.text(value) + " " + unit.symbol()));
    }
}

package tunside.http.quantity;

import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.NotNull;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import tunside.http.answer.Rounded;
import tunside.http.problem.Place;
import tunside.quantity.Colour;
import tunside.quantity.ColourUnit;

/** A malt colour with its unit. */
@Schema(description = "A malt colour with its unit; no unit is ever assumed.")
public record ColourQuantity(
        @NotNull @DecimalMin("0") @DecimalMax("5000") @Schema(description = "How many of the unit.", required = true)
        Double value,

        @NotNull @Schema(description = "The unit.", required = true)
        ColourUnit unit) {

    /** The domain's value, checked against the range of its use, in EBC; the low bound after a fault. */
    public Colour toColour(Place place, double low, double high) {
        return new Colour(
                place.within(unit.toBase(value), low, high, "EBC", () -> Rounded.text(value) + " " + unit.symbol()));
    }
}

package tunside.http.quantity;

import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.NotNull;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import tunside.http.answer.Rounded;
import tunside.http.problem.Place;
import tunside.quantity.Potential;
import tunside.quantity.PotentialUnit;

/** An electric potential with its unit. */
@Schema(description = "An electric potential with its unit; no unit is ever assumed.")
public record PotentialQuantity(
        @NotNull
        @DecimalMin("-2000")
        @DecimalMax("2000")
        @Schema(description = "How many of the unit.", required = true)
        Double value,

        @NotNull @Schema(description = "The unit.", required = true)
        PotentialUnit unit) {

    /** The domain's value, checked against the range of its use, in mV; the low bound after a fault. */
    public Potential toPotential(Place place, double low, double high) {
        return new Potential(
                place.within(unit.toBase(value), low, high, "mV", () -> Rounded.text(value) + " " + unit.symbol()));
    }

    /** As an answer states it, in mV, to {@code decimals}. */
    public static PotentialQuantity millivolts(double value, int decimals) {
        return new PotentialQuantity(Rounded.decimals(value, decimals), PotentialUnit.MV);
    }
}

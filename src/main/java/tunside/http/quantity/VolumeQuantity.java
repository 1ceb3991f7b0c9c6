package tunside.http.quantity;

import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.NotNull;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import tunside.http.answer.Rounded;
import tunside.http.problem.Place;
import tunside.quantity.Volume;
import tunside.quantity.VolumeUnit;

/** A volume with its unit. */
@Schema(description = "A volume with its unit; no unit is ever assumed.")
public record VolumeQuantity(
        @NotNull @DecimalMin("0") @DecimalMax("1e9") @Schema(description = "How many of the unit.", required = true)
        Double value,

        @NotNull @Schema(description = "The unit.", required = true)
        VolumeUnit unit) {

    /** The domain's value, checked against the range of its use, in L; the low bound after a fault. */
    public Volume toVolume(Place place, double low, double high) {
        return new Volume(
                place.within(unit.toBase(value), low, high, "L", () -> Rounded.text(value) + " " + unit.symbol()));
    }

    /** As an answer states it, in L, to {@code decimals}. */
    public static VolumeQuantity litres(double value, int decimals) {
        return new VolumeQuantity(Rounded.decimals(value, decimals), VolumeUnit.L);
    }

    /** As an answer states it, in mL, to {@code decimals}. */
    public static VolumeQuantity millilitres(double value, int decimals) {
        return new VolumeQuantity(Rounded.decimals(value, decimals), VolumeUnit.ML);
    }
}

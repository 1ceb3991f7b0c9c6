package tunside.http.quantity;

import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.NotNull;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import tunside.http.answer.Rounded;
import tunside.http.problem.Place;
import tunside.quantity.Temperature;
import tunside.quantity.TemperatureUnit;

/** A temperature with its unit. */
@Schema(description = "A temperature with its unit; no unit is ever assumed.")
public record TemperatureQuantity(
        @NotNull @DecimalMin("-300") @DecimalMax("1000") @Schema(description = "How many of the unit.", required = true)
        Double value,

        @NotNull @Schema(description = "The unit.", required = true)
        TemperatureUnit unit) {

    /** The domain's value, checked against the range of its use, in degC; the low bound after a fault. */
    public Temperature toTemperature(Place place, double low, double high) {
        return new Temperature(
                place.within(unit.toBase(value), low, high, "degC", () -> Rounded.text(value) + " " + unit.symbol()));
    }

    /** As an answer states it, in degC, to {@code decimals}. */
    public static TemperatureQuantity celsius(double value, int decimals) {
        return new TemperatureQuantity(Rounded.decimals(value, decimals), TemperatureUnit.DEG_C);
    }
}

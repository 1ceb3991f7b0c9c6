package tunside.http.quantity;

import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.NotNull;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import tunside.http.answer.Rounded;
import tunside.http.problem.Place;
import tunside.quantity.TimeSpan;
import tunside.quantity.TimeUnit;

/** A span of time with its unit. */
@Schema(description = "A span of time with its unit; no unit is ever assumed.")
public record TimeQuantity(
        @NotNull @DecimalMin("0") @DecimalMax("1e9") @Schema(description = "How many of the unit.", required = true)
        Double value,

        @NotNull @Schema(description = "The unit.", required = true)
        TimeUnit unit) {

    /** The domain's value, checked against the range of its use, in s; the low bound after a fault. */
    public TimeSpan toTimeSpan(Place place, double low, double high) {
        return new TimeSpan(
                place.within(unit.toBase(value), low, high, "s", () -> Rounded.text(value) + " " + unit.symbol()));
    }

    /** As an answer states it, in s, to {@code decimals}. */
    public static TimeQuantity seconds(double value, int decimals) {
        return new TimeQuantity(Rounded.decimals(value, decimals), TimeUnit.S);
    }

    /** As an answer states it, in h, to {@code decimals}. */
    public static TimeQuantity hours(double value, int decimals) {
        return new TimeQuantity(Rounded.decimals(value, decimals), TimeUnit.H);
    }
}

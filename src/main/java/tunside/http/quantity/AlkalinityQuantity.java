package tunside.http.quantity;

import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.NotNull;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import tunside.http.answer.Rounded;
import tunside.http.problem.Place;
import tunside.quantity.Alkalinity;
import tunside.quantity.EquivalentUnit;

/** An alkalinity with its unit. */
@Schema(description = "An alkalinity with its unit; no unit is ever assumed.")
public record AlkalinityQuantity(
        @NotNull
        @DecimalMin("-1000")
        @DecimalMax("5000")
        @Schema(description = "How many of the unit.", required = true)
        Double value,

        @NotNull @Schema(description = "The unit.", required = true)
        EquivalentUnit unit) {

    /** The domain's value, checked against the range of its use, in mEq/L; the low bound after a fault. */
    public Alkalinity toAlkalinity(Place place, double low, double high) {
        return new Alkalinity(
                place.within(unit.toBase(value), low, high, "mEq/L", () -> Rounded.text(value) + " " + unit.symbol()));
    }

    /** As an answer states it, in mEq/L, to {@code decimals}. */
    public static AlkalinityQuantity meqPerL(double value, int decimals) {
        return new AlkalinityQuantity(Rounded.decimals(value, decimals), EquivalentUnit.MEQ_PER_L);
    }
}

package tunside.http.quantity;

import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.NotNull;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import tunside.http.answer.Rounded;
import tunside.http.problem.Place;
import tunside.quantity.Strength;
import tunside.quantity.StrengthUnit;

/** The strength of an acid or base as its label states it. */
@Schema(
        description =
                "The strength of an acid or base as its label states it. eq/L counts every proton of the formula.")
public record StrengthQuantity(
        @NotNull @DecimalMin("0.001") @DecimalMax("100") @Schema(description = "How many of the unit.", required = true)
        Double value,

        @NotNull @Schema(description = "The unit.", required = true)
        StrengthUnit unit) {

    /** The domain's value; a fault here if it makes no sense. */
    public Strength toStrength(Place place) {
        return place.build(() -> new Strength(value, unit), Strength.percent(1));
    }

    /** As an answer states it, to {@code decimals}. */
    public static StrengthQuantity percent(double percent, int decimals) {
        return new StrengthQuantity(Rounded.decimals(percent, decimals), StrengthUnit.PERCENT_W_W);
    }
}

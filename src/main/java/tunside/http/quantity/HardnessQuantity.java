package tunside.http.quantity;

import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.NotNull;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import tunside.http.answer.Rounded;
import tunside.http.problem.Place;
import tunside.quantity.EquivalentUnit;
import tunside.quantity.Hardness;

/** A hardness with its unit. */
@Schema(description = "A hardness with its unit; no unit is ever assumed.")
public record HardnessQuantity(
        @NotNull @DecimalMin("0") @DecimalMax("20000") @Schema(description = "How many of the unit.", required = true)
        Double value,

        @NotNull @Schema(description = "The unit.", required = true)
        EquivalentUnit unit) {

    /** The domain's value, checked against the range of its use, in mEq/L; the low bound after a fault. */
    public Hardness toHardness(Place place, double low, double high) {
        return new Hardness(
                place.within(unit.toBase(value), low, high, "mEq/L", () -> Rounded.text(value) + " " + unit.symbol()));
    }

    /** As an answer states it, in mEq/L, to {@code decimals}. */
    public static HardnessQuantity meqPerL(double value, int decimals) {
        return new HardnessQuantity(Rounded.decimals(value, decimals), EquivalentUnit.MEQ_PER_L);
    }
}

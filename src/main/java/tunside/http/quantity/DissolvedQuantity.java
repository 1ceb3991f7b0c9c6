package tunside.http.quantity;

import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.NotNull;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import tunside.quantity.Dissolved;
import tunside.quantity.DissolvedUnit;

/** The concentration of a dissolved ion as a laboratory reports it. */
@Schema(
        description =
                "The concentration of a dissolved ion as a laboratory reports it. as-S is for sulfate, as-N for nitrate.")
public record DissolvedQuantity(
        @NotNull @DecimalMin("0") @DecimalMax("100000") @Schema(description = "How many of the unit.", required = true)
        Double value,

        @NotNull @Schema(description = "The unit.", required = true)
        DissolvedUnit unit) {

    /** The domain's value. */
    public Dissolved toDissolved() {
        return new Dissolved(value, unit);
    }
}

package tunside.http.quantity;

import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.NotNull;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import tunside.http.answer.Rounded;
import tunside.quantity.Conductivity;
import tunside.quantity.ConductivityUnit;

/** An electrical conductivity with its unit. */
@Schema(description = "An electrical conductivity with its unit; no unit is ever assumed.")
public record ConductivityQuantity(
        @NotNull @DecimalMin("0") @DecimalMax("100000") @Schema(description = "How many of the unit.", required = true)
        Double value,

        @NotNull @Schema(description = "The unit.", required = true)
        ConductivityUnit unit) {

    /** The domain's value. */
    public Conductivity toConductivity() {
        return Conductivity.of(value, unit);
    }

    /** As an answer states it, in uS/cm, to {@code digits} significant digits. */
    public static ConductivityQuantity microsiemensPerCm(double value, int digits) {
        return new ConductivityQuantity(Rounded.significant(value, digits), ConductivityUnit.US_PER_CM);
    }
}

package tunside.http.water;

import jakarta.validation.Valid;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.NotNull;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;
import tunside.http.quantity.VolumeQuantity;

/** An alkalinity titration as it was done. */
@Schema(description = "An alkalinity titration as it was done: acid run into a sample down to an end point.")
public record AlkalinityTitrationRequest(
        @NotNull @Valid @Schema(description = "The sample, 1 mL to 10 L.", required = true)
        VolumeQuantity sample,

        @NotNull @Valid @Schema(description = "Acid used down to alkalinityEndPoint, up to 10 L.", required = true)
        VolumeQuantity acid,

        @NotNull
        @DecimalMin("0.0001")
        @DecimalMax("10")
        @Schema(description = "Strength of the acid, eq/L (its normality).", examples = "0.1", required = true)
        Double acidEqPerL,

        @Valid
        @Schema(
                description =
                        "For soft water: acid used, from the start, down to 0.3 pH below that end point. The formula"
                                + " of two end points is then used.",
                nullable = true)
        @Nullable
        VolumeQuantity acidToSecondEndPoint) {}

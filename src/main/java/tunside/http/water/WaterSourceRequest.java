package tunside.http.water;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import tunside.http.quantity.VolumeQuantity;

/** One water of a blend. */
@Schema(description = "One water of a blend.")
public record WaterSourceRequest(
        @NotNull @Valid @Schema(description = "How much of it.", required = true)
        VolumeQuantity volume,

        @NotNull @Valid @Schema(description = "What it is; an empty object is distilled water.", required = true)
        WaterRequest water) {}

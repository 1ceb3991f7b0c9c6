package tunside.http.calibration;

import jakarta.validation.Valid;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;
import tunside.electrode.BufferState;
import tunside.http.quantity.TimeQuantity;
import tunside.http.quantity.VolumeQuantity;

/** How a buffer came to be. */
@Schema(description = "How a buffer was made up from powder, and how old it is.")
public record BufferPreparationRequest(
        @Valid
        @Schema(description = "Volume that the label says, up to 100 L. Only together with waterUsed.", nullable = true)
        @Nullable
        VolumeQuantity labelVolume,

        @Valid
        @Schema(
                description = "Water that was used, half to twice the label's volume. Only together with labelVolume.",
                nullable = true)
        @Nullable
        VolumeQuantity waterUsed,

        @Valid
        @Schema(
                description = "Time since it was made up or opened, up to ten years. Only together with since.",
                nullable = true)
        @Nullable
        TimeQuantity age,

        @Schema(
                description = "What the age counts from: opened, or made-up from powder. Only together with age.",
                nullable = true)
        @Nullable
        BufferState since) {}

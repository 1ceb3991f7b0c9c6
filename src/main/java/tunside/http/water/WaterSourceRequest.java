package tunside.http.water;

import jakarta.validation.Valid;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;
import tunside.http.quantity.VolumeQuantity;

/** One water of a blend. */
@Schema(description = "One water of a blend.")
public record WaterSourceRequest(
        @Size(min = 1, max = 60) @Schema(description = "What you call it.", examples = "tap", nullable = true) @Nullable
        String name,

        @NotNull @Valid @Schema(description = "How much of it, 0.01 to 10000 L.", required = true)
        VolumeQuantity volume,

        @NotNull
        @Valid
        @Schema(
                description = "What it is, as its laboratory reports it; an empty object is distilled water.",
                required = true)
        WaterRequest water,

        @DecimalMin("0")
        @DecimalMax("0.5")
        @Schema(
                description =
                        "For water from reverse osmosis: the share of what is dissolved that the membrane lets through,"
                                + " commonly 0.02 to 0.05; water is then the water that is fed to it. Left out: the water"
                                + " itself.",
                examples = "0.03",
                nullable = true)
        @Nullable
        Double residualShare) {}

package tunside.http.water;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;
import tunside.http.quantity.VolumeQuantity;

/** The liquor: one water with a volume, or a blend of several, as it is or treated. */
@Schema(
        description =
                "The liquor: either volume and water, or sources to blend, whose volumes add up; and what is done to it"
                        + " before it is used.")
public record LiquorRequest(
        @Valid @Schema(description = "How much, 0.01 to 10000 L. Left out where sources are given.") @Nullable
        VolumeQuantity volume,

        @Valid @Schema(description = "What it is; left out, or an empty object: distilled water.") @Nullable
        WaterRequest water,

        @Size(min = 1, max = 32) @Schema(description = "Waters to blend instead of one.") @Nullable
        List<@NotNull @Valid WaterSourceRequest> sources,

        @Size(max = 16)
        @Schema(description = "What is done to the whole liquor, in this order; boiling and liming once at most.")
        @Nullable
        List<@NotNull @Valid TreatmentRequest> treatments) {}

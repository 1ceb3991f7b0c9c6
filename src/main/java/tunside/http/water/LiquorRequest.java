package tunside.http.water;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import tunside.http.quantity.VolumeQuantity;

/** The liquor: one water with a volume, or a blend of several. */
@Schema(description = "The liquor: either volume and water, or sources to blend, whose volumes add up.")
public record LiquorRequest(
        @Valid @Schema(description = "How much, 0.01 to 10000 L. Left out where sources are given.")
        VolumeQuantity volume,

        @Valid @Schema(description = "What it is; left out, or an empty object: distilled water.")
        WaterRequest water,

        @Size(min = 1, max = 32) @Schema(description = "Waters to blend instead of one.")
        List<@NotNull @Valid WaterSourceRequest> sources) {}

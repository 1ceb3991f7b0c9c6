package tunside.http.water;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;
import tunside.http.quantity.TemperatureQuantity;

/** The question of {@code POST /v1/water-analyses}. */
@Schema(description = "Waters to judge, to blend and to treat. Sources and treatments are those of a liquor.")
public record WaterAnalysisRequest(
        @NotNull
        @Size(min = 1, max = 32)
        @Schema(description = "The waters, 1 to 32; more than one are poured together.", required = true)
        List<@NotNull @Valid WaterSourceRequest> sources,

        @Size(max = 16)
        @Schema(description = "What is done to all of it, in this order; boiling and liming once at most.")
        @Nullable
        List<@NotNull @Valid TreatmentRequest> treatments,

        @Valid
        @Schema(
                description =
                        "Temperature for which the blended and the treated water are answered, 0 to 100 degC. Left"
                                + " out: the mean of the samples.")
        @Nullable
        TemperatureQuantity temperature) {}

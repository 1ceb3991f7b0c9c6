package tunside.http.review;

import jakarta.validation.Valid;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;
import tunside.http.mash.MashPredictionRequest;

/** One brew of a record. */
@Schema(description = "A past mash with the pH that was measured in it.")
public record BrewRequest(
        @Size(min = 1, max = 60)
        @Schema(
                description = "Name or date, as the answer shall call it; its number where absent.",
                examples = "harvest ale, 3 October",
                nullable = true)
        @Nullable
        String label,

        @NotNull
        @Valid
        @Schema(
                description =
                        "The mash as it was when its pH was first measured: everything that had gone in by then, and"
                                + " no experience.",
                required = true)
        MashPredictionRequest mash,

        @NotNull
        @DecimalMin("2.5")
        @DecimalMax("10.5")
        @Schema(
                description = "pH measured first, of a sample cooled to 20 to 26 degC, before any of the doses.",
                examples = "5.52",
                required = true)
        Double measuredPh,

        @DecimalMin("0.001")
        @DecimalMax("0.5")
        @Schema(
                description = "Standard uncertainty of that reading and of those after doses; 0.05 where absent.",
                examples = "0.03",
                nullable = true)
        @Nullable
        Double phUncertainty,

        @Size(max = 8)
        @Schema(
                description =
                        "What was added after the first reading, in order, each with the pH read after it: they tell"
                                + " how strongly the mash buffers.",
                nullable = true)
        @Nullable
        List<@NotNull @Valid ReadDoseRequest> doses) {}

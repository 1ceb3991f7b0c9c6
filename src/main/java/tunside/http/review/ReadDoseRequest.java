package tunside.http.review;

import jakarta.validation.Valid;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.NotNull;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;
import tunside.http.mash.AdditionRequest;

/** A dose of a past brew with the reading after it. */
@Schema(description = "An acid, salt or base that went in after the first reading, and the pH read after it.")
public record ReadDoseRequest(
        @NotNull @Valid @Schema(description = "What went in and how much.", required = true)
        AdditionRequest addition,

        @NotNull
        @DecimalMin("2.5")
        @DecimalMax("10.5")
        @Schema(
                description = "pH of a cooled sample, stirred and settled after the addition.",
                examples = "5.38",
                required = true)
        Double ph,

        @DecimalMin("0.001")
        @DecimalMax("0.5")
        @Schema(description = "Its standard uncertainty; that of the brew where absent.", nullable = true)
        @Nullable
        Double phUncertainty) {}

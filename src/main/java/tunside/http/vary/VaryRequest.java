package tunside.http.vary;

import com.fasterxml.jackson.databind.JsonNode;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** What to vary in a request, and how far. */
@Schema(description = "One quantity or number of the request, varied over a range: the answer then has the curve.")
public record VaryRequest(
        @NotNull
        @Size(min = 1, max = 200)
        @Schema(
                description = "JSON Pointer to the quantity or number of this request that is varied.",
                examples = "/liquor/volume",
                required = true)
        String pointer,

        @NotNull
        @Schema(
                description = "Where the range begins: a quantity for a quantity, a number for a number.",
                ref = "VaryEnd",
                required = true)
        JsonNode from,

        @NotNull
        @Schema(
                description = "Where it ends, in the unit of 'from'; it may be less than 'from'.",
                ref = "VaryEnd",
                required = true)
        JsonNode to,

        @NotNull @Min(2) @Max(200) @Schema(description = "Points of the curve, both ends included.", required = true)
        Integer steps) {}

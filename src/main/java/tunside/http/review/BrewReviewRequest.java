package tunside.http.review;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** The question of {@code POST /v1/brew-reviews}. */
@Schema(description = "A brewer's record of measured mashes, all from one household: one meter, one way of working.")
public record BrewReviewRequest(
        @NotNull @Size(min = 1, max = 200) @Schema(description = "The brews, 1 to 200, in any order.", required = true)
        List<@NotNull @Valid BrewRequest> brews) {}

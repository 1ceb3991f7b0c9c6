package tunside.http.answer;

import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** One safety note that applies to what the caller is about to do. */
@Schema(description = "One safety note that applies to what you are about to do.")
public record SafetyAdvice(
        @Schema(description = "Which note.", examples = "acid.into-water", maxLength = 80)
        String code,

        @Schema(description = "What to do, and why.", maxLength = 1200)
        String message,

        @Schema(
                description = "What it is about: a substance with its strength, or a step of the work.",
                maxLength = 120)
        String appliesTo,

        @Schema(description = "Hazard statement codes at this strength.", maxItems = 12)
        List<String> hazards,

        @Schema(description = "Id of the publication or practice behind the note.", maxLength = 60)
        String source) {}

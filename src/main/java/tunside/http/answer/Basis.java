package tunside.http.answer;

import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** What an answer rests on. */
@Schema(description = "What the answer rests on: the model, what it assumes, and the publications behind its numbers.")
public record Basis(
        @Schema(description = "The model that computed the answer.", examples = "proton-balance", maxLength = 80)
        String model,

        @Schema(description = "Version of the service whose numbers these are.", examples = "0.1.0", maxLength = 20)
        String version,

        @Schema(description = "What the model takes for granted, in words.", maxItems = 40)
        List<String> assumptions,

        @Schema(description = "Ids that GET /v1/sources resolves.", maxItems = 80)
        List<String> sources) {

    /** Version of the service. */
    public static final String VERSION = "0.1.0";

    /** The basis of an answer of this version. */
    public static Basis of(String model, List<String> assumptions, List<String> sources) {
        List<String> kept = assumptions instanceof LastingList ? assumptions : List.copyOf(assumptions);
        return new Basis(model, VERSION, kept, List.copyOf(sources));
    }
}

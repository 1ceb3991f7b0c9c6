package tunside.http.problem;

import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** One thing that is wrong with a request. */
@Schema(description = "One thing that is wrong with the request.")
public record Fault(
        @Schema(
                description = "JSON Pointer to the member; empty for the whole body.",
                examples = "/buffers/1/temperature",
                maxLength = 300)
        String pointer,

        @Schema(description = "What is wrong: the range or the choice, and the value given.", maxLength = 600)
        String detail) {}

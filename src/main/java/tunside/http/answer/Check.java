package tunside.http.answer;

import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;
import tunside.finding.Outcome;

/** One check of the input, passed or not. */
@Schema(description = "One check of the input or of the answer, passed or not.")
public record Check(
        @Schema(description = "What was checked.", examples = "water.ion-balance", maxLength = 80)
        String code,

        @Schema(
                description = "pass: fine. note: worth knowing. caution: read before you act. stop: do not act on the"
                        + " result.")
        Outcome outcome,

        @Schema(
                description = "JSON Pointer into the request; empty for the whole.",
                examples = "/readings/1",
                maxLength = 200)
        String pointer,

        @Schema(description = "What was found and what to do, in words.", maxLength = 600)
        String message,

        @Schema(description = "The value found.", nullable = true, minimum = "-1e12", maximum = "1e12") @Nullable
        Double observed,

        @Schema(
                description = "The value or limit it was held against.",
                nullable = true,
                minimum = "-1e12",
                maximum = "1e12")
        @Nullable
        Double expected,

        @Schema(
                description = "Id of the publication or practice behind the check.",
                examples = "COMMON-PRACTICE",
                maxLength = 60)
        String source) {}

package tunside.http.problem;

import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;
import tunside.http.answer.Answer;
import tunside.http.answer.Basis;
import tunside.http.answer.Check;
import tunside.http.answer.SafetyAdvice;

/** An error answer (RFC 9457) in the frame that every answer has. */
@Schema(description = "An error (RFC 9457): all faults at once, each with its place, its range and the value given.")
public record Problem(
        @Schema(
                description = "Kind of problem, as a relative address.",
                examples = "/problems/invalid-request",
                maxLength = 80)
        String type,

        @Schema(description = "The kind in words.", maxLength = 200)
        String title,

        @Schema(description = "HTTP status.", minimum = "400", maximum = "599")
        int status,

        @Schema(description = "What to do about it.", maxLength = 600)
        String detail,

        @Schema(
                description = "Line of an x-ndjson body that has the problem, the first is 1; absent for a JSON body.",
                nullable = true,
                minimum = "1",
                maximum = "20000000")
        @Nullable
        Integer line,

        @Schema(description = "Every fault found.", maxItems = Problem.MOST_ERRORS)
        List<Fault> errors,

        @Schema(description = "The input checks that ran.", maxItems = 500)
        List<Check> checks,

        @Schema(description = "The safety notes that apply.", maxItems = 60)
        List<SafetyAdvice> safety,

        @Schema(description = "What the answer rests on.") Basis basis)
        implements Answer {
    /** What a client is told of at once. */
    static final int MOST_ERRORS = 500;

    @Override
    public String ending() {
        return type.substring("/problems/".length());
    }

    /** The same, of one line of a body with many. */
    public Problem atLine(int number) {
        return new Problem(type, title, status, detail, number, errors, checks, safety, basis);
    }
}

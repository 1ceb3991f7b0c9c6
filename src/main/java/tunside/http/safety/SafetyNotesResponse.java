package tunside.http.safety;

import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import tunside.http.answer.Answer;
import tunside.http.answer.Basis;
import tunside.http.answer.Check;
import tunside.http.answer.Checks;
import tunside.http.answer.Safety;
import tunside.http.answer.SafetyAdvice;

/** The answer of {@code GET /v1/safety-notes}. */
@Schema(description = "Every safety note in the frame of every answer.")
public record SafetyNotesResponse(
        @Schema(description = "The notes, in the order in which answers carry them.", maxItems = 100)
        List<SafetyAdvice> result,

        @Schema(description = "The input checks that ran.", maxItems = 500)
        List<Check> checks,

        @Schema(description = "The safety notes that apply.", maxItems = 60)
        List<SafetyAdvice> safety,

        @Schema(description = "What the answer rests on.") Basis basis)
        implements Answer {

    static SafetyNotesResponse current() {
        return new SafetyNotesResponse(
                Safety.all(),
                Checks.of(List.of()),
                Safety.general(),
                Basis.of("safety-notes", List.of(), List.of("CLP-1272-2008", "COMMON-PRACTICE")));
    }
}

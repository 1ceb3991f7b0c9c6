package tunside.http.source;

import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import tunside.http.answer.Answer;
import tunside.http.answer.Basis;
import tunside.http.answer.Check;
import tunside.http.answer.Checks;
import tunside.http.answer.Safety;
import tunside.http.answer.SafetyAdvice;
import tunside.reference.Sources;

/** The answer of {@code GET /v1/sources}. */
@Schema(description = "Every source in the frame of every answer.")
public record SourcesResponse(
        @Schema(description = "The sources.", maxItems = 500)
        List<SourceRow> result,

        @Schema(description = "The input checks that ran.", maxItems = 500)
        List<Check> checks,

        @Schema(description = "The safety notes that apply.", maxItems = 60)
        List<SafetyAdvice> safety,

        @Schema(description = "What the answer rests on.") Basis basis)
        implements Answer {

    /** One source. */
    @Schema(description = "A publication, or a named kind of knowledge.")
    public record SourceRow(
            @Schema(description = "As answers name it.", examples = "BUCK-2002", maxLength = 60)
            String id,

            @Schema(description = "Authors, title or journal, year, part.", maxLength = 400)
            String citation,

            @Schema(
                    description = "publication, second-hand, common-practice, derived or memory.",
                    examples = "publication",
                    maxLength = 20)
            String kind,

            @Schema(description = "How the values reached the tables.", maxLength = 400)
            String read) {}

    static SourcesResponse current() {
        List<SourceRow> rows = Sources.all().values().stream()
                .map(source -> new SourceRow(source.id(), source.citation(), source.kind(), source.read()))
                .toList();
        return new SourcesResponse(
                rows, Checks.of(List.of()), Safety.general(), Basis.of("sources", List.of(), List.of()));
    }
}

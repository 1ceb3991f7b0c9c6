package tunside.http.mash;

import java.util.List;
import java.util.OptionalDouble;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;
import tunside.http.answer.Answer;
import tunside.http.answer.Basis;
import tunside.http.answer.Check;
import tunside.http.answer.Checks;
import tunside.http.answer.Safety;
import tunside.http.answer.SafetyAdvice;
import tunside.mash.PhRange;
import tunside.mash.PhRanges;

/** The answer of {@code GET /v1/ph-ranges}. */
@Schema(description = "Every pH range in the frame of every answer.")
public record PhRangesResponse(
        @Schema(description = "The ranges.", maxItems = 200) List<PhRangeRow> result,

        @Schema(description = "The input checks that ran.", maxItems = 500)
        List<Check> checks,

        @Schema(description = "The safety notes that apply.", maxItems = 60)
        List<SafetyAdvice> safety,

        @Schema(description = "What the answer rests on.") Basis basis)
        implements Answer {

    /** One range. */
    @Schema(description = "A pH range that brewers work to, of a sample cooled to 20 to 26 degC.")
    public record PhRangeRow(
            @Schema(description = "As requests name it.", examples = "mash-aim", maxLength = 40)
            String range,

            @Schema(description = "mash, wort, liquor or beer.", examples = "mash", maxLength = 20)
            String liquid,

            @Schema(description = "In words.", maxLength = 120)
            String meaning,

            @Schema(description = "Lower end; absent where open.", nullable = true, minimum = "0", maximum = "14")
            @Nullable
            Double lowPh,

            @Schema(description = "Upper end; absent where open.", nullable = true, minimum = "0", maximum = "14")
            @Nullable
            Double highPh,

            @Schema(description = "Id of the source.", maxLength = 60)
            String source) {
        static PhRangeRow of(PhRange range) {
            return new PhRangeRow(
                    range.id(),
                    range.liquid(),
                    range.meaning(),
                    number(range.lowPh()),
                    number(range.highPh()),
                    range.source());
        }

        private static @Nullable Double number(OptionalDouble value) {
            return value.isPresent() ? value.getAsDouble() : null;
        }
    }

    static PhRangesResponse current() {
        List<PhRangeRow> rows =
                PhRanges.all().values().stream().map(PhRangeRow::of).toList();
        return new PhRangesResponse(
                rows,
                Checks.of(List.of()),
                Safety.general(),
                Basis.of(
                        "ph-ranges",
                        List.of("These are habits and recommendations, not limits of nature; each end is soft by 0.1."),
                        rows.stream().map(PhRangeRow::source).distinct().toList()));
    }
}

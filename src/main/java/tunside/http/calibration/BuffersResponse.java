package tunside.http.calibration;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;
import tunside.electrode.Buffer;
import tunside.electrode.BufferFamily;
import tunside.electrode.BufferSubstance;
import tunside.electrode.Buffers;
import tunside.http.answer.Answer;
import tunside.http.answer.Basis;
import tunside.http.answer.Check;
import tunside.http.answer.Checks;
import tunside.http.answer.Rounded;
import tunside.http.answer.Safety;
import tunside.http.answer.SafetyAdvice;
import tunside.quantity.Temperature;

/** The answer of {@code GET /v1/buffers}. */
@Schema(description = "Every buffer in the frame of every answer.")
public record BuffersResponse(
        @Schema(description = "The buffers.", maxItems = 100)
        List<BufferRow> result,

        @Schema(description = "The input checks that ran.", maxItems = 500)
        List<Check> checks,

        @Schema(description = "The safety notes that apply.", maxItems = 60)
        List<SafetyAdvice> safety,

        @Schema(description = "What the answer rests on.") Basis basis)
        implements Answer {

    /** One buffer. */
    @Schema(description = "A buffer and its pH against temperature.")
    public record BufferRow(
            @Schema(description = "As requests name it.", examples = "jis-phosphate", maxLength = 40)
            String buffer,

            @Schema(description = "The set it belongs to; do not mix sets.")
            BufferFamily family,

            @Schema(description = "What it is made of.") BufferSubstance substance,

            @Schema(description = "Composition in words.", maxLength = 200)
            String composition,

            @Schema(
                    description =
                            "pH at the temperature asked for; absent where none was asked for or the table does not"
                                    + " reach it.",
                    nullable = true,
                    minimum = "0",
                    maximum = "14")
            @Nullable
            Double ph,

            @Schema(
                    description = "Standard uncertainty of a fresh one from powder or bottle, pH.",
                    minimum = "0",
                    maximum = "0.1")
            Double standardUncertainty,

            @Schema(description = "The table, by rising temperature; outside it there is no value.", maxItems = 40)
            List<BufferTemperaturePoint> points,

            @Schema(description = "Whether the table was typed from memory.")
            Boolean fromMemory,

            @Schema(description = "Id of the source of the table.", maxLength = 60)
            String source) {}

    /** One row of a buffer's table. */
    @Schema(description = "A buffer's pH at a temperature.")
    public record BufferTemperaturePoint(
            @Schema(description = "Temperature, degC.", minimum = "-10", maximum = "100")
            Double temperatureDegC,

            @Schema(description = "pH there.", minimum = "0", maximum = "14")
            Double ph) {}

    /** What is said where a table was typed from memory. */
    static final String FROM_MEMORY = "The values of the IUPAC buffers were typed from memory; they agree with the"
            + " European Pharmacopoeia to its last digit, 0.01, at 15 to 35 degC.";

    static BuffersResponse at(Optional<Temperature> temperature) {
        Set<String> sources = new LinkedHashSet<>();
        Buffers.all().values().forEach(buffer -> sources.add(buffer.source()));
        return new BuffersResponse(
                Buffers.all().values().stream()
                        .map(buffer -> row(buffer, temperature))
                        .toList(),
                Checks.of(List.of()),
                Safety.calibration(),
                Basis.of(
                        "buffers",
                        List.of(
                                FROM_MEMORY,
                                "Between the rows IUPAC and technical values go linearly, JIS values smoothly.",
                                "Technical sets of different makers differ: the label of your buffer comes first."),
                        List.copyOf(sources)));
    }

    private static BufferRow row(Buffer buffer, Optional<Temperature> temperature) {
        return new BufferRow(
                buffer.id(),
                buffer.family(),
                buffer.substance(),
                buffer.composition(),
                temperature
                        .filter(buffer::covers)
                        .map(at -> Rounded.decimals(buffer.ph(at), 3))
                        .orElse(null),
                buffer.standardUncertaintyPh(),
                buffer.points().stream()
                        .map(point ->
                                new BufferTemperaturePoint(point.temperatureDegC(), Rounded.decimals(point.ph(), 4)))
                        .toList(),
                buffer.fromMemory(),
                buffer.source());
    }
}

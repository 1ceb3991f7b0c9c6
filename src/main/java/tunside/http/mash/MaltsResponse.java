package tunside.http.mash;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;
import tunside.http.answer.Answer;
import tunside.http.answer.Basis;
import tunside.http.answer.Check;
import tunside.http.answer.Checks;
import tunside.http.answer.Rounded;
import tunside.http.answer.Safety;
import tunside.http.answer.SafetyAdvice;
import tunside.mash.ClassValue;
import tunside.mash.MaltClass;
import tunside.mash.MaltClasses;

/** The answer of {@code GET /v1/malts}. */
@Schema(description = "Every malt class in the frame of every answer.")
public record MaltsResponse(
        @Schema(description = "The malt classes.", maxItems = 200)
        List<MaltRow> result,

        @Schema(description = "The input checks that ran.", maxItems = 500)
        List<Check> checks,

        @Schema(description = "The safety notes that apply.", maxItems = 60)
        List<SafetyAdvice> safety,

        @Schema(description = "What the answer rests on.") Basis basis)
        implements Answer {

    /** One malt class. */
    @Schema(description = "A generic class of malt.")
    public record MaltRow(
            @Schema(description = "As requests name it.", examples = "pale", maxLength = 40)
            String malt,

            @Schema(description = "In words.", maxLength = 100)
            String name,

            @Schema(
                    description = "Whether published measurements of this class exist; if not, its values are an"
                            + " assumption with a wide uncertainty.")
            Boolean publishedData,

            @Schema(description = "Lowest colour measured or usual, EBC.", minimum = "0", maximum = "2000")
            Double lowestColourEbc,

            @Schema(description = "Highest colour measured or usual, EBC.", minimum = "0", maximum = "2000")
            Double highestColourEbc,

            @Schema(
                    description = "Litres of liquor per kg at which the distilled-water pH holds.",
                    minimum = "1",
                    maximum = "20")
            Double liquorRatioLPerKg,

            @Schema(
                    description =
                            "pH of a mash in distilled water, cooled sample; where phPerColourDecade is not 0, at 1"
                                    + " EBC.")
            MaltValue distilledWaterPh,

            @Schema(
                    description = "Change of that pH per tenfold colour in EBC; 0 where colour does not matter.",
                    minimum = "-2",
                    maximum = "2")
            Double phPerColourDecade,

            @Schema(description = "Buffering, mEq/(kg pH).") MaltValue bufferingMeqPerKgPh,

            @Schema(description = "Lactic acid on the malt, % of its mass.", nullable = true) @Nullable
            MaltValue lacticAcidPercent,

            @Schema(description = "Id of the source of the class.", maxLength = 60)
            String source) {}

    /** A value of a malt class. */
    @Schema(description = "A value of a malt class with its scatter.")
    public record MaltValue(
            @Schema(description = "Mean, or constant of a fit.", minimum = "0", maximum = "500")
            Double value,

            @Schema(description = "Standard deviation of single lots.", minimum = "0", maximum = "50")
            Double standardDeviation,

            @Schema(
                    description = "Standard uncertainty of one lot that was not measured.",
                    minimum = "0",
                    maximum = "50")
            Double lotUncertainty,

            @Schema(description = "Lots measured; 0 without published data.", minimum = "0", maximum = "1000")
            Integer n,

            @Schema(description = "Id of the source.", maxLength = 60)
            String source) {
        static MaltValue of(ClassValue value) {
            return new MaltValue(
                    value.value(),
                    value.standardDeviation(),
                    Rounded.significant(value.lotUncertainty(), 3),
                    value.n(),
                    value.source());
        }
    }

    static MaltsResponse current() {
        List<MaltRow> rows = new ArrayList<>();
        Set<String> sources = new LinkedHashSet<>();
        for (MaltClass maltClass : MaltClasses.all().values()) {
            rows.add(row(maltClass));
            sources.add(maltClass.source());
            sources.add(maltClass.distilledWaterPh().source());
            sources.add(maltClass.buffering().source());
        }
        return new MaltsResponse(
                rows,
                Checks.of(List.of()),
                Safety.general(),
                Basis.of(
                        "malts",
                        List.of(
                                "Malts are generic classes: one lot differs from its class.",
                                "The buffering belongs to this service's parameter set and must not be mixed with another.",
                                "Beyond the scatter between lots, all bufferings share a standard uncertainty of 20 %."),
                        List.copyOf(sources)));
    }

    private static MaltRow row(MaltClass maltClass) {
        return new MaltRow(
                maltClass.id(),
                maltClass.name(),
                maltClass.measured(),
                maltClass.lowestColour().ebc(),
                maltClass.highestColour().ebc(),
                maltClass.liquorRatioLPerKg(),
                MaltValue.of(maltClass.distilledWaterPh()),
                maltClass.phPerDecade(),
                MaltValue.of(maltClass.buffering()),
                maltClass.lacticAcidPercent().map(MaltValue::of).orElse(null),
                maltClass.source());
    }
}

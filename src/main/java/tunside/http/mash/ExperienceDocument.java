package tunside.http.mash;

import jakarta.validation.Valid;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import java.util.ArrayList;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;
import tunside.http.answer.Rounded;
import tunside.http.json.Known;
import tunside.http.json.KnownIds;
import tunside.http.problem.Place;
import tunside.mash.Experience;
import tunside.mash.LearntParameter;
import tunside.mash.LearntQuantity;
import tunside.mash.Malt;

/** What a household's own mashes have taught, as the caller keeps it and sends it with later questions. */
@Schema(
        description = "What your own mashes have taught. The service keeps nothing: store this document and send it,"
                + " unchanged, with later questions.")
public record ExperienceDocument(
        @NotNull
        @Size(min = 1, max = 60)
        @Schema(description = "The model whose parameters were learned.", examples = Experience.MODEL, required = true)
        String model,

        @NotNull
        @Size(min = 1, max = 20)
        @Schema(
                description =
                        "Version of that model; a document of another version is refused: review the brews again.",
                examples = Experience.VERSION,
                required = true)
        String version,

        @NotNull
        @Min(0)
        @Max(10_000)
        @Schema(description = "Brews that it was learned from.", examples = "5", required = true)
        Integer brews,

        @NotNull @Size(max = MOST_PARAMETERS) @Schema(description = "The parameters, each once.", required = true)
        List<@NotNull @Valid LearntParameterDocument> parameters,

        @NotNull
        @Size(max = MOST_PARAMETERS)
        @Schema(
                description = "Covariance of the parameters in their order: symmetric, positive definite.",
                required = true)
        List<@NotNull @Size(max = MOST_PARAMETERS) List<@NotNull @DecimalMin("-1") @DecimalMax("1") Double>>
                covariance) {
    /** Most parameters: three of all malts, every class, and the products of a record. */
    static final int MOST_PARAMETERS = 80;

    private static final int DIGITS = 12;

    /** One parameter. */
    @Schema(description = "A parameter of the model and its mean after learning.")
    public record LearntParameterDocument(
            @NotNull
            @Schema(
                    description =
                            "model-bias: pH, of every malt. malt-types-bias: pH, of every malt known by class, besides."
                                    + " buffering-scale: natural logarithm of the factor on the buffering of malts known"
                                    + " by class. malt-offset: pH, of all products of one class, besides. product-offset: pH,"
                                    + " of one product of the class, besides.",
                    required = true)
            LearntQuantity quantity,

            @Size(min = 1, max = 40)
            @Schema(
                    description = "For a malt-offset or product-offset: the class, an id of GET /v1/malts.",
                    examples = "pale",
                    pattern = "^[a-z-]+$",
                    nullable = true)
            @Known(value = KnownIds.MALT, groups = Known.Names.class)
            @Nullable
            String malt,

            @Size(min = 1, max = Malt.LONGEST_PRODUCT)
            @Pattern(regexp = Malt.PRODUCT_PATTERN, message = Malt.PRODUCT_WORDS)
            @Schema(
                    description =
                            "For a product-offset: the product, as the brews named it. Absent: the one product of the class"
                                    + " that the brews did not name.",
                    examples = "maltings by the river",
                    nullable = true)
            @Nullable
            String product,

            @NotNull
            @DecimalMin("-2")
            @DecimalMax("2")
            @Schema(description = "Mean.", examples = "-0.12", required = true)
            Double mean) {}

    /** The domain's value; nothing learned where there is none. The faults go to {@code place}, the document's. */
    public static Experience toExperience(@Nullable ExperienceDocument document, Place place) {
        if (document == null) {
            return Experience.NONE;
        }
        boolean foreign = false;
        if (!document.model.equals(Experience.MODEL)) {
            place.member("model")
                    .fault("must be \"%s\", whose parameters it shifts, but is \"%s\""
                            .formatted(Experience.MODEL, document.model));
            foreign = true;
        }
        if (!document.version.equals(Experience.VERSION)) {
            place.member("version")
                    .fault(
                            "is \"%s\" but this service predicts with version \"%s\", and what was learned about another version would"
                                            .formatted(document.version, Experience.VERSION)
                                    + " mislead; send your brews to POST /v1/brew-reviews again, or leave the experience out");
            foreign = true;
        }
        if (foreign) {
            return Experience.NONE;
        }
        List<LearntParameter> parameters = new ArrayList<>();
        for (int i = 0; i < document.parameters.size(); i++) {
            LearntParameterDocument parameter = document.parameters.get(i);
            LearntParameter learnt = place.member("parameters")
                    .item(i)
                    .build(
                            () -> new LearntParameter(
                                    parameter.quantity,
                                    orEmpty(parameter.malt),
                                    orEmpty(parameter.product),
                                    parameter.mean),
                            null);
            if (learnt == null) {
                return Experience.NONE;
            }
            parameters.add(learnt);
        }
        return place.member("covariance")
                .build(() -> new Experience(document.brews, parameters, document.covariance), Experience.NONE);
    }

    /** As an answer states it, to {@value #DIGITS} digits, so that predicting with it loses nothing. */
    public static ExperienceDocument of(Experience experience) {
        return new ExperienceDocument(
                Experience.MODEL,
                Experience.VERSION,
                experience.brews(),
                experience.parameters().stream()
                        .map(learnt -> new LearntParameterDocument(
                                learnt.quantity(),
                                orNull(learnt.malt()),
                                orNull(learnt.product()),
                                Rounded.significant(learnt.mean(), DIGITS)))
                        .toList(),
                experience.covariance().stream()
                        .map(row -> row.stream()
                                .map(value -> Rounded.significant(value, DIGITS))
                                .toList())
                        .toList());
    }

    private static String orEmpty(@Nullable String text) {
        return text == null ? "" : text;
    }

    private static @Nullable String orNull(String text) {
        return text.isEmpty() ? null : text;
    }
}

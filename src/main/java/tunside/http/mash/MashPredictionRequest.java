package tunside.http.mash;

import jakarta.validation.Valid;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;
import tunside.http.calibration.CalibrationDocument;
import tunside.http.quantity.TimeQuantity;
import tunside.http.vary.VaryRequest;
import tunside.http.water.LiquorRequest;

/** The question of {@code POST /v1/mash-predictions}. */
@Schema(description = "A mash whose pH is asked for.")
public record MashPredictionRequest(
        @NotNull @Size(min = 1, max = 64) @Schema(description = "All malt, 1 to 64 entries.", required = true)
        List<@NotNull @Valid MaltRequest> grist,

        @NotNull @Valid @Schema(description = "All water in the mash when the sample is taken.", required = true)
        LiquorRequest liquor,

        @Size(max = 32) @Schema(description = "Acids, salts and bases that go into the mash.") @Nullable
        List<@NotNull @Valid AdditionRequest> additions,

        @DecimalMin("0")
        @DecimalMax("2")
        @Schema(
                description =
                        "Gap of the mill in mm, 0 for pulverised malt; a coarser crush buffers less. Absent: a fine"
                                + " crush is taken.",
                examples = "0.8",
                nullable = true)
        @Nullable
        Double millGapMm,

        @Valid
        @Schema(
                description = "Time from mashing in to the sample, up to 24 h. Absent: about ten minutes.",
                nullable = true)
        @Nullable
        TimeQuantity rest,

        @Schema(
                description = "Whether a part of the mash was boiled before the sample; absent means no.",
                nullable = true)
        @Nullable
        Boolean decoction,

        @Valid
        @Schema(
                description =
                        "What your own mashes have taught: the experience that POST /v1/brew-reviews answered with, unchanged."
                                + " It shifts the prediction and narrows its interval. Absent: published values alone.",
                nullable = true)
        @Nullable
        ExperienceDocument experience,

        @Valid
        @Schema(
                description =
                        "One quantity or number of this request to vary, such as the liquor's volume: the answer has the"
                                + " curve as well.",
                nullable = true)
        @Nullable
        VaryRequest vary,

        @Valid
        @Schema(
                description =
                        "The calibration that POST /v1/calibration-evaluations answered with, unchanged, to be printed on the"
                                + " sheet. No number rests on it; a check says if the electrode is unfit.",
                nullable = true)
        @Nullable
        CalibrationDocument calibration) {}

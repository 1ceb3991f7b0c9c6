package tunside.http.review;

import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;
import tunside.http.answer.Answer;
import tunside.http.answer.Basis;
import tunside.http.answer.Check;
import tunside.http.answer.SafetyAdvice;
import tunside.http.mash.ExperienceDocument;
import tunside.http.mash.MashPredictionResponse.PhInterval;

/** The answer of {@code POST /v1/brew-reviews}. */
@Schema(description = "What the record teaches.")
public record BrewReviewResponse(
        @Schema(description = "What the record teaches.") BrewReviewResult result,

        @Schema(
                description = "The input checks that ran; of each brew those that ask for caution, and how many ran.",
                maxItems = 8000)
        List<Check> checks,

        @Schema(description = "The safety notes that apply.", maxItems = 60)
        List<SafetyAdvice> safety,

        @Schema(description = "What the answer rests on.") Basis basis)
        implements Answer {

    /** What the record teaches. */
    @Schema(description = "What the record teaches.")
    public record BrewReviewResult(
            @Schema(description = "Brews that were sent.", minimum = "1", maximum = "200")
            Integer brews,

            @Schema(
                    description = "Brews that the experience rests on; the verdicts say why others are set aside.",
                    minimum = "0",
                    maximum = "200")
            Integer counted,

            @Schema(
                    description =
                            "How far mashes of malts known by class lie from the published values in this household: water,"
                                    + " meter, way of working. pH.")
            LearntPh householdBias,

            @Schema(description = "How strongly this household's mashes buffer, against the published values.")
            LearntFactor buffering,

            @Schema(
                    description =
                            "What is learned of each malt class in the record, and of each product where brews name"
                                    + " them.",
                    maxItems = 80)
            List<MaltLesson> malts,

            @Schema(description = "How well each brew is predicted, before and after learning from the others.")
            LeaveOneOut leaveOneOut,

            @Schema(description = "Each brew, in the order sent.", maxItems = 200)
            List<BrewVerdict> verdicts,

            @Schema(description = "How sure the next prediction is, and what more brews would bring.")
            NextPrediction nextPrediction,

            @Schema(description = "Send it with later questions.")
            ExperienceDocument experience) {}

    /** A shift of pH that was learned. */
    @Schema(description = "A shift of pH that was learned.")
    public record LearntPh(
            @Schema(
                    description = "Mean; below 0 where the mashes read lower than published.",
                    minimum = "-14",
                    maximum = "14")
            Double shift,

            @Schema(description = "Standard uncertainty after learning.", minimum = "0", maximum = "2")
            Double standardUncertainty,

            @Schema(description = "The shift lies in here with a probability of 90 %.")
            PhInterval interval90,

            @Schema(description = "Standard uncertainty before the first brew.", minimum = "0", maximum = "2")
            Double publishedUncertainty) {}

    /** A factor that was learned. */
    @Schema(description = "A factor that was learned; its logarithm is normally distributed.")
    public record LearntFactor(
            @Schema(description = "Median; 1 is as published.", minimum = "0", maximum = "10")
            Double factor,

            @Schema(description = "Lower end of the 90 % interval.", minimum = "0", maximum = "10")
            Double low90,

            @Schema(description = "Upper end of the 90 % interval.", minimum = "0", maximum = "20")
            Double high90,

            @Schema(description = "Lower end before the first brew.", minimum = "0", maximum = "10")
            Double publishedLow90,

            @Schema(description = "Upper end before the first brew.", minimum = "0", maximum = "20")
            Double publishedHigh90) {}

    /** What is learned of a malt class. */
    @Schema(description = "What is learned of this household's lots of a malt class.")
    public record MaltLesson(
            @Schema(description = "Id of the class.", examples = "pale", maxLength = 40)
            String malt,

            @Schema(
                    description = "The product, as the brews name it. Absent: the class; where products are named, what"
                            + " they have in common.",
                    examples = "maltings by the river",
                    nullable = true,
                    maxLength = 40)
            @Nullable
            String product,

            @Schema(description = "Counted brews with it.", minimum = "0", maximum = "200")
            Integer brews,

            @Schema(description = "How far its own pH lies from its class, beside the household's bias.")
            LearntPh offset,

            @Schema(
                    description =
                            "Offset and household bias together: how a mash of this malt reads. Surer than either where the"
                                    + " malt is in every brew.")
            LearntPh together) {}

    /** Errors before and after. */
    @Schema(
            description =
                    "Errors of predicting the first reading of each brew, all brews taken, the set aside ones too.")
    public record LeaveOneOut(
            @Schema(description = "From published values alone.")
            PredictionErrors before,

            @Schema(description = "From all other counted brews, this one left out.")
            PredictionErrors after,

            @Schema(
                    description =
                            "How many brews in both figures are set aside: they count here, so that setting them aside"
                                    + " flatters nothing.",
                    minimum = "0",
                    maximum = "200")
            Integer setAside,

            @Schema(
                    description = "The same without the brews that are set aside; absent where none is, or all are.",
                    nullable = true)
            @Nullable
            CountedErrors ofCounted) {}

    /** Errors without the brews set aside. */
    @Schema(description = "Errors of the counted brews alone.")
    public record CountedErrors(
            @Schema(description = "From published values alone.")
            PredictionErrors before,

            @Schema(description = "From all other counted brews, this one left out.")
            PredictionErrors after) {}

    /** Errors of predictions. */
    @Schema(description = "Errors of predictions, measured less predicted.")
    public record PredictionErrors(
            @Schema(description = "Middle of the errors' sizes, pH.", minimum = "0", maximum = "14")
            Double medianAbsolute,

            @Schema(description = "Root of the mean square, pH.", minimum = "0", maximum = "14")
            Double rootMeanSquare,

            @Schema(description = "Mean with its sign, pH.", minimum = "-14", maximum = "14")
            Double mean,

            @Schema(description = "Share of the readings inside the 90 % interval.", minimum = "0", maximum = "1")
            Double within90) {}

    /** A predicted pH. */
    @Schema(description = "A predicted pH of the cooled sample.")
    public record ReviewedPrediction(
            @Schema(description = "pH.", minimum = "-5", maximum = "20")
            Double ph,

            @Schema(description = "Its standard uncertainty.", minimum = "0", maximum = "10")
            Double standardUncertainty) {}

    /** A brew. */
    @Schema(description = "A brew as the review sees it.")
    public record BrewVerdict(
            @Schema(description = "As it was named.", maxLength = 60)
            String label,

            @Schema(description = "First reading.", minimum = "0", maximum = "14")
            Double measuredPh,

            @Schema(description = "What published values alone predict for it.")
            ReviewedPrediction published,

            @Schema(description = "What all other counted brews let expect.")
            ReviewedPrediction fromOthers,

            @Schema(
                    description =
                            "Of the first reading and the answers to doses the one farthest from what the others let expect,"
                                    + " in standard deviations; beyond 3 a brew is set aside.",
                    minimum = "-1000",
                    maximum = "1000")
            Double deviations,

            @Schema(description = "Which that is: 0 the first reading, then one a dose.", minimum = "0", maximum = "8")
            Integer reading,

            @Schema(description = "Whether the experience rests on it.")
            Boolean counted,

            @Schema(
                    description =
                            "Why it is set aside; absent where it counts. far-from-others: beyond 3 standard deviations."
                                    + " beyond-model: as written down it would land where no malt was ever titrated."
                                    + " unexplainable: only a household that cannot be would explain it.",
                    examples = "far-from-others",
                    nullable = true,
                    maxLength = 20)
            @Nullable
            String setAside,

            @Schema(
                    description =
                            "What it teaches beside all the others, in bits: 1 bit halves the range of what the parameters can"
                                    + " be. Of a brew that is set aside: what it would have taught.",
                    minimum = "0",
                    maximum = "1000")
            Double bits,

            @Schema(
                    description = "Where it does not fit: what may lie behind it, the most likely first.",
                    maxItems = 5,
                    nullable = true)
            @Nullable
            List<SlipSuspicion> suspected) {}

    /** A suspected slip. */
    @Schema(description = "A slip that may lie behind a brew that does not fit.")
    public record SlipSuspicion(
            @Schema(
                    description =
                            "meter, first-reading, reading-after-dose, malt-mass, grist-mass, malt-kind, liquor-volume, water, hardness, acid-strength"
                                    + " or salt-mass.",
                    examples = "malt-mass",
                    maxLength = 40)
            String slip,

            @Schema(
                    description =
                            "Whose: a malt, an acid, the number of a dose; empty for meter, whole grist and liquor.",
                    maxLength = 80)
            String subject,

            @Schema(description = "Value as written down.", minimum = "-1e9", maximum = "1e9")
            Double stated,

            @Schema(description = "Value that would explain it best.", minimum = "-1e9", maximum = "1e9")
            Double needed,

            @Schema(description = "Unit of both.", maxLength = 20)
            String unit,

            @Schema(description = "Share of all slips' likelihood.", minimum = "0", maximum = "1")
            Double likelihood,

            @Schema(description = "Whether the brew would then fit.")
            Boolean explains,

            @Schema(description = "In words.", maxLength = 400)
            String message) {}

    /** The outlook. */
    @Schema(
            description =
                    "Standard uncertainty of the next prediction for a grist like those of the record, and what more brews like"
                            + " them would bring.")
    public record NextPrediction(
            @Schema(description = "From published values alone, pH.", minimum = "0", maximum = "10")
            Double publishedUncertainty,

            @Schema(description = "With the experience, pH.", minimum = "0", maximum = "10")
            Double standardUncertainty,

            @Schema(
                    description =
                            "What no number of brews goes below, pH: lots, weighing, water and the time of the sample differ"
                                    + " each time.",
                    minimum = "0",
                    maximum = "10")
            Double floor,

            @Schema(
                    description = "More brews that halve the uncertainty; absent where the floor forbids it.",
                    nullable = true,
                    minimum = "1",
                    maximum = "1000")
            @Nullable
            Integer brewsToHalve,

            @Schema(
                    description = "More brews that halve what can still be learned, the part above the floor.",
                    nullable = true,
                    minimum = "1",
                    maximum = "1000")
            @Nullable
            Integer brewsToHalveTheLearnable,

            @Schema(description = "The uncertainty after a few more brews.", maxItems = 10)
            List<AfterMoreBrews> after) {}

    /** A step of the outlook. */
    @Schema(description = "The uncertainty after some more brews.")
    public record AfterMoreBrews(
            @Schema(description = "How many more.", minimum = "1", maximum = "1000")
            Integer moreBrews,

            @Schema(description = "Standard uncertainty of the next prediction, pH.", minimum = "0", maximum = "10")
            Double standardUncertainty) {}
}

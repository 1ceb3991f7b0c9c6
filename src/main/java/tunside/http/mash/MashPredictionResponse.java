package tunside.http.mash;

import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;
import tunside.http.answer.Answer;
import tunside.http.answer.Basis;
import tunside.http.answer.Check;
import tunside.http.answer.SafetyAdvice;
import tunside.http.quantity.AlkalinityQuantity;
import tunside.http.quantity.MassQuantity;

/** The answer of {@code POST /v1/mash-predictions}. */
@Schema(description = "Where the mash lands, how sure that is, and why.")
public record MashPredictionResponse(
        @Schema(description = "The prediction.") MashPredictionResult result,

        @Schema(description = "The input checks that ran.", maxItems = 500)
        List<Check> checks,

        @Schema(description = "The safety notes that apply.", maxItems = 60)
        List<SafetyAdvice> safety,

        @Schema(description = "What the answer rests on.") Basis basis)
        implements Answer {

    /** The prediction. */
    @Schema(description = "The prediction.")
    public record MashPredictionResult(
            @Schema(description = "Predicted pH of a sample cooled to 20 to 26 degC.", minimum = "0", maximum = "14")
            Double ph,

            @Schema(description = "Standard uncertainty of the pH.", minimum = "0", maximum = "10")
            Double standardUncertainty,

            @Schema(description = "The pH lies in here with a probability of 90 %.")
            PhInterval interval90,

            @Schema(
                    description =
                            "The input that limits the certainty: measure it, or state it better, and the interval"
                                    + " narrows most.")
            LimitingInput limitedBy,

            @Schema(description = "Litres of liquor per kg of malt.", minimum = "0", maximum = "1e8")
            Double liquorRatioLPerKg,

            @Schema(description = "Mass of all malt.") MassQuantity gristMass,

            @Schema(
                    description = "Acid that lowers this mash's pH by one unit, at the predicted pH.",
                    minimum = "0",
                    maximum = "1e9")
            Double bufferCapacityMeqPerPh,

            @Schema(description = "The same per kg of malt.", minimum = "0", maximum = "1e6")
            Double bufferCapacityMeqPerKgPh,

            @Schema(description = "Residual alkalinity of the liquor as it is: alkalinity less Ca/3.5 and Mg/7.")
            AlkalinityQuantity residualAlkalinity,

            @Schema(
                    description =
                            "Residual alkalinity with the salts, bases and acids in the liquor, at the predicted pH.")
            AlkalinityQuantity treatedResidualAlkalinity,

            @Schema(
                    description = "Protons that each component takes up at the predicted pH; they sum to zero.",
                    maxItems = 120)
            List<ProtonContribution> contributions,

            @Schema(
                    description = "What every uncertain input does to the prediction, most important first.",
                    maxItems = 500)
            List<InputInfluence> influences,

            @Schema(description = "Strong acid or base that takes this mash to other pH.", maxItems = 40)
            List<TitrationStep> titration,

            @Schema(
                    description =
                            "Ions of liquor and additions in the mash. What the malt gives is not known and not in"
                                    + " it.",
                    maxItems = 30)
            List<IonAmount> ions,

            @Schema(description = "The pH against what 'vary' names; only where that was asked for.", nullable = true)
            @Nullable
            PhCurve curve) {

        /** The same with a curve. */
        MashPredictionResult withCurve(PhCurve phCurve) {
            return new MashPredictionResult(
                    ph,
                    standardUncertainty,
                    interval90,
                    limitedBy,
                    liquorRatioLPerKg,
                    gristMass,
                    bufferCapacityMeqPerPh,
                    bufferCapacityMeqPerKgPh,
                    residualAlkalinity,
                    treatedResidualAlkalinity,
                    contributions,
                    influences,
                    titration,
                    ions,
                    phCurve);
        }
    }

    /** The predicted pH against one member of the request. */
    @Schema(description = "The predicted pH against one member of the request, everything else as asked.")
    public record PhCurve(
            @Schema(description = "JSON Pointer to the varied member.", examples = "/liquor/volume", maxLength = 200)
            String pointer,

            @Schema(
                    description = "Unit of the varied values; absent for a plain number.",
                    examples = "L",
                    nullable = true,
                    maxLength = 40)
            @Nullable
            String unit,

            @Schema(description = "The points in the order asked for.", minItems = 2, maxItems = 200)
            List<PhCurvePoint> points) {}

    /** One point of a curve. */
    @Schema(description = "One point of a curve. The pH and its uncertainty are absent where the model has no answer.")
    public record PhCurvePoint(
            @Schema(description = "The varied value.", minimum = "-1e9", maximum = "1e9")
            Double value,

            @Schema(description = "Predicted pH.", nullable = true, minimum = "0", maximum = "14") @Nullable
            Double ph,

            @Schema(description = "Standard uncertainty of the pH.", nullable = true, minimum = "0", maximum = "10")
            @Nullable
            Double standardUncertainty,

            @Schema(description = "The pH lies in here with a probability of 90 %.", nullable = true) @Nullable
            PhInterval interval90) {}

    /** An interval of pH. */
    @Schema(description = "An interval of pH.")
    public record PhInterval(
            @Schema(description = "Lower end.", minimum = "-20", maximum = "30")
            Double low,

            @Schema(description = "Upper end.", minimum = "-20", maximum = "30")
            Double high) {}

    /** The input that limits the certainty. */
    @Schema(description = "The input that limits the certainty, and what would make it surer.")
    public record LimitingInput(
            @Schema(description = "Which input.", examples = "malt-ph", maxLength = 60)
            String input,

            @Schema(
                    description = "Whose it is, such as a malt; empty for the liquor and the model.",
                    examples = "pale",
                    maxLength = 80)
            String subject,

            @Schema(description = "What it is, in words.", maxLength = 200)
            String meaning,

            @Schema(description = "What would make it surer.", maxLength = 300)
            String advice,

            @Schema(description = "Share of the prediction's variance.", minimum = "0", maximum = "1000")
            Double varianceShare) {}

    /** What one input does. */
    @Schema(description = "What one uncertain input does to the predicted pH.")
    public record InputInfluence(
            @Schema(
                    description = "Which input, such as malt-ph, malt-buffering, malt-types-bias, alkalinity.",
                    examples = "malt-ph",
                    maxLength = 60)
            String input,

            @Schema(
                    description = "Whose it is, such as a malt; empty for the liquor and the model.",
                    examples = "pale",
                    maxLength = 80)
            String subject,

            @Schema(description = "Unit of value and uncertainty; 1 for a factor.", maxLength = 20)
            String unit,

            @Schema(description = "Value taken.", minimum = "-1e9", maximum = "1e9")
            Double value,

            @Schema(description = "Its standard uncertainty.", minimum = "0", maximum = "1e9")
            Double standardUncertainty,

            @Schema(description = "Change of the pH per unit of the input.", minimum = "-1e9", maximum = "1e9")
            Double phPerUnit,

            @Schema(
                    description = "Change of the pH by one standard uncertainty of the input.",
                    minimum = "-20",
                    maximum = "20")
            Double phPerUncertainty,

            @Schema(
                    description =
                            "Share of the prediction's variance; all shares sum to 1. Below 0 or above 1 only where"
                                    + " inputs that an experience learned together cancel each other.",
                    minimum = "-1000",
                    maximum = "1000")
            Double varianceShare) {}

    /** Protons of one component. */
    @Schema(description = "Protons of one component at the predicted pH.")
    public record ProtonContribution(
            @Schema(description = "malt, liquor, calcium, magnesium, salt or acid.", examples = "malt", maxLength = 20)
            String kind,

            @Schema(description = "Its name; empty for the liquor and its hardness.", maxLength = 80)
            String subject,

            @Schema(
                    description = "mEq taken up; negative where the component gives protons.",
                    minimum = "-1e9",
                    maximum = "1e9")
            Double meq) {}

    /** A step of the titration curve. */
    @Schema(description = "A step of the titration curve.")
    public record TitrationStep(
            @Schema(description = "pH to reach.", minimum = "0", maximum = "14")
            Double ph,

            @Schema(
                    description = "mEq of strong acid from the predicted pH to here; negative: base.",
                    minimum = "-1e9",
                    maximum = "1e9")
            Double acidMeq) {}

    /** An ion. */
    @Schema(description = "An ion in the mash.")
    public record IonAmount(
            @Schema(
                    description = "Ca, Mg, Na, K, Cl, SO4, NO3, HCO3, or the anion of a weak acid.",
                    examples = "Ca",
                    maxLength = 30)
            String ion,

            @Schema(description = "mg per litre of liquor.", minimum = "0", maximum = "1e7")
            Double mgPerL) {}
}

package tunside.http.water;

import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;
import tunside.http.answer.Answer;
import tunside.http.answer.Basis;
import tunside.http.answer.Check;
import tunside.http.answer.SafetyAdvice;
import tunside.http.quantity.AlkalinityQuantity;
import tunside.http.quantity.ConductivityQuantity;
import tunside.http.quantity.HardnessQuantity;
import tunside.http.quantity.MassQuantity;
import tunside.http.quantity.TemperatureQuantity;
import tunside.http.quantity.VolumeQuantity;

/** The answer of {@code POST /v1/water-analyses}. */
@Schema(description = "What is in the water, whether its report can be believed, and what treatment makes of it.")
public record WaterAnalysisResponse(
        @Schema(description = "The analysis.") WaterAnalysisResult result,

        @Schema(description = "The input checks that ran.", maxItems = 1000)
        List<Check> checks,

        @Schema(description = "The safety notes that apply.", maxItems = 120)
        List<SafetyAdvice> safety,

        @Schema(description = "What the answer rests on.") Basis basis)
        implements Answer {

    /** The analysis. */
    @Schema(description = "The analysis.")
    public record WaterAnalysisResult(
            @Schema(description = "Each water as its report reads, in the order of the request.", maxItems = 32)
            List<AnalysedSource> sources,

            @Schema(description = "Volume of all sources together.")
            VolumeQuantity volume,

            @Schema(description = "All sources poured together, before any treatment.")
            WaterState blended,

            @Schema(description = "What each treatment did, in order.", maxItems = 16)
            List<TreatmentEffect> treatments,

            @Schema(description = "What comes out; the blend where nothing is done to it.")
            WaterState treated) {}

    /** One source. */
    @Schema(description = "One source.")
    public record AnalysedSource(
            @Schema(description = "What you call it.", nullable = true, maxLength = 60) @Nullable
            String name,

            @Schema(description = "How much of it.") VolumeQuantity volume,

            @Schema(description = "What it is.") WaterState water,

            @Schema(
                    description =
                            "Slips in reading the report that may explain what it says of itself, likeliest first;"
                                    + " empty where there is nothing to test them by or none is worth a look.",
                    maxItems = 10)
            List<SlipSuspicion> suspectedSlips) {}

    /** A slip. */
    @Schema(description = "A slip in reading the report, undone, and how well that explains the report.")
    public record SlipSuspicion(
            @Schema(description = "Which.", examples = "sulfate-as-sulfur", maxLength = 60)
            String slip,

            @Schema(description = "What happened, in words.", maxLength = 200)
            String meaning,

            @Schema(description = "What to do about it.", maxLength = 200)
            String advice,

            @Schema(
                    description = "Probability that it is this one, of all slips, none and any other fault.",
                    minimum = "0",
                    maximum = "1")
            Double probability,

            @Schema(description = "Ion balance of the report as it stands, %.", minimum = "-100", maximum = "100")
            Double ionBalancePercent,

            @Schema(description = "Ion balance with the slip undone, %.", minimum = "-100", maximum = "100")
            Double ionBalanceMendedPercent) {}

    /** What one treatment did. */
    @Schema(description = "What one treatment did.")
    public record TreatmentEffect(
            @Schema(description = "salt, acid, boiling or liming.", examples = "boiling", maxLength = 20)
            String treatment,

            @Schema(description = "What was added; absent for boiling.", nullable = true, maxLength = 40) @Nullable
            String substance,

            @Schema(description = "How much of it; absent for boiling.", nullable = true) @Nullable
            MassQuantity added,

            @Schema(
                    description =
                            "Chalk that drops to the bottom, or stays there undissolved; absent where there is none.",
                    nullable = true)
            @Nullable
            MassQuantity deposit,

            @Schema(
                    description = "pH after it in a closed vessel, at the temperature of the samples.",
                    minimum = "-1",
                    maximum = "15")
            Double ph,

            @Schema(description = "Alkalinity after it.") AlkalinityQuantity alkalinity,

            @Schema(description = "Calcium after it, mg/L.", minimum = "0", maximum = "1e6")
            Double calciumMgPerL) {}

    /** A water. */
    @Schema(description = "A water at a temperature.")
    public record WaterState(
            @Schema(description = "Temperature for which pH and saturation hold.")
            TemperatureQuantity temperature,

            @Schema(
                    description =
                            "pH in a closed vessel. It keeps its carbon dioxide there, as in a full kettle or a bottle.")
            PhEstimate closed,

            @Schema(description = "pH after the carbon dioxide has come to that of the air, as after long stirring.")
            PhEstimate open,

            @Schema(description = "Every ion; bicarbonate and carbonate as in the closed vessel.", maxItems = 20)
            List<IonContent> ions,

            @Schema(description = "Sum of the cations, mEq/L.", minimum = "0", maximum = "1e4")
            Double cationsMeqPerL,

            @Schema(description = "Sum of the anions, mEq/L.", minimum = "-1e4", maximum = "1e4")
            Double anionsMeqPerL,

            @Schema(
                    description = "Cations less anions, in % of their sum. It stays what the reports were off by.",
                    minimum = "-1e6",
                    maximum = "1e6")
            Double ionBalancePercent,

            @Schema(description = "True alkalinity: without the free acid of the titration's end point.")
            AlkalinityQuantity alkalinity,

            @Schema(description = "Standard uncertainty of the alkalinity.")
            AlkalinityQuantity alkalinityUncertainty,

            @Schema(description = "The alkalinity as CaCO3, mg/L.", minimum = "-1e6", maximum = "1e6")
            Double alkalinityMgPerLAsCaCO3,

            @Schema(description = "Total hardness: calcium and magnesium.")
            HardnessQuantity hardness,

            @Schema(description = "The total hardness as CaCO3, mg/L.", minimum = "0", maximum = "1e6")
            Double hardnessMgPerLAsCaCO3,

            @Schema(description = "The part of it that bicarbonate matches.")
            HardnessQuantity carbonateHardness,

            @Schema(description = "The rest of it.") HardnessQuantity nonCarbonateHardness,

            @Schema(description = "Kolbach's residual alkalinity: alkalinity less Ca/3.5 and Mg/7.")
            AlkalinityQuantity residualAlkalinity,

            @Schema(
                    description = "Dissolved inorganic carbon: all carbonate species, mmol/L.",
                    minimum = "0",
                    maximum = "1e4")
            Double carbonMmolPerL,

            @Schema(description = "The part of it that is carbon dioxide, mmol/L.", minimum = "0", maximum = "1e4")
            Double carbonDioxideMmolPerL,

            @Schema(description = "Conductivity at 25 degC that the ions make up; within 5 %.")
            ConductivityQuantity conductivity,

            @Schema(description = "Dissolved solids that the ions make up, mg/L.", minimum = "0", maximum = "1e7")
            Double dissolvedSolidsMgPerL,

            @Schema(
                    description =
                            "Saturation index of calcite from activities; above 0 the water can drop chalk. Absent without"
                                    + " calcium or carbon.",
                    nullable = true,
                    minimum = "-40",
                    maximum = "10")
            @Nullable
            Double calciteSaturationIndex,

            @Schema(
                    description = "Langelier's index by its short form, for comparison with waterworks' figures.",
                    nullable = true,
                    minimum = "-40",
                    maximum = "10")
            @Nullable
            Double langelierIndex,

            @Schema(
                    description = "Saturation index of gypsum; absent without calcium or sulfate.",
                    nullable = true,
                    minimum = "-40",
                    maximum = "10")
            @Nullable
            Double gypsumSaturationIndex) {}

    /** A pH. */
    @Schema(description = "A pH and how far it may be off.")
    public record PhEstimate(
            @Schema(description = "The pH.", minimum = "-1", maximum = "15")
            Double ph,

            @Schema(description = "Its standard uncertainty.", minimum = "0", maximum = "16")
            Double standardUncertainty) {}

    /** An ion. */
    @Schema(description = "An ion of a water.")
    public record IonContent(
            @Schema(
                    description = "Ca, Mg, Na, K, Cl, SO4, NO3, HCO3, CO3, or the anion of an added weak acid.",
                    examples = "Ca",
                    maxLength = 30)
            String ion,

            @Schema(description = "mg/L.", minimum = "0", maximum = "1e7")
            Double mgPerL,

            @Schema(description = "mEq/L.", minimum = "0", maximum = "1e5")
            Double meqPerL) {}
}

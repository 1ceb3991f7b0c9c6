package tunside.http.plan;

import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;
import tunside.http.answer.Answer;
import tunside.http.answer.Basis;
import tunside.http.answer.Check;
import tunside.http.answer.SafetyAdvice;
import tunside.http.dosing.AcidDoseResponse.DilutionFirst;
import tunside.http.json.ContractNames;
import tunside.http.mash.MashPredictionResponse.MashPredictionResult;
import tunside.http.mash.MashPredictionResponse.PhInterval;
import tunside.http.quantity.MassQuantity;
import tunside.http.quantity.StrengthQuantity;
import tunside.http.quantity.VolumeQuantity;

/** The answer of {@code POST /v1/mash-plans}. */
@Schema(description = "Which additions take the mash to the pH, in the frame of every answer.")
public record MashPlanResponse(
        @Schema(description = "The plan.") MashPlanResult result,

        @Schema(description = "The input checks that ran.", maxItems = 500)
        List<Check> checks,

        @Schema(description = "The safety notes that apply.", maxItems = 60)
        List<SafetyAdvice> safety,

        @Schema(description = "What the answer rests on.") Basis basis)
        implements Answer {
    @Override
    public String ending() {
        return ContractNames.of(result.outcome());
    }

    /** The plan. */
    @Schema(description = "The plan, what it rests on, what limits it, and what else could be done.")
    public record MashPlanResult(
            @Schema(
                    description = "plan: the additions meet all that is wanted. none-needed: the mash does as it is."
                            + " nearest-reachable: not all can be met; this comes nearest, and standsInTheWay says"
                            + " why.")
            PlanResult outcome,

            @Schema(description = "In words, what to do.", maxLength = 1200)
            String advice,

            @Schema(
                    description = "What to add, in the order of the work: water, malt, salts, then acid or base.",
                    maxItems = 30)
            List<PlannedAddition> additions,

            @Schema(
                    description =
                            "The part of the acid or base that may go in before anything is measured; absent where none"
                                    + " is added or where malt sets the pH.",
                    nullable = true)
            @Nullable
            FirstAddition addFirst,

            @Schema(description = "Where the mash would land without the plan.")
            PlannedPh before,

            @Schema(description = "Where it lands with it.") PlannedPh after,

            @Schema(description = "Every range wanted, and what the plan makes of it.", maxItems = 8)
            List<WantedRange> wanted,

            @Schema(description = "How the plan scores; the search makes the total least.")
            PlanObjective objective,

            @Schema(description = "Limits that one more step of an addition would pass.", maxItems = 60)
            List<PlanLimit> binds,

            @Schema(
                    description =
                            "Where not all can be met: each limit that, given up alone, brings the mash nearer; those that"
                                    + " are enough alone first.",
                    maxItems = 60)
            List<PlanObstruction> standsInTheWay,

            @Schema(
                    description =
                            "The best plan with each other acid, acidulated malt or base at hand as the only one, best"
                                    + " first.",
                    maxItems = 14)
            List<AlternativePlan> alternatives,

            @Schema(description = "The prediction of the mash with the plan, as POST /v1/mash-predictions gives it.")
            MashPredictionResult prediction) {}

    /** An addition. */
    @Schema(description = "One addition of the plan, in whole steps of scales and syringe.")
    public record PlannedAddition(
            @Schema(description = "What sort of addition.") PlanAdditionKind kind,

            @Schema(
                    description = "Acid, salt, base or malt id; diluting-water.",
                    examples = "phosphoric",
                    maxLength = 40)
            String id,

            @Schema(description = "In words.", maxLength = 80)
            String name,

            @Schema(description = "JSON Pointer to it in the request.", maxLength = 200)
            String pointer,

            @Schema(description = "For an acid: the strength that the amount counts.", nullable = true) @Nullable
            StrengthQuantity strength,

            @Schema(description = "Volume at 20 degC, for liquids.", nullable = true) @Nullable
            VolumeQuantity volume,

            @Schema(description = "Mass, for all but water.", nullable = true) @Nullable
            MassQuantity mass,

            @Schema(
                    description = "For malt: % of the grist with it. For water: % of the liquor.",
                    nullable = true,
                    minimum = "0",
                    maximum = "100")
            @Nullable
            Double sharePercent,

            @Schema(description = "For water: how much of your own liquor remains.", nullable = true) @Nullable
            VolumeQuantity ownLiquor,

            @Schema(description = "For strong mineral acid: the dilution to make first.", nullable = true) @Nullable
            DilutionFirst diluteFirst) {}

    /** The part that goes in first. */
    @Schema(
            description =
                    "The most of the plan's acid or base that passes the far end of the range with a probability of at most"
                            + " 5 %. Add it, stir, wait, measure, and ask for the rest with POST /v1/acid-doses.")
    public record FirstAddition(
            @Schema(description = "Acid or base id.", maxLength = 40)
            String id,

            @Schema(description = "Volume at 20 degC, for liquids.", nullable = true) @Nullable
            VolumeQuantity volume,

            @Schema(description = "Mass, for powders.", nullable = true) @Nullable
            MassQuantity mass,

            @Schema(description = "Where the mash should land with this part.", minimum = "0", maximum = "14")
            double ph) {}

    /** A pH with its chances. */
    @Schema(description = "A predicted pH, how sure it is, and how likely the mash lands in the range.")
    public record PlannedPh(
            @Schema(description = "Predicted pH of a cooled sample.", minimum = "0", maximum = "14")
            double ph,

            @Schema(description = "Its standard uncertainty.", minimum = "0", maximum = "10")
            double standardUncertainty,

            @Schema(description = "The pH lies in here with a probability of 90 %.")
            PhInterval interval90,

            @Schema(description = "Probability that it lies in the range.", minimum = "0", maximum = "1")
            double probabilityInRange,

            @Schema(description = "Probability that it lies below.", minimum = "0", maximum = "1")
            double probabilityBelow,

            @Schema(description = "Probability that it lies above.", minimum = "0", maximum = "1")
            double probabilityAbove) {}

    /** A range wanted. */
    @Schema(description = "A range that is wanted, in mg/L, for alkalinity in mEq/L, for the ratio without unit.")
    public record WantedRange(
            @Schema(
                    description = "Ca, Mg, Na, K, Cl, SO4, alkalinity, or chloride to sulfate.",
                    examples = "Ca",
                    maxLength = 30)
            String ion,

            @Schema(description = "Its unit; 1 for the ratio.", examples = "mg/L", maxLength = 10)
            String unit,

            @Schema(
                    description = "Without the plan; absent for a ratio to no sulfate.",
                    nullable = true,
                    minimum = "-1e6",
                    maximum = "1e9")
            @Nullable
            Double before,

            @Schema(description = "With it.", nullable = true, minimum = "-1e6", maximum = "1e9") @Nullable
            Double after,

            @Schema(description = "Lower end; absent where open.", nullable = true, minimum = "0", maximum = "1e7")
            @Nullable
            Double low,

            @Schema(description = "Upper end; absent where open.", nullable = true, minimum = "0", maximum = "1e7")
            @Nullable
            Double high,

            @Schema(description = "Whether the plan meets it.")
            boolean met) {}

    /** The objective. */
    @Schema(
            description =
                    "The objective: 1000 for each pH outside the range and for each whole limit that an ion is off, 8 times"
                            + " the square of the distance from the target in half widths of the range, 1 for each"
                            + " addition, and 1 for each 10 mmol per litre that is added (of a base: 10 mEq) or for the whole liquor diluted.")
    public record PlanObjective(
            @Schema(description = "All in one number; less is better.", minimum = "0", maximum = "1e9")
            double total,

            @Schema(description = "How far the pH lies outside its range.", minimum = "0", maximum = "14")
            double phBeyond,

            @Schema(
                    description = "How far all ions lie outside theirs, relative to the limits passed.",
                    minimum = "0",
                    maximum = "1e6")
            double ionsBeyond,

            @Schema(description = "Distance from the target in half widths.", minimum = "0", maximum = "1e4")
            double phOff,

            @Schema(description = "How many additions.", minimum = "0", maximum = "30")
            int additions,

            @Schema(description = "Their amount, as counted.", minimum = "0", maximum = "1e4")
            double amount) {}

    /** A limit. */
    @Schema(description = "A limit that the plan has come up against.")
    public record PlanLimit(
            @Schema(description = "Which.", examples = "plan.ion-low", maxLength = 60)
            String constraint,

            @Schema(
                    description = "JSON Pointer to it in the request; what it points at may have been left out there.",
                    maxLength = 200)
            String pointer,

            @Schema(description = "In words.", maxLength = 600)
            String message,

            @Schema(description = "What the plan makes of it.", nullable = true, minimum = "-1e9", maximum = "1e9")
            @Nullable
            Double observed,

            @Schema(description = "The limit.", nullable = true, minimum = "-1e9", maximum = "1e9") @Nullable
            Double limit) {}

    /** What stands in the way. */
    @Schema(description = "A limit that, given up alone, would bring the mash nearer to all that is wanted.")
    public record PlanObstruction(
            @Schema(description = "Which.", examples = "plan.amount-volume", maxLength = 60)
            String constraint,

            @Schema(
                    description = "JSON Pointer to it in the request; what it points at may have been left out there.",
                    maxLength = 200)
            String pointer,

            @Schema(description = "In words.", maxLength = 600)
            String message,

            @Schema(
                    description = "What the nearest plan makes of it.",
                    nullable = true,
                    minimum = "-1e9",
                    maximum = "1e9")
            @Nullable
            Double observed,

            @Schema(description = "The limit.", nullable = true, minimum = "-1e9", maximum = "1e9") @Nullable
            Double limit,

            @Schema(description = "Whether giving up this limit alone is enough.")
            boolean enoughAlone,

            @Schema(
                    description =
                            "How far pH and ions must lie outside their ranges if it is given up, as a share of how far"
                                    + " they must with it.",
                    minimum = "0",
                    maximum = "1")
            double remainingShare) {}

    /** An alternative. */
    @Schema(description = "The best plan with one other supply that sets the pH.")
    public record AlternativePlan(
            @Schema(description = "Id of that supply.", maxLength = 40)
            String with,

            @Schema(description = "Its name.", maxLength = 80)
            String name,

            @Schema(description = "Whether this plan meets all that is wanted.")
            boolean meetsAll,

            @Schema(description = "What differs from the plan, in words.", maxLength = 600)
            String difference,

            @Schema(description = "What to add.", maxItems = 30)
            List<PlannedAddition> additions,

            @Schema(description = "Where the mash lands.") PlannedPh after,

            @Schema(description = "Lactate in the liquor, mg/L.", minimum = "0", maximum = "1e6")
            double lactateMgPerL,

            @Schema(description = "How it scores.") PlanObjective objective) {}
}

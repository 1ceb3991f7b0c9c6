package tunside.http.dilution;

import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;
import tunside.dosing.AcidDilutionWarmth;
import tunside.http.answer.Answer;
import tunside.http.answer.Basis;
import tunside.http.answer.Check;
import tunside.http.answer.SafetyAdvice;
import tunside.http.quantity.MassQuantity;
import tunside.http.quantity.TemperatureQuantity;
import tunside.http.quantity.VolumeQuantity;
import tunside.safety.SignalWord;

/** The answer of {@code POST /v1/acid-dilutions}. */
@Schema(description = "How to make a weaker acid, in the frame of every answer.")
public record AcidDilutionResponse(
        @Schema(description = "The dilution.") AcidDilutionResult result,

        @Schema(description = "The input checks that ran.", maxItems = 500)
        List<Check> checks,

        @Schema(description = "The safety notes that apply, to the acid in hand and to what is made.", maxItems = 60)
        List<SafetyAdvice> safety,

        @Schema(description = "What the answer rests on.") Basis basis)
        implements Answer {

    /** The dilution. */
    @Schema(description = "The dilution; members that do not apply are left out.")
    public record AcidDilutionResult(
            @Schema(
                    description =
                            "one-go: all acid may be poured in at once. stages: only bit by bit, with cooling between.")
            DilutionMethod method,

            @Schema(description = "In one or two sentences, what to do.", maxLength = 600)
            String advice,

            @Schema(description = "The acid in hand.") DilutionSolution inHand,
            @Schema(description = "What is made.") DilutionSolution made,

            @Schema(description = "Of the acid in hand, to weigh or measure out.")
            DilutionAmount acidToUse,

            @Schema(description = "Water to have in the vessel before any acid.")
            DilutionAmount water,

            @Schema(description = "What they make together. Masses add up.")
            DilutionAmount makes,

            @Schema(
                    description =
                            "What the volumes lose when they become one, in mL at 20 degC: volumes of acid and water do not"
                                    + " add up. Negative where they gain; absent for a powder.",
                    nullable = true,
                    minimum = "-1e9",
                    maximum = "1e9")
            @Nullable
            Double volumeLostMl,

            @Schema(description = "How warm it gets.") DilutionHeat heat,

            @Schema(description = "For method stages: the pours, in order. Let it cool after each.", maxItems = 60)
            List<DilutionStage> stages,

            @Schema(description = "The work in order.", maxItems = 80)
            List<DilutionStep> steps,

            @Schema(description = "Lines to write on the bottle; blanks are for you to fill in.", maxItems = 12)
            List<String> label,

            @Schema(description = "What to have at hand for a spill.")
            DilutionSpill spill) {}

    /** An acid in water. */
    @Schema(description = "An acid in water with what its strength means.")
    public record DilutionSolution(
            @Schema(description = "Acid id.", maxLength = 40)
            String acid,

            @Schema(description = "In words.", examples = "phosphoric acid", maxLength = 80)
            String name,

            @Schema(description = "European food additive number.", examples = "E338", maxLength = 10)
            String eNumber,

            @Schema(description = "Strength by mass.") UncertainStrength percent,

            @Schema(description = "Moles per litre at 20 degC; absent for a powder.", nullable = true) @Nullable
            UncertainStrength molPerL,

            @Schema(
                    description =
                            "Equivalents per litre at 20 degC, every proton of the formula counted; absent for a powder.",
                    nullable = true)
            @Nullable
            UncertainStrength eqPerL,

            @Schema(
                    description = "Density at 20 degC in g/mL; absent for a powder.",
                    nullable = true,
                    minimum = "0.9",
                    maximum = "3")
            @Nullable
            Double densityGPerMl,

            @Schema(description = "Its standard uncertainty in g/mL.", nullable = true, minimum = "0", maximum = "1")
            @Nullable
            Double densityUncertaintyGPerMl,

            @Schema(description = "Id of the publication of the density.", nullable = true, maxLength = 60) @Nullable
            String densitySource,

            @Schema(description = "Word that a label at this strength carries.")
            SignalWord signal,

            @Schema(description = "Hazard statements at this strength.", maxItems = 12)
            List<HazardMeaning> hazards,

            @Schema(description = "Supply limits for members of the public.", maxItems = 8)
            List<SupplyLimitState> supplyLimits) {}

    /** A strength with its uncertainty. */
    @Schema(description = "A strength and its standard uncertainty, in the same unit.")
    public record UncertainStrength(
            @Schema(description = "The strength.", minimum = "0", maximum = "100")
            double value,

            @Schema(
                    description = "Standard uncertainty; of what is made, when acid and water are weighed.",
                    minimum = "0",
                    maximum = "100")
            double standardUncertainty,

            @Schema(
                    description =
                            "The same when they are measured by volume; absent for the acid in hand and for powders.",
                    nullable = true,
                    minimum = "0",
                    maximum = "100")
            @Nullable
            Double standardUncertaintyByVolume) {}

    /** A hazard statement. */
    @Schema(description = "A hazard statement code and what it means.")
    public record HazardMeaning(
            @Schema(description = "Code.", examples = "H314", maxLength = 10)
            String code,

            @Schema(description = "What it does, in our own words.", maxLength = 120)
            String meaning,

            @Schema(description = "Id of the publication of the band it comes from.", maxLength = 60)
            String source) {}

    /** A supply limit. */
    @Schema(description = "A supply limit for members of the public, and whether this strength is above it.")
    public record SupplyLimitState(
            @Schema(description = "Where.", examples = "Great Britain", maxLength = 40)
            String region,

            @Schema(description = "The strength that is still free, %w/w.", minimum = "0", maximum = "100")
            double limitPercent,

            @Schema(description = "Whether this strength is above it.")
            boolean above,

            @Schema(description = "What holds above it.", maxLength = 200)
            String meaning,

            @Schema(description = "Id of the law.", maxLength = 60)
            String source) {}

    /** An amount. */
    @Schema(description = "An amount by mass and by volume at 20 degC.")
    public record DilutionAmount(
            @Schema(description = "By mass: the better way.")
            MassQuantity mass,

            @Schema(description = "By volume at 20 degC; absent for a powder.", nullable = true) @Nullable
            VolumeQuantity volume) {}

    /** How warm it gets. */
    @Schema(description = "How warm the mixture gets if all acid is poured in at once and no heat is lost.")
    public record DilutionHeat(
            @Schema(
                    description =
                            "computed: with figures below. mild: a few kelvin to about ten, no figure known well enough."
                                    + " near-none: hardly felt.")
            AcidDilutionWarmth warmth,

            @Schema(description = "Final temperature.", nullable = true) @Nullable
            TemperatureQuantity finalTemperature,

            @Schema(
                    description = "Rise above the temperature of the water, in K.",
                    nullable = true,
                    minimum = "-1000",
                    maximum = "1000")
            @Nullable
            Double riseK,

            @Schema(description = "Hottest on the way.", nullable = true) @Nullable
            TemperatureQuantity hottest,

            @Schema(
                    description = "How far these temperatures may be off, either way, in K.",
                    nullable = true,
                    minimum = "0",
                    maximum = "100")
            @Nullable
            Double halfWidthK,

            @Schema(description = "Temperature that the mixture may surely not pass.", nullable = true) @Nullable
            TemperatureQuantity limit) {}

    /** One pour. */
    @Schema(description = "One pour of acid in hand into what has been made so far.")
    public record DilutionStage(
            @Schema(description = "Acid in hand to pour.") DilutionAmount acid,

            @Schema(description = "Strength afterwards, %w/w.", minimum = "0", maximum = "100")
            double percentAfter,

            @Schema(description = "Temperature to start from at most.")
            TemperatureQuantity start,

            @Schema(description = "Hottest temperature to expect.")
            TemperatureQuantity hottest,

            @Schema(description = "How far it may be off, either way, in K.", minimum = "0", maximum = "100")
            double halfWidthK) {}

    /** One step of the work. */
    @Schema(description = "One step of the work.")
    public record DilutionStep(
            @Schema(description = "Counted from 1.", minimum = "1", maximum = "100")
            int number,

            @Schema(description = "Which step.", examples = "pour", maxLength = 40)
            String code,

            @Schema(description = "What to do.", maxLength = 600)
            String text,

            @Schema(description = "Id of the publication or practice.", maxLength = 60)
            String source) {}

    /** What neutralises a spill. */
    @Schema(
            description =
                    "What neutralises a spill, if all of it is spilt. A little at a time, until it stops foaming.")
    public record DilutionSpill(
            @Schema(description = "For 100 mL of the acid in hand; for 100 g of a powder.")
            NeutraliserAmount per100InHand,

            @Schema(description = "For the acid that is used here.")
            NeutraliserAmount acidToUse,

            @Schema(description = "For all that is made.") NeutraliserAmount made) {}

    /** An amount of neutraliser. */
    @Schema(description = "Either of the two neutralises it.")
    public record NeutraliserAmount(
            @Schema(description = "Sodium bicarbonate (baking soda).")
            MassQuantity sodiumBicarbonate,

            @Schema(description = "Or water-free sodium carbonate (washing soda).")
            MassQuantity sodiumCarbonate,

            @Schema(description = "Carbon dioxide that the bicarbonate gives off, at 20 degC.")
            VolumeQuantity carbonDioxide) {}
}

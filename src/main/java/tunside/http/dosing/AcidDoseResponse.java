package tunside.http.dosing;

import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;
import tunside.chemistry.AcidProduct;
import tunside.dosing.AcidDilution;
import tunside.http.answer.Answer;
import tunside.http.answer.Basis;
import tunside.http.answer.Check;
import tunside.http.answer.SafetyAdvice;
import tunside.http.json.ContractNames;
import tunside.http.quantity.MassQuantity;
import tunside.http.quantity.StrengthQuantity;
import tunside.http.quantity.VolumeQuantity;
import tunside.quantity.Mass;

/** The answer of {@code POST /v1/acid-doses}. */
@Schema(description = "What to add now, in the frame of every answer.")
public record AcidDoseResponse(
        @Schema(description = "The dose.") AcidDose result,

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

    /** The dose. */
    @Schema(description = "The dose; members that do not belong to the outcome are left out.")
    public record AcidDose(
            @Schema(
                    description =
                            "dose: add acid. none-needed: add nothing. out-of-reach: the target cannot be reached with what"
                                    + " is at hand. raise-instead: the pH is below the range, and the amounts are those of the"
                                    + " base.")
            DoseResult outcome,

            @Schema(description = "In one sentence, what to do.", maxLength = 400)
            String advice,

            @Schema(description = "Where the pH is to go.") DoseRange aim,

            @Schema(
                    description =
                            "Every pH read so far, the first first, each with what went in before it. Where something went"
                                    + " in since the last, one more without a pH.",
                    maxItems = 41)
            List<ReadingSoFar> readings,

            @Schema(description = "What is believed of the pH now, after every reading.")
            PhBelief now,

            @Schema(description = "The acid as it is dosed; absent where none was named.", nullable = true) @Nullable
            DosedAcid dosedAcid,

            @Schema(description = "Where the pH is to be raised: the base that the amounts count.", nullable = true)
            @Nullable
            DosedBase dosedBase,

            @Schema(description = "For strong mineral acid: the dilution to make first.", nullable = true) @Nullable
            DilutionFirst diluteFirst,

            @Schema(description = "All that it may take from now on.", nullable = true) @Nullable
            TotalDose total,

            @Schema(
                    description =
                            "Add this now, stir, wait, measure. Absent where it is less than a step, or where a check"
                                    + " says stop.",
                    nullable = true)
            @Nullable
            Stage addNow,

            @Schema(description = "This and the later stages, if every reading comes as expected.", maxItems = 8)
            List<Stage> stages,

            @Schema(description = "The buffering, as expected and as the history taught it.")
            LearntBuffering learnt,

            @Schema(description = "What all acid of history and dose leaves in the liquid.", nullable = true) @Nullable
            AnionAdded anion,

            @Schema(
                    description = "For a liquor: its pH at 20 degC once all carbon dioxide has escaped to the air.",
                    nullable = true,
                    minimum = "0",
                    maximum = "14")
            @Nullable
            Double phAfterCarbonDioxideEscapes,

            @Schema(description = "Where the target is out of reach: what the most would do.", nullable = true)
            @Nullable
            LargestDose largest) {}

    /** Where the pH is to go. */
    @Schema(description = "The pH aimed at and the range that is good enough, as asked for or as taken.")
    public record DoseRange(
            @Schema(description = "pH wanted.", minimum = "0", maximum = "14")
            double targetPh,

            @Schema(description = "Lower end of the range.", minimum = "0", maximum = "14")
            double lowPh,

            @Schema(description = "Upper end of the range.", minimum = "0", maximum = "14")
            double highPh) {}

    /** A reading. */
    @Schema(description = "A pH that was read, and what went in since the reading before.")
    public record ReadingSoFar(
            @Schema(description = "What went in since the reading before, in order.", maxItems = 40)
            List<AmountAdded> added,

            @Schema(
                    description =
                            "Whether it was measured; false for the pH that a water report lets expect, and where nothing was"
                                    + " read since.")
            boolean measured,

            @Schema(
                    description = "pH read; absent where nothing was read since.",
                    nullable = true,
                    minimum = "0",
                    maximum = "14")
            @Nullable
            Double ph,

            @Schema(description = "Standard uncertainty of the reading.", nullable = true, minimum = "0", maximum = "1")
            @Nullable
            Double standardUncertainty) {}

    /** An amount that went in. */
    @Schema(description = "An amount that went in.")
    public record AmountAdded(
            @Schema(description = "Id of the acid or base.", maxLength = 40)
            String reagent,

            @Schema(description = "In words.", maxLength = 120)
            String name,

            @Schema(description = "By volume at 20 degC; absent for what is weighed.", nullable = true) @Nullable
            VolumeQuantity volume,

            @Schema(description = "By mass.") MassQuantity mass) {}

    /** A pH as believed. */
    @Schema(description = "The true pH as believed after every reading.")
    public record PhBelief(
            @Schema(description = "Median.", minimum = "0", maximum = "14")
            double ph,

            @Schema(description = "Standard uncertainty.", minimum = "0", maximum = "5")
            double standardUncertainty,

            @Schema(description = "Lower end of its 90 % interval.", minimum = "0", maximum = "14")
            double low90,

            @Schema(description = "Upper end.", minimum = "0", maximum = "14")
            double high90,

            @Schema(description = "Probability that it lies in the range.", minimum = "0", maximum = "1")
            double probabilityInRange) {}

    /** The acid that the amounts count. */
    @Schema(description = "The acid that the amounts count.")
    public record DosedAcid(
            @Schema(description = "Acid id.", maxLength = 40)
            String acid,

            @Schema(description = "Strength as it is dosed.")
            StrengthQuantity strength,

            @Schema(description = "Density at 20 degC in g/mL.", minimum = "0.9", maximum = "3")
            double densityGPerMl,

            @Schema(description = "Acid that acts, mmol per gram.", minimum = "0", maximum = "30")
            double actingMmolPerGram) {}

    /** The base that the amounts count. */
    @Schema(description = "The base that the amounts count.")
    public record DosedBase(
            @Schema(description = "Id of the base.", maxLength = 40)
            String base,

            @Schema(description = "In words.", maxLength = 120)
            String name,

            @Schema(description = "Protons that a gram takes up at the target, mEq.", minimum = "0", maximum = "60")
            double actingMeqPerGram) {}

    /** The most that may be added. */
    @Schema(description = "The most that may be added: what is at hand, or what such a liquid can explain.")
    public record LargestDose(
            @Schema(description = "By volume at 20 degC; absent for what is weighed.", nullable = true) @Nullable
            VolumeQuantity volume,

            @Schema(description = "By mass.") MassQuantity mass,

            @Schema(description = "pH that it would lead to.", minimum = "0", maximum = "14")
            double ph) {}

    /** The dilution to make before anything is dosed. */
    @Schema(
            description =
                    "A dilution to make first: enough for the whole dose. Acid into water, slowly, never water into acid.")
    public record DilutionFirst(
            @Schema(description = "Water to have ready.") MassQuantity water,

            @Schema(description = "Acid as bought, to pour into that water.")
            MassQuantity acid,

            @Schema(description = "The same by volume at 20 degC.")
            VolumeQuantity acidVolume,

            @Schema(description = "Volume of the diluted acid, cooled to 20 degC.")
            VolumeQuantity makes,

            @Schema(description = "Its strength.") StrengthQuantity strength) {
        private static final double BATCH_GRAMS = 10;

        /**
         * To the strength for dosing.
         *
         * @param grams of the diluted acid that are needed, rounded up to a batch
         */
        public static DilutionFirst of(AcidProduct bought, double grams) {
            double batch = Math.ceil(grams / BATCH_GRAMS) * BATCH_GRAMS;
            AcidDilution dilution = AcidDilution.of(bought, AcidDilution.DOSING_PERCENT, new Mass(batch / 1000));
            return new DilutionFirst(
                    MassQuantity.grams(dilution.waterMass().grams(), 1),
                    MassQuantity.grams(dilution.strongMass().grams(), 1),
                    VolumeQuantity.millilitres(dilution.strongMillilitres(), 1),
                    VolumeQuantity.millilitres(dilution.weakMillilitres(), 0),
                    StrengthQuantity.percent(AcidDilution.DOSING_PERCENT, 1));
        }
    }

    /** All that it takes from now on. */
    @Schema(description = "All that it takes from now on: the middle, and a 90 % interval of what it may take.")
    public record TotalDose(
            @Schema(description = "By volume at 20 degC; absent for a powder.", nullable = true) @Nullable
            VolumeQuantity volume,

            @Schema(description = "By mass.") MassQuantity mass,
            @Schema(description = "5 % quantile, by mass.") MassQuantity low90,
            @Schema(description = "95 % quantile, by mass.") MassQuantity high90) {}

    /** One addition. */
    @Schema(description = "One addition, and the pH to expect after it.")
    public record Stage(
            @Schema(description = "By volume at 20 degC; absent for a powder.", nullable = true) @Nullable
            VolumeQuantity volume,

            @Schema(description = "By mass.") MassQuantity mass,

            @Schema(description = "Expected pH afterwards.", minimum = "0", maximum = "14")
            double expectedPh,

            @Schema(description = "Lower end of its 90 % interval.", minimum = "-1", maximum = "15")
            double low90,

            @Schema(description = "Upper end.", minimum = "-1", maximum = "15")
            double high90,

            @Schema(
                    description =
                            "Probability of ending beyond the far end of the range: below it with acid, above it with a"
                                    + " base.",
                    minimum = "0",
                    maximum = "1")
            double overshootProbability) {}

    /** What was learnt. */
    @Schema(
            description =
                    "How strongly the liquid buffers (for a liquor: its alkalinity), as expected before anything went"
                            + " in, and the factor on it that additions and readings teach. Without any the factor only shows how little is"
                            + " known.")
    public record LearntBuffering(
            @Schema(description = "Expected, before anything went in.", minimum = "0", maximum = "1e6")
            double expected,

            @Schema(description = "Its unit.", examples = "mEq/(kg pH)", maxLength = 20)
            String unit,

            @Schema(description = "Factor on the expected one: median.", minimum = "0", maximum = "1000")
            double factor,

            @Schema(description = "5 % quantile of the factor.", minimum = "0", maximum = "1000")
            double low90,

            @Schema(description = "95 % quantile.", minimum = "0", maximum = "1000")
            double high90,

            @Schema(description = "Readings of the history that it rests on.", minimum = "0", maximum = "40")
            int readings) {}

    /** The anion that the acid brings. */
    @Schema(description = "The anion that the whole dose brings into the liquid, against what may be tasted.")
    public record AnionAdded(
            @Schema(description = "Which.", maxLength = 40) String anion,

            @Schema(description = "In mg/L of the liquid; of a mash, of its liquor.", minimum = "0", maximum = "100000")
            double mgPerL,

            @Schema(
                    description = "Threshold or usual limit in mg/L, where one is known.",
                    nullable = true,
                    minimum = "0",
                    maximum = "100000")
            @Nullable
            Double thresholdMgPerL) {}
}

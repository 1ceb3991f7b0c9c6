package tunside.http.plan;

import jakarta.validation.Valid;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;
import tunside.http.json.Known;
import tunside.http.json.KnownIds;
import tunside.http.mash.AdditionRequest;
import tunside.http.mash.ExperienceDocument;
import tunside.http.mash.MaltRequest;
import tunside.http.quantity.AlkalinityQuantity;
import tunside.http.quantity.DissolvedQuantity;
import tunside.http.quantity.MassQuantity;
import tunside.http.quantity.StrengthQuantity;
import tunside.http.quantity.TimeQuantity;
import tunside.http.quantity.VolumeQuantity;
import tunside.http.water.LiquorRequest;
import tunside.http.water.WaterRequest;

/** The question of {@code POST /v1/mash-plans}. */
@Schema(description = "A mash, the pH that it shall reach, and what is at hand for that.")
public record MashPlanRequest(
        @NotNull @Size(min = 1, max = 64) @Schema(description = "All malt, 1 to 64 entries.", required = true)
        List<@NotNull @Valid MaltRequest> grist,

        @NotNull
        @Valid
        @Schema(description = "All water in the mash when the sample is taken, before any dilution.", required = true)
        LiquorRequest liquor,

        @Size(max = 12)
        @Schema(description = "Acids, salts and bases that go into the mash whatever the plan.")
        @Nullable
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

        @NotNull
        @DecimalMin("4.5")
        @DecimalMax("6.5")
        @Schema(description = "pH of the cooled sample to aim at.", examples = "5.4", required = true)
        Double targetPh,

        @DecimalMin("4")
        @DecimalMax("7")
        @Schema(
                description = "Lower end of the range that will do; 0.1 below the target where left out.",
                examples = "5.3",
                nullable = true)
        @Nullable
        Double lowPh,

        @DecimalMin("4")
        @DecimalMax("7")
        @Schema(
                description = "Upper end of the range; 0.1 above the target where left out.",
                examples = "5.5",
                nullable = true)
        @Nullable
        Double highPh,

        @NotNull @Valid @Schema(description = "What is at hand; name at least one thing.", required = true)
        AtHandRequest atHand,

        @Valid
        @Schema(
                description =
                        "Ranges wanted in the liquor with all additions; what the malt gives is not known and not in it.",
                nullable = true)
        @Nullable
        IonRangesRequest ions,

        @Valid
        @Schema(
                description =
                        "Lactate accepted in the mash liquor; the lowest published taste threshold where left out. It is"
                                + " never passed.",
                nullable = true)
        @Nullable
        DissolvedQuantity mostLactate,

        @Valid
        @Schema(description = "Smallest steps of scales and syringe; the plan comes in whole steps.", nullable = true)
        @Nullable
        PlanStepsRequest steps) {

    /** What is at hand. */
    @Schema(description = "What is at hand for the plan. Nothing else is used, and not all of it has to be.")
    public record AtHandRequest(
            @Size(max = 8) @Schema(description = "Acids.") @Nullable
            List<@NotNull @Valid AcidAtHandRequest> acids,

            @Size(max = 5) @Schema(description = "Bases.") @Nullable
            List<@NotNull @Valid BaseAtHandRequest> bases,

            @Size(max = 10) @Schema(description = "Salts that bring ions and no alkalinity.") @Nullable
            List<@NotNull @Valid SaltAtHandRequest> salts,

            @Valid
            @Schema(description = "Acidulated malt, which would come on top of the grist.", nullable = true)
            @Nullable
            AcidulatedMaltRequest acidulatedMalt,

            @Valid
            @Schema(description = "Water that may take the place of a part of the liquor.", nullable = true)
            @Nullable
            DilutingWaterRequest dilutingWater) {}

    /** An acid. */
    @Schema(description = "An acid at hand.")
    public record AcidAtHandRequest(
            @NotNull
            @Size(min = 1, max = 40)
            @Schema(
                    description = "An id of GET /v1/acids.",
                    examples = "phosphoric",
                    pattern = "^[a-z-]+$",
                    required = true)
            @Known(value = KnownIds.ACID, groups = Known.Names.class)
            String acid,

            @NotNull @Valid @Schema(description = "Strength as its label states it.", required = true)
            StrengthQuantity strength,

            @Valid
            @Schema(
                    description =
                            "Most that may be used, by volume as bought, at 20 degC. Or mostMass. Where neither is"
                                    + " given, 30 mmol per litre of liquor.",
                    nullable = true)
            @Nullable
            VolumeQuantity most,

            @Valid
            @Schema(description = "Most that may be used, by mass as bought; for powders.", nullable = true)
            @Nullable
            MassQuantity mostMass) {}

    /** A base. */
    @Schema(description = "A base at hand.")
    public record BaseAtHandRequest(
            @NotNull
            @Size(min = 1, max = 40)
            @Schema(
                    description = "sodium-bicarbonate, potassium-bicarbonate, sodium-carbonate, calcium-hydroxide or"
                            + " calcium-carbonate.",
                    examples = "sodium-bicarbonate",
                    pattern = "^[a-z-]+$",
                    required = true)
            @Known(value = KnownIds.BASE, groups = Known.Names.class)
            String base,

            @Valid
            @Schema(description = "Most that may be used; 1 g per litre of liquor where left out.", nullable = true)
            @Nullable
            MassQuantity most) {}

    /** A salt. */
    @Schema(description = "A salt at hand.")
    public record SaltAtHandRequest(
            @NotNull
            @Size(min = 1, max = 40)
            @Schema(
                    description = "An id of GET /v1/salts that brings no alkalinity.",
                    examples = "gypsum",
                    pattern = "^[a-z-]+$",
                    required = true)
            @Known(value = KnownIds.SALT, groups = Known.Names.class)
            String salt,

            @Valid
            @Schema(description = "Most that may be used; 2 g per litre of liquor where left out.", nullable = true)
            @Nullable
            MassQuantity most) {}

    /** Acidulated malt. */
    @Schema(description = "Acidulated malt at hand.")
    public record AcidulatedMaltRequest(
            @DecimalMin("0.1")
            @DecimalMax("10")
            @Schema(
                    description = "Its lactic acid, % of its mass, from its label; 3 where absent.",
                    examples = "3",
                    nullable = true)
            @Nullable
            Double lacticAcidPercent,

            @DecimalMin("0")
            @DecimalMax("30")
            @Schema(
                    description =
                            "Most of it, % of the whole grist with it, that of the grist counted in; 5 where absent.",
                    examples = "5",
                    nullable = true)
            @Nullable
            Double mostPercent) {}

    /** Diluting water. */
    @Schema(description = "Water that may take the place of a part of the liquor.")
    public record DilutingWaterRequest(
            @Valid @Schema(description = "What it is; distilled where left out.", nullable = true) @Nullable
            WaterRequest water,

            @DecimalMin("0")
            @DecimalMax("100")
            @Schema(description = "Most of it, % of all liquor; 100 where absent.", examples = "50", nullable = true)
            @Nullable
            Double mostPercent) {}

    /** Ranges of ions. */
    @Schema(description = "Ranges wanted in the liquor with all additions. Leave out what does not matter.")
    public record IonRangesRequest(
            @Valid @Schema(description = "Calcium, Ca.", nullable = true) @Nullable
            IonRangeRequest calcium,

            @Valid @Schema(description = "Magnesium, Mg.", nullable = true) @Nullable
            IonRangeRequest magnesium,

            @Valid @Schema(description = "Sodium, Na.", nullable = true) @Nullable
            IonRangeRequest sodium,

            @Valid @Schema(description = "Potassium, K.", nullable = true) @Nullable
            IonRangeRequest potassium,

            @Valid @Schema(description = "Chloride, Cl.", nullable = true) @Nullable
            IonRangeRequest chloride,

            @Valid @Schema(description = "Sulfate, SO4.", nullable = true) @Nullable
            IonRangeRequest sulfate,

            @Valid
            @Schema(
                    description = "Alkalinity of the blended liquor with salts and bases, before any acid.",
                    nullable = true)
            @Nullable
            AlkalinityRangeRequest alkalinity,

            @Valid @Schema(description = "Milligrams of chloride to one of sulfate.", nullable = true) @Nullable
            RatioRangeRequest chlorideToSulfate) {}

    /** A range of an ion. */
    @Schema(description = "A range of an ion; leave an end out where it is open.")
    public record IonRangeRequest(
            @Valid @Schema(description = "Least.", nullable = true) @Nullable
            DissolvedQuantity low,

            @Valid @Schema(description = "Most.", nullable = true) @Nullable
            DissolvedQuantity high) {}

    /** A range of alkalinity. */
    @Schema(description = "A range of alkalinity; leave an end out where it is open.")
    public record AlkalinityRangeRequest(
            @Valid @Schema(description = "Least, 0 to 50 mEq/L.", nullable = true) @Nullable
            AlkalinityQuantity low,

            @Valid @Schema(description = "Most, 0 to 50 mEq/L.", nullable = true) @Nullable
            AlkalinityQuantity high) {}

    /** A range of a ratio. */
    @Schema(description = "A range of a ratio; leave an end out where it is open.")
    public record RatioRangeRequest(
            @DecimalMin("0")
            @DecimalMax("100")
            @Schema(description = "Least.", examples = "0.5", nullable = true)
            @Nullable
            Double low,

            @DecimalMin("0")
            @DecimalMax("100")
            @Schema(description = "Most.", examples = "1.5", nullable = true)
            @Nullable
            Double high) {}

    /** Steps. */
    @Schema(description = "Smallest steps that can be weighed and measured.")
    public record PlanStepsRequest(
            @Valid
            @Schema(
                    description = "Of the scales, for salts, bases and powders, 1 mg to 1 kg; 0.1 g where left out.",
                    nullable = true)
            @Nullable
            MassQuantity scale,

            @Valid
            @Schema(description = "Of the syringe, for acids, 0.001 mL to 1 L; 0.5 mL where left out.", nullable = true)
            @Nullable
            VolumeQuantity syringe,

            @Valid
            @Schema(
                    description = "Of the scales for acidulated malt, 0.1 g to 10 kg; 10 g where left out.",
                    nullable = true)
            @Nullable
            MassQuantity maltScale,

            @Valid
            @Schema(
                    description = "Of the jug for diluting water, 1 mL to 100 L; 0.5 L where left out.",
                    nullable = true)
            @Nullable
            VolumeQuantity jug) {}
}

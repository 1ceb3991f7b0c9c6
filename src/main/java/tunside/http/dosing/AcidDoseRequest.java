package tunside.http.dosing;

import jakarta.validation.Valid;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;
import tunside.dosing.DosedLiquid;
import tunside.http.calibration.CalibrationDocument;
import tunside.http.json.Known;
import tunside.http.json.KnownIds;
import tunside.http.mash.AdditionRequest;
import tunside.http.mash.ExperienceDocument;
import tunside.http.mash.MaltRequest;
import tunside.http.quantity.MassQuantity;
import tunside.http.quantity.StrengthQuantity;
import tunside.http.quantity.TemperatureQuantity;
import tunside.http.quantity.VolumeQuantity;
import tunside.http.water.LiquorRequest;

/** The question of {@code POST /v1/acid-doses}. */
@Schema(
        description =
                "A liquid that is to be brought to a pH. A mash needs grist and liquor, a liquor its liquor, a wort or"
                        + " beer its volume and one of originalExtractPlato, specificGravity and malt.")
public record AcidDoseRequest(
        @NotNull @Schema(description = "What is dosed.", required = true)
        DosedLiquid liquid,

        @DecimalMin("2.5")
        @DecimalMax("10.5")
        @Schema(
                description =
                        "Measured pH before anything of the history: of a sample cooled to 20 to 25 degC, of a liquor at its"
                                + " own temperature. Only for a liquor it may be left out: then its water report decides.",
                examples = "5.72",
                nullable = true)
        @Nullable
        Double measuredPh,

        @DecimalMin("0.001")
        @DecimalMax("0.5")
        @Schema(
                description = "Standard uncertainty of that reading and of those in the history; 0.05 where left out.",
                examples = "0.03",
                nullable = true)
        @Nullable
        Double phUncertainty,

        @DecimalMin("0")
        @DecimalMax("0.5")
        @Schema(
                description =
                        "Standard uncertainty of the error that all readings share, such as that of the calibration, beside"
                                + " phUncertainty; 0 where left out.",
                examples = "0.015",
                nullable = true)
        @Nullable
        Double sharedUncertainty,

        @NotNull
        @DecimalMin("3")
        @DecimalMax("9")
        @Schema(description = "pH wanted.", examples = "5.4", required = true)
        Double targetPh,

        @DecimalMin("2")
        @DecimalMax("9")
        @Schema(
                description =
                        "Lower end of the range that is good enough. Left out: 0.1 below the target, for a liquor 0.3.",
                nullable = true)
        @Nullable
        Double lowPh,

        @DecimalMin("3")
        @DecimalMax("10")
        @Schema(
                description = "Upper end of that range. Left out: 0.1 above the target, for a liquor 0.3.",
                nullable = true)
        @Nullable
        Double highPh,

        @Size(min = 1, max = 40)
        @Schema(
                description = "Acid, an id of GET /v1/acids. May be left out only where the pH is not above the range.",
                examples = "lactic",
                pattern = "^[a-z-]+$",
                nullable = true)
        @Known(value = KnownIds.ACID, groups = Known.Names.class)
        @Nullable
        String acid,

        @Valid
        @Schema(description = "Strength of the acid as its label states it; with acid.", nullable = true)
        @Nullable
        StrengthQuantity strength,

        @Size(min = 1, max = 40)
        @Schema(
                description =
                        "Base to raise the pH with where it is too low: sodium-bicarbonate (taken where left out),"
                                + " potassium-bicarbonate, sodium-carbonate, calcium-hydroxide or calcium-carbonate.",
                examples = "sodium-bicarbonate",
                pattern = "^[a-z-]+$",
                nullable = true)
        @Known(value = KnownIds.BASE, groups = Known.Names.class)
        @Nullable
        String base,

        @Valid
        @Schema(
                description = "The liquor of the mash, or the one that is dosed. Not for wort or beer.",
                nullable = true)
        @Nullable
        LiquorRequest liquor,

        @Size(min = 1, max = 64) @Schema(description = "For a mash: all malt.", nullable = true) @Nullable
        List<@NotNull @Valid MaltRequest> grist,

        @Size(max = 32)
        @Schema(description = "For a mash: what was in it before the measured pH was read.", nullable = true)
        @Nullable
        List<@NotNull @Valid AdditionRequest> additions,

        @DecimalMin("0")
        @DecimalMax("2")
        @Schema(
                description = "For a mash: gap of the mill in mm; a coarser crush buffers less. Absent: a fine crush.",
                examples = "0.8",
                nullable = true)
        @Nullable
        Double millGapMm,

        @Valid
        @Schema(
                description =
                        "For a mash: the experience that POST /v1/brew-reviews answered with, unchanged. It says how much your"
                                + " mashes buffer, and how sure that is. Absent: the published spread.",
                nullable = true)
        @Nullable
        ExperienceDocument experience,

        @Valid
        @Schema(
                description = "For a liquor: temperature at which it is dosed, 0 to 100 degC; 20 degC where left out.",
                nullable = true)
        @Nullable
        TemperatureQuantity temperature,

        @Valid @Schema(description = "For wort or beer: how much, 0.01 to 10000 L.", nullable = true) @Nullable
        VolumeQuantity volume,

        @DecimalMin("1")
        @DecimalMax("35")
        @Schema(
                description = "For wort or beer: original extract in degrees Plato (% by mass), before fermentation.",
                examples = "12",
                nullable = true)
        @Nullable
        Double originalExtractPlato,

        @DecimalMin("1.003")
        @DecimalMax("1.16")
        @Schema(
                description = "For wort or beer: specific gravity at 20 degC before fermentation.",
                examples = "1.048",
                nullable = true)
        @Nullable
        Double specificGravity,

        @Valid
        @Schema(description = "For wort or beer: mass of the malt behind this volume.", nullable = true)
        @Nullable
        MassQuantity malt,

        @Valid
        @Schema(
                description = "For wort or beer: a sample that was titrated on the bench, which tells its buffering.",
                nullable = true)
        @Nullable
        BenchTitrationRequest benchTitration,

        @Size(max = 40)
        @Schema(
                description = "What happened since the measured pH, in order: each entry an amount added or a pH read.",
                nullable = true)
        @Nullable
        List<@NotNull @Valid DoseEventRequest> history,

        @Valid
        @Schema(
                description =
                        "Smallest step of the syringe, 0.01 mL to 1 L; 0.5 mL where left out. Powders use smallestMass.",
                nullable = true)
        @Nullable
        VolumeQuantity smallestStep,

        @Valid
        @Schema(
                description =
                        "For powders and bases: smallest step of the scales, 0.01 g to 1 kg; 0.1 g where left out.",
                nullable = true)
        @Nullable
        MassQuantity smallestMass,

        @Valid
        @Schema(
                description =
                        "Most of the acid that is at hand, as it is dosed, up to 1000 kg; no limit where left out.",
                nullable = true)
        @Nullable
        MassQuantity available,

        @DecimalMin("0.001")
        @DecimalMax("0.5")
        @Schema(
                description =
                        "Probability that one stage may take of passing the far end of the range; 0.05 where left out.",
                nullable = true)
        @Nullable
        Double acceptedRisk,

        @Valid
        @Schema(
                description =
                        "The calibration that POST /v1/calibration-evaluations answered with, unchanged, to be printed on the"
                                + " sheet. No number rests on it; where it found the electrode unfit, nothing is to be added"
                                + " now.",
                nullable = true)
        @Nullable
        CalibrationDocument calibration) {}

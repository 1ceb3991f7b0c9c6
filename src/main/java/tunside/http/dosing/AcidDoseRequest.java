package tunside.http.dosing;

import jakarta.validation.Valid;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import tunside.http.mash.AdditionRequest;
import tunside.http.mash.MaltRequest;
import tunside.http.quantity.MassQuantity;
import tunside.http.quantity.StrengthQuantity;
import tunside.http.quantity.TemperatureQuantity;
import tunside.http.quantity.VolumeQuantity;
import tunside.http.water.LiquorRequest;

/** The question of {@code POST /v1/acid-doses}. */
@Schema(description = "A mash or a liquor that is to be brought to a pH with an acid.")
public record AcidDoseRequest(
        @NotNull @Schema(description = "What is dosed.", required = true)
        DosedLiquid liquid,

        @NotNull
        @DecimalMin("2")
        @DecimalMax("12")
        @Schema(
                description = "Measured pH of a sample cooled to 20 to 25 degC, before any acid of the history.",
                examples = "5.72",
                required = true)
        Double measuredPh,

        @DecimalMin("0.001")
        @DecimalMax("0.5")
        @Schema(
                description = "Standard uncertainty of that reading and of those in the history; 0.05 where left out.",
                examples = "0.03",
                nullable = true)
        Double phUncertainty,

        @NotNull
        @DecimalMin("3")
        @DecimalMax("9")
        @Schema(description = "pH wanted.", examples = "5.4", required = true)
        Double targetPh,

        @DecimalMin("2")
        @DecimalMax("9")
        @Schema(
                description = "Lower end of the range that is good enough; 0.1 below the target where left out.",
                nullable = true)
        Double lowPh,

        @DecimalMin("3")
        @DecimalMax("10")
        @Schema(description = "Upper end of that range; 0.1 above the target where left out.", nullable = true)
        Double highPh,

        @NotNull
        @Size(min = 1, max = 40)
        @Schema(description = "Acid, an id of GET /v1/acids.", examples = "lactic", required = true)
        String acid,

        @NotNull @Valid @Schema(description = "Strength of the acid as its label states it.", required = true)
        StrengthQuantity strength,

        @NotNull @Valid @Schema(description = "The liquor: of the mash, or the one that is dosed.", required = true)
        LiquorRequest liquor,

        @Size(min = 1, max = 64) @Schema(description = "For a mash: all malt. Left out for a liquor.")
        List<@NotNull @Valid MaltRequest> grist,

        @Size(max = 32) @Schema(description = "For a mash: what was in it before the measured pH was read.")
        List<@NotNull @Valid AdditionRequest> additions,

        @Valid
        @Schema(description = "For a liquor: temperature at which it is dosed, 0 to 100 degC; 20 degC where left out.")
        TemperatureQuantity temperature,

        @Size(max = 40)
        @Schema(description = "What happened since the measured pH, in order: each entry an amount added or a pH read.")
        List<@NotNull @Valid DoseEventRequest> history,

        @Valid
        @Schema(
                description =
                        "Smallest step of the syringe, 0.01 mL to 1 L; 0.5 mL where left out. Powders use smallestMass.")
        VolumeQuantity smallestStep,

        @Valid @Schema(description = "For powders: smallest step of the scales, 0.01 g to 1 kg; 0.1 g where left out.")
        MassQuantity smallestMass,

        @DecimalMin("0.001")
        @DecimalMax("0.5")
        @Schema(
                description = "Probability of ending below the range that one stage may take; 0.05 where left out.",
                nullable = true)
        Double acceptedRisk) {}

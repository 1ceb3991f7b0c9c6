package tunside.http.mash;

import jakarta.validation.Valid;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.NotNull;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/** What was measured on a lot of malt. */
@Schema(description = "What was measured on a lot of malt. Every member is optional and replaces the class's value.")
public record MeasuredMaltRequest(
        @DecimalMin("2.5")
        @DecimalMax("7.5")
        @Schema(
                description = "pH of a mash of this malt alone in distilled water, of the cooled sample.",
                examples = "5.74",
                nullable = true)
        @Nullable
        Double distilledWaterPh,

        @DecimalMin("0")
        @DecimalMax("1")
        @Schema(
                description = "Standard uncertainty of distilledWaterPh; 0.04 where absent.",
                examples = "0.03",
                nullable = true)
        @Nullable
        Double distilledWaterPhUncertainty,

        @DecimalMin("1")
        @DecimalMax("50")
        @Schema(
                description = "Litres of distilled water per kg of malt in that mash; as for the class where absent.",
                examples = "4",
                nullable = true)
        @Nullable
        Double liquorRatioLPerKg,

        @DecimalMin("1")
        @DecimalMax("500")
        @Schema(
                description = "Buffering as a straight line, mEq/(kg pH). Not together with coefficients.",
                examples = "38",
                nullable = true)
        @Nullable
        Double bufferingMeqPerKgPh,

        @Valid
        @Schema(description = "Buffering as a curve. Not together with bufferingMeqPerKgPh.", nullable = true)
        @Nullable
        CoefficientsRequest coefficients,

        @DecimalMin("0")
        @DecimalMax("1")
        @Schema(
                description = "Relative standard uncertainty of the buffering; 0.1 where absent.",
                examples = "0.1",
                nullable = true)
        @Nullable
        Double bufferingRelativeUncertainty,

        @DecimalMin("-50")
        @DecimalMax("600")
        @Schema(
                description =
                        "Base that brings the mash in distilled water to pH 5.7, mEq/kg; negative where acid does."
                                + " Not used where both pH and buffering are given, but held against them.",
                examples = "45",
                nullable = true)
        @Nullable
        Double acidityToPh57MeqPerKg,

        @DecimalMin("0")
        @DecimalMax("200")
        @Schema(
                description = "Standard uncertainty of the acidity, mEq/kg; 5 % where absent.",
                examples = "2",
                nullable = true)
        @Nullable
        Double acidityUncertaintyMeqPerKg) {

    /** Three coefficients of a buffer curve. */
    @Schema(
            description =
                    "Protons taken up by a kg of malt, a1 d + a2 d^2 + a3 d^3 mEq, with d the pH less the malt's own"
                            + " distilled-water pH.")
    public record CoefficientsRequest(
            @NotNull
            @DecimalMin("-500")
            @DecimalMax("-1")
            @Schema(description = "mEq/(kg pH), below 0.", examples = "-44.9", required = true)
            Double a1,

            @NotNull
            @DecimalMin("-500")
            @DecimalMax("500")
            @Schema(description = "mEq/(kg pH^2).", examples = "-6", required = true)
            Double a2,

            @NotNull
            @DecimalMin("-500")
            @DecimalMax("500")
            @Schema(description = "mEq/(kg pH^3).", examples = "0", required = true)
            Double a3) {}
}

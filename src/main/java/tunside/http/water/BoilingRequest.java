package tunside.http.water;

import jakarta.validation.Valid;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;
import tunside.http.quantity.AlkalinityQuantity;

/** Boiling the liquor. */
@Schema(
        description =
                "The liquor is boiled, left to settle and drawn off its deposit. An empty object is a good boil by common"
                        + " practice: it leaves 1 mEq/L of alkalinity where calcium is ample, or what the equilibrium"
                        + " leaves if that is more.")
public record BoilingRequest(
        @Valid
        @Schema(
                description = "Alkalinity that your boil leaves where calcium is ample, 0 to 10 mEq/L.",
                nullable = true)
        @Nullable
        AlkalinityQuantity residualAlkalinity,

        @DecimalMin("0")
        @DecimalMax("2")
        @Schema(
                description =
                        "Saturation index of calcite that is left at 100 degC; 0 is full equilibrium. Where it is given"
                                + " without residualAlkalinity, the equilibrium alone decides. 0.7 where left out.",
                examples = "0.7",
                nullable = true)
        @Nullable
        Double supersaturation,

        @Schema(
                description =
                        "Whether the lid stays on, so that the carbon dioxide stays and far less falls out; absent"
                                + " means no.",
                nullable = true)
        @Nullable
        Boolean lidOn) {}

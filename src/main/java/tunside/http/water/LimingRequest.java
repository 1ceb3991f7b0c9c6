package tunside.http.water;

import jakarta.validation.Valid;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;
import tunside.http.quantity.AlkalinityQuantity;
import tunside.http.quantity.MassQuantity;

/** Softening the liquor with slaked lime. */
@Schema(
        description =
                "Slaked lime, Ca(OH)2, is stirred in; the liquor is left to settle and drawn off its deposit. An empty"
                        + " object is the dose that leaves least alkalinity; by common practice 0.7 mEq/L stay, or what the"
                        + " equilibrium leaves if that is more.")
public record LimingRequest(
        @Valid
        @Schema(
                description =
                        "Calcium hydroxide, up to 1000 kg. Left out: its carbon dioxide and half its alkalinity, in"
                                + " mmol/L.",
                nullable = true)
        @Nullable
        MassQuantity mass,

        @Valid @Schema(description = "Alkalinity that your liming leaves, 0 to 10 mEq/L.", nullable = true) @Nullable
        AlkalinityQuantity residualAlkalinity,

        @DecimalMin("0")
        @DecimalMax("2")
        @Schema(
                description =
                        "Saturation index of calcite that is left; 0 is full equilibrium. Where it is given without"
                                + " residualAlkalinity, the equilibrium alone decides. 0.3 where left out.",
                examples = "0.3",
                nullable = true)
        @Nullable
        Double supersaturation) {}

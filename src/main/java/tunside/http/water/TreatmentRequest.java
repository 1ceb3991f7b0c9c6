package tunside.http.water;

import jakarta.validation.Valid;
import jakarta.validation.constraints.Size;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;
import tunside.http.json.Known;
import tunside.http.json.KnownIds;
import tunside.http.quantity.MassQuantity;
import tunside.http.quantity.StrengthQuantity;
import tunside.http.quantity.VolumeQuantity;

/** One thing done to a liquor. */
@Schema(
        description =
                "One thing done to the whole liquor: an acid with its strength and its mass or volume, a salt or base with"
                        + " its mass, boiling, or liming. Exactly one of acid, salt, boiling and liming.")
public record TreatmentRequest(
        @Size(min = 1, max = 40)
        @Schema(
                description = "An acid, an id of GET /v1/acids.",
                examples = "lactic",
                pattern = "^[a-z-]+$",
                nullable = true)
        @Known(value = KnownIds.ACID, groups = Known.Names.class)
        @Nullable
        String acid,

        @Valid
        @Schema(description = "Strength of the acid as its label states it; with acid only.", nullable = true)
        @Nullable
        StrengthQuantity strength,

        @Size(min = 1, max = 40)
        @Schema(
                description = "A salt or base, an id of GET /v1/salts.",
                examples = "gypsum",
                pattern = "^[a-z-]+$",
                nullable = true)
        @Known(value = KnownIds.SALT, groups = Known.Names.class)
        @Nullable
        String salt,

        @Valid @Schema(description = "How much of the acid or salt, by mass.", nullable = true) @Nullable
        MassQuantity mass,

        @Valid
        @Schema(description = "How much of the acid, by volume at 20 degC; powders are weighed.", nullable = true)
        @Nullable
        VolumeQuantity volume,

        @Valid @Schema(description = "Boil it.", nullable = true) @Nullable
        BoilingRequest boiling,

        @Valid @Schema(description = "Soften it with lime.", nullable = true) @Nullable
        LimingRequest liming) {}

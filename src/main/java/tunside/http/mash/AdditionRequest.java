package tunside.http.mash;

import jakarta.validation.Valid;
import jakarta.validation.constraints.Size;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;
import tunside.http.json.Known;
import tunside.http.json.KnownIds;
import tunside.http.quantity.MassQuantity;
import tunside.http.quantity.StrengthQuantity;
import tunside.http.quantity.VolumeQuantity;

/** One acid, salt or base that goes into the mash. */
@Schema(
        description =
                "One acid, salt or base that goes into the mash: an acid with its strength and its mass or volume,"
                        + " or a salt or base with its mass.")
public record AdditionRequest(
        @Size(min = 1, max = 40)
        @Schema(
                description = "An id of GET /v1/acids. Either acid or salt.",
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
                description = "A salt or base, an id of GET /v1/salts. Either acid or salt.",
                examples = "calcium-chloride-dihydrate",
                pattern = "^[a-z-]+$",
                nullable = true)
        @Known(value = KnownIds.SALT, groups = Known.Names.class)
        @Nullable
        String salt,

        @Valid @Schema(description = "How much, by mass. For an acid either mass or volume.", nullable = true) @Nullable
        MassQuantity mass,

        @Valid
        @Schema(description = "How much of an acid, by volume at 20 degC; powders are weighed.", nullable = true)
        @Nullable
        VolumeQuantity volume) {}

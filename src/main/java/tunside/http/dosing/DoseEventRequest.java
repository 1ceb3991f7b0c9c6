package tunside.http.dosing;

import jakarta.validation.Valid;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.Size;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;
import tunside.http.json.Known;
import tunside.http.json.KnownIds;
import tunside.http.quantity.MassQuantity;
import tunside.http.quantity.StrengthQuantity;
import tunside.http.quantity.VolumeQuantity;

/** One thing that happened since the measured pH. */
@Schema(
        description =
                "One thing that happened: something added (addedVolume or addedMass), or a cooled sample read (ph)."
                        + " What was added is the acid as it is dosed, unless the entry names another acid or a base.")
public record DoseEventRequest(
        @Valid
        @Schema(
                description = "Volume added, of the acid as it is dosed: diluted first where the answer said so.",
                nullable = true)
        @Nullable
        VolumeQuantity addedVolume,

        @Valid
        @Schema(description = "Mass added, of the acid as it is dosed, or of the base.", nullable = true)
        @Nullable
        MassQuantity addedMass,

        @Size(min = 1, max = 40)
        @Schema(
                description = "Where it was another acid: its id, with its strength.",
                examples = "phosphoric",
                pattern = "^[a-z-]+$",
                nullable = true)
        @Known(value = KnownIds.ACID, groups = Known.Names.class)
        @Nullable
        String acid,

        @Valid @Schema(description = "Strength of that other acid.", nullable = true) @Nullable
        StrengthQuantity strength,

        @Size(min = 1, max = 40)
        @Schema(
                description = "Where it was a base: its id.",
                examples = "sodium-bicarbonate",
                pattern = "^[a-z-]+$",
                nullable = true)
        @Known(value = KnownIds.BASE, groups = Known.Names.class)
        @Nullable
        String base,

        @DecimalMin("2.5")
        @DecimalMax("10.5")
        @Schema(description = "pH read.", examples = "5.55", nullable = true)
        @Nullable
        Double ph,

        @DecimalMin("0.001")
        @DecimalMax("0.5")
        @Schema(
                description = "Standard uncertainty of this reading; phUncertainty where left out.",
                examples = "0.02",
                nullable = true)
        @Nullable
        Double phUncertainty) {}

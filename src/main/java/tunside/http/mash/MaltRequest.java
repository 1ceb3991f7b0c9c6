package tunside.http.mash;

import jakarta.validation.Valid;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;
import tunside.http.json.Known;
import tunside.http.json.KnownIds;
import tunside.http.quantity.ColourQuantity;
import tunside.http.quantity.MassQuantity;
import tunside.mash.Malt;

/** One malt of a grist. */
@Schema(description = "One malt of a grist. Two entries that are equal but for the mass are taken for the same lot.")
public record MaltRequest(
        @NotNull
        @Size(min = 1, max = 40)
        @Schema(
                description = "Class of the malt, an id of GET /v1/malts.",
                examples = "pale",
                pattern = "^[a-z-]+$",
                required = true)
        @Known(value = KnownIds.MALT, groups = Known.Names.class)
        String malt,

        @NotNull @Valid @Schema(description = "How much of it, above 0 to 10,000 kg.", required = true)
        MassQuantity mass,

        @Valid
        @Schema(description = "Its colour; needed for caramel malts, whose acidity follows it.", nullable = true)
        @Nullable
        ColourQuantity colour,

        @Valid
        @Schema(description = "What was measured on this lot; it replaces the class's values.", nullable = true)
        @Nullable
        MeasuredMaltRequest measured,

        @DecimalMin("0.1")
        @DecimalMax("10")
        @Schema(
                description = "Lactic acid of an acidulated malt, % of its mass, from its label; 3 where absent. Not"
                        + " together with measured pH, buffering or acidity, which hold it already.",
                examples = "3",
                nullable = true)
        @Nullable
        Double lacticAcidPercent,

        @Size(min = 1, max = Malt.LONGEST_PRODUCT)
        @Pattern(regexp = Malt.PRODUCT_PATTERN, message = Malt.PRODUCT_WORDS)
        @Schema(
                description =
                        "Which malt of its class it is, in your own words, always the same. What past brews taught about"
                                + " a product goes to that product; of another only what its class has in common. Letters and"
                                + " digits, between them also spaces, full stops, commas, hyphens and apostrophes.",
                examples = "maltings by the river",
                nullable = true)
        @Nullable
        String product) {}

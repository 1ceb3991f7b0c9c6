package tunside.http.dilution;

import jakarta.validation.Valid;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;
import tunside.http.json.Known;
import tunside.http.json.KnownIds;
import tunside.http.quantity.MassQuantity;
import tunside.http.quantity.StrengthQuantity;
import tunside.http.quantity.TemperatureQuantity;
import tunside.http.quantity.VolumeQuantity;
import tunside.safety.Jurisdiction;

/** The question of {@code POST /v1/acid-dilutions}. */
@Schema(
        description = "An acid in hand, a weaker one wanted, and one amount: of what is to be made (wantedVolume or"
                + " wantedMass), or of the acid to use up (acidVolume or acidMass).")
public record AcidDilutionRequest(
        @NotNull
        @Size(min = 1, max = 40)
        @Schema(
                description = "Acid, an id of GET /v1/acids.",
                examples = "phosphoric",
                pattern = "^[a-z-]+$",
                required = true)
        @Known(value = KnownIds.ACID, groups = Known.Names.class)
        String acid,

        @NotNull @Valid @Schema(description = "Strength in hand, as its label states it.", required = true)
        StrengthQuantity strength,

        @NotNull @Valid @Schema(description = "Strength wanted, below the one in hand.", required = true)
        StrengthQuantity wantedStrength,

        @Valid
        @Schema(description = "How much to make, as a volume at 20 degC, 0.01 to 1000 L.", nullable = true)
        @Nullable
        VolumeQuantity wantedVolume,

        @Valid @Schema(description = "How much to make, by mass, 0.01 to 1000 kg.", nullable = true) @Nullable
        MassQuantity wantedMass,

        @Valid
        @Schema(
                description = "How much of the acid in hand to use up, as a volume at 20 degC, 0.001 to 100 L.",
                nullable = true)
        @Nullable
        VolumeQuantity acidVolume,

        @Valid
        @Schema(description = "How much of the acid in hand to use up, by mass, 0.001 to 100 kg.", nullable = true)
        @Nullable
        MassQuantity acidMass,

        @Valid
        @Schema(description = "Temperature of the water, 0 to 100 degC; 20 degC where left out.", nullable = true)
        @Nullable
        TemperatureQuantity waterTemperature,

        @Valid
        @Schema(description = "Temperature of the acid in hand, 0 to 35 degC; 20 degC where left out.", nullable = true)
        @Nullable
        TemperatureQuantity acidTemperature,

        @Valid
        @Schema(
                description =
                        "Temperature that the mixture may surely not pass, 40 to 60 degC; 50 degC where left out. What would"
                                + " get warmer is made in stages.",
                nullable = true)
        @Nullable
        TemperatureQuantity warmLimit,

        @DecimalMin("0")
        @DecimalMax("20")
        @Schema(
                description =
                        "How good the strength in hand is, in percent of its value (one standard deviation); 1 where left out.",
                examples = "1",
                nullable = true)
        @Nullable
        Double labelUncertaintyPercent,

        @Schema(
                description =
                        "Whose supply limits to look at: great-britain or european-union; all that are known where left out.",
                nullable = true)
        @Nullable
        Jurisdiction jurisdiction) {}

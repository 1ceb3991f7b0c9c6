package tunside.http.water;

import jakarta.validation.Valid;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import tunside.http.quantity.AlkalinityQuantity;
import tunside.http.quantity.DissolvedQuantity;
import tunside.http.quantity.TemperatureQuantity;

/** A water report as requests carry it. */
@Schema(
        description =
                "A water as its laboratory reports it, in the laboratory's own units. Leave out what is not reported;"
                        + " an empty object is distilled water.")
public record WaterRequest(
        @Valid @Schema(description = "Calcium, Ca.") DissolvedQuantity calcium,
        @Valid @Schema(description = "Magnesium, Mg.") DissolvedQuantity magnesium,
        @Valid @Schema(description = "Sodium, Na.") DissolvedQuantity sodium,
        @Valid @Schema(description = "Potassium, K.") DissolvedQuantity potassium,
        @Valid @Schema(description = "Chloride, Cl.") DissolvedQuantity chloride,

        @Valid @Schema(description = "Sulfate, SO4; mg/L-as-S where the report counts sulfur.")
        DissolvedQuantity sulfate,

        @Valid @Schema(description = "Nitrate, NO3; mg/L-as-N where the report counts nitrogen.")
        DissolvedQuantity nitrate,

        @Valid @Schema(description = "Alkalinity, or bicarbonate as mg/L-as-HCO3.")
        AlkalinityQuantity alkalinity,

        @DecimalMin("3.5")
        @DecimalMax("5.5")
        @Schema(description = "pH at which the alkalinity titration ended; 4.5 where left out.", examples = "4.3")
        Double alkalinityEndPoint,

        @DecimalMin("4")
        @DecimalMax("11")
        @Schema(description = "pH of the water; 7.5 where left out.", examples = "7.8")
        Double ph,

        @Valid
        @Schema(description = "Temperature of the sample when its pH was read, 0 to 60 degC; 20 degC where left out.")
        TemperatureQuantity temperature) {}

package tunside.http.water;

import jakarta.validation.Valid;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import java.util.Objects;
import java.util.stream.Stream;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;
import tunside.http.quantity.AlkalinityQuantity;
import tunside.http.quantity.ConductivityQuantity;
import tunside.http.quantity.DissolvedQuantity;
import tunside.http.quantity.HardnessQuantity;
import tunside.http.quantity.TemperatureQuantity;

/** A water report as requests carry it. */
@Schema(
        description =
                "A water as its laboratory reports it, in the laboratory's own units. Leave out what is not reported;"
                        + " an empty object is distilled water.")
public record WaterRequest(
        @Valid @Schema(description = "Calcium, Ca.") @Nullable
        DissolvedQuantity calcium,

        @Valid @Schema(description = "Magnesium, Mg.") @Nullable
        DissolvedQuantity magnesium,

        @Valid @Schema(description = "Sodium, Na.") @Nullable
        DissolvedQuantity sodium,

        @Valid @Schema(description = "Potassium, K.") @Nullable
        DissolvedQuantity potassium,

        @Valid @Schema(description = "Chloride, Cl.") @Nullable
        DissolvedQuantity chloride,

        @Valid @Schema(description = "Sulfate, SO4; mg/L-as-S where the report counts sulfur.") @Nullable
        DissolvedQuantity sulfate,

        @Valid @Schema(description = "Nitrate, NO3; mg/L-as-N where the report counts nitrogen.") @Nullable
        DissolvedQuantity nitrate,

        @Valid
        @Schema(
                description = "Alkalinity, also called acid capacity or carbonate hardness; or bicarbonate as"
                        + " mg/L-as-HCO3.")
        @Nullable
        AlkalinityQuantity alkalinity,

        @Valid
        @Schema(
                description =
                        "Bicarbonate, HCO3, where the report lists it beside carbonate; instead of an alkalinity, or"
                                + " agreeing with it.")
        @Nullable
        DissolvedQuantity bicarbonate,

        @Valid @Schema(description = "Carbonate, CO3; with bicarbonate only.") @Nullable
        DissolvedQuantity carbonate,

        @Valid
        @Schema(description = "Your own titration of the alkalinity, instead of the alkalinity itself.")
        @Nullable
        AlkalinityTitrationRequest alkalinityTitration,

        @DecimalMin("3.5")
        @DecimalMax("5.5")
        @Schema(description = "pH at which the alkalinity titration ended; 4.5 where left out.", examples = "4.3")
        @Nullable
        Double alkalinityEndPoint,

        @DecimalMin("4")
        @DecimalMax("11")
        @Schema(description = "pH of the water; 7.5 where left out.", examples = "7.8")
        @Nullable
        Double ph,

        @Valid
        @Schema(description = "Temperature of the sample when its pH was read, 0 to 60 degC; 20 degC where left out.")
        @Nullable
        TemperatureQuantity temperature,

        @Valid @Schema(description = "Total hardness; held against calcium and magnesium.") @Nullable
        HardnessQuantity hardness,

        @Valid @Schema(description = "Electrical conductivity; held against the ions.") @Nullable
        ConductivityQuantity conductivity,

        @Valid
        @Schema(description = "Temperature that the conductivity refers to, 20 or 25 degC; 25 degC where left out.")
        @Nullable
        TemperatureQuantity conductivityTemperature,

        @Valid
        @Schema(description = "Total dissolved solids, mg/L; held against the ions and the conductivity.")
        @Nullable
        DissolvedQuantity dissolvedSolids) {
    /** Whether nothing is reported: distilled water. */
    boolean reportsNothing() {
        return Stream.of(
                        calcium,
                        magnesium,
                        sodium,
                        potassium,
                        chloride,
                        sulfate,
                        nitrate,
                        alkalinity,
                        bicarbonate,
                        carbonate,
                        alkalinityTitration,
                        alkalinityEndPoint,
                        ph,
                        temperature,
                        hardness,
                        conductivity,
                        conductivityTemperature,
                        dissolvedSolids)
                .allMatch(Objects::isNull);
    }
}

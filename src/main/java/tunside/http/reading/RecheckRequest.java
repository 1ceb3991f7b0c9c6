package tunside.http.reading;

import jakarta.validation.Valid;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;
import tunside.http.json.Known;
import tunside.http.json.KnownIds;
import tunside.http.quantity.PotentialQuantity;
import tunside.http.quantity.TemperatureQuantity;
import tunside.http.quantity.TimeQuantity;

/** A buffer read again after the calibration. */
@Schema(description = "A buffer read again after the calibration, to see how far the electrode drifted.")
public record RecheckRequest(
        @NotNull
        @Valid
        @Schema(description = "From the calibration to this reading, above 0 to 400 days.", required = true)
        TimeQuantity sinceCalibration,

        @Size(min = 1, max = 40)
        @Known(value = KnownIds.BUFFER, groups = Known.Names.class)
        @Schema(
                description = "An id of GET /v1/buffers. Not together with ph.",
                examples = "iupac-phthalate",
                pattern = "^[a-z0-9.-]+$",
                nullable = true)
        @Nullable
        String buffer,

        @DecimalMin("0")
        @DecimalMax("14")
        @Schema(description = "pH of an own buffer at this temperature.", examples = "4.01", nullable = true)
        @Nullable
        Double ph,

        @NotNull @Valid @Schema(description = "Temperature of the buffer, within its table.", required = true)
        TemperatureQuantity temperature,

        @Valid @Schema(description = "Potential of the electrode, -1000 to 1000 mV.", nullable = true) @Nullable
        PotentialQuantity potential,

        @DecimalMin("-2")
        @DecimalMax("16")
        @Schema(description = "pH on the display.", examples = "4.03", nullable = true)
        @Nullable
        Double displayed) {}

package tunside.http.calibration;

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

/** One reading in one buffer. */
@Schema(description = "One reading in one buffer. The buffer is named, or its pH is stated.")
public record BufferReadingRequest(
        @Size(min = 1, max = 40)
        @Schema(
                description = "An id of GET /v1/buffers. Not together with ph.",
                examples = "jis-phthalate",
                pattern = "^[a-z0-9.-]+$",
                nullable = true)
        @Known(value = KnownIds.BUFFER, groups = Known.Names.class)
        @Nullable
        String buffer,

        @DecimalMin("0")
        @DecimalMax("14")
        @Schema(
                description = "pH of an own buffer at this temperature, from its label. Not together with buffer.",
                examples = "7.01",
                nullable = true)
        @Nullable
        Double ph,

        @DecimalMin("0")
        @DecimalMax("0.5")
        @Schema(
                description =
                        "Standard uncertainty of the buffer's pH: half of what a label states as +-. Absent: 0.01.",
                examples = "0.01",
                nullable = true)
        @Nullable
        Double phUncertainty,

        @NotNull @Valid @Schema(description = "Temperature of the buffer, within the buffer's table.", required = true)
        TemperatureQuantity temperature,

        @Valid
        @Schema(
                description = "Potential of the electrode, -1000 to 1000 mV; needed where readout is potential.",
                nullable = true)
        @Nullable
        PotentialQuantity potential,

        @DecimalMin("-2")
        @DecimalMax("16")
        @Schema(
                description = "pH on the display; needed where readout is as-found or after-adjusting.",
                examples = "6.91",
                nullable = true)
        @Nullable
        Double displayed,

        @Valid
        @Schema(description = "Time until the reading stood still, up to 1 h, where watched.", nullable = true)
        @Nullable
        TimeQuantity settlingTime,

        @Valid @Schema(description = "How the buffer was made up, and how old it is.", nullable = true) @Nullable
        BufferPreparationRequest preparation) {}

package tunside.http.reading;

import jakarta.validation.Valid;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.NotNull;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;
import tunside.http.quantity.PotentialQuantity;
import tunside.http.quantity.TemperatureQuantity;
import tunside.http.quantity.TimeQuantity;

/** One reading of the series. */
@Schema(description = "One reading: potential or displayed, one of the two.")
public record SamplePointRequest(
        @NotNull
        @Valid
        @Schema(description = "Time since the first reading or any fixed moment, 0 to 24 h.", required = true)
        TimeQuantity elapsed,

        @NotNull @Valid @Schema(description = "Temperature of the sample, 0 to 100 degC.", required = true)
        TemperatureQuantity temperature,

        @Valid @Schema(description = "Potential of the electrode, -1000 to 1000 mV.", nullable = true) @Nullable
        PotentialQuantity potential,

        @DecimalMin("-2")
        @DecimalMax("16")
        @Schema(description = "pH on the display.", examples = "5.46", nullable = true)
        @Nullable
        Double displayed) {}

package tunside.http.calibration;

import jakarta.validation.Valid;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;
import tunside.electrode.MeterReadout;

/** The question of {@code POST /v1/calibration-evaluations}. */
@Schema(description = "Readings of an electrode in buffers, to be judged.")
public record CalibrationEvaluationRequest(
        @NotNull
        @Size(min = 2, max = 16)
        @Schema(description = "2 to 16 readings, in the order in which they were taken.", required = true)
        List<@NotNull @Valid BufferReadingRequest> readings,

        @Schema(
                description =
                        "What the readings are: potential, or displayed pH as-found (before adjusting the meter) or"
                                + " after-adjusting. Absent: potential.",
                nullable = true)
        @Nullable
        MeterReadout readout,

        @Valid
        @Schema(
                description = "What is known of the meter. Absent: automatic temperature compensation.",
                nullable = true)
        @Nullable
        MeterRequest meter,

        @Valid @Schema(description = "How sure one reading is. Absent: usual values.", nullable = true) @Nullable
        ReadingUncertaintyRequest uncertainty,

        @DecimalMin("0")
        @DecimalMax("14")
        @Schema(description = "pH that the samples will have. Absent: 5.4, a mash.", examples = "5.4", nullable = true)
        @Nullable
        Double expectedPh) {}

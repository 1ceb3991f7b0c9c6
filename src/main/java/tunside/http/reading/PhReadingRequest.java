package tunside.http.reading;

import jakarta.validation.Valid;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;
import tunside.electrode.reading.SampleLiquid;
import tunside.http.calibration.CalibrationDocument;
import tunside.http.calibration.MeterRequest;
import tunside.http.calibration.ReadingUncertaintyRequest;
import tunside.http.quantity.TimeQuantity;

/** A series of readings in one sample. */
@Schema(description = "A series of readings in one sample, and what is known of electrode and meter.")
public record PhReadingRequest(
        @NotNull @Schema(description = "What the electrode stands in.", required = true)
        SampleLiquid liquid,

        @NotNull
        @Size(min = 1, max = 2000)
        @Schema(description = "The readings, rising in time; all in mV or all as displayed.", required = true)
        List<@NotNull @Valid SamplePointRequest> readings,

        @Valid
        @Schema(
                description =
                        "The calibration that calibration-evaluations gave. Readings in mV need it; a displayed pH"
                                + " without it gets a stop.",
                nullable = true)
        @Nullable
        CalibrationDocument calibration,

        @Valid
        @Schema(
                description = "The meter, where there is no calibration document to say it. Absent: automatic"
                        + " compensation.",
                nullable = true)
        @Nullable
        MeterRequest meter,

        @Valid
        @Schema(
                description = "From the calibration to the last reading, up to 400 days. Drift needs it.",
                nullable = true)
        @Nullable
        TimeQuantity sinceCalibration,

        @Size(max = 8) @Schema(description = "Buffers read again after the calibration.", nullable = true) @Nullable
        List<@NotNull @Valid RecheckRequest> rechecks,

        @DecimalMin("0")
        @DecimalMax("14")
        @Schema(
                description = "Lower end of the range wanted, for a sample of 20 degC. Absent, with highPh absent too:"
                        + " the usual range of the liquid.",
                examples = "5.2",
                nullable = true)
        @Nullable
        Double lowPh,

        @DecimalMin("0")
        @DecimalMax("14")
        @Schema(description = "Upper end of the range wanted.", examples = "5.5", nullable = true)
        @Nullable
        Double highPh,

        @DecimalMin("0.0001")
        @DecimalMax("0.5")
        @Schema(
                description =
                        "What the last digit of the display counts, in pH. Absent: 0.01, or 0.1 mV, which is 0.0017.",
                examples = "0.01",
                nullable = true)
        @Nullable
        Double displayStep,

        @Valid @Schema(description = "How sure one reading is.", nullable = true) @Nullable
        ReadingUncertaintyRequest uncertainty,

        @DecimalMin("0.001")
        @DecimalMax("0.5")
        @Schema(
                description =
                        "A reading is settled when it changed by no more than this in settledWithin and will change"
                                + " by no more. Absent: 0.01.",
                examples = "0.01",
                nullable = true)
        @Nullable
        Double settledChange,

        @Valid @Schema(description = "The time of settledChange, 5 to 600 s. Absent: 30 s.", nullable = true) @Nullable
        TimeQuantity settledWithin) {}

package tunside.http.calibration;

import jakarta.validation.Valid;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;
import tunside.electrode.Calibration;
import tunside.electrode.CalibrationSignal;
import tunside.electrode.IsothermalPoint;
import tunside.electrode.Verdict;
import tunside.http.answer.Rounded;
import tunside.http.problem.Place;
import tunside.http.quantity.PotentialQuantity;
import tunside.http.quantity.TemperatureQuantity;

/** A calibration as the caller keeps it and sends it with later readings. */
@Schema(
        description = "A calibration. The service keeps nothing: store this document and send it, unchanged, with your"
                + " readings.")
public record CalibrationDocument(
        @NotNull
        @Size(min = 1, max = 40)
        @Schema(
                description = "Version of the model that made it; a document of another version is refused.",
                examples = "calibration-line-1",
                required = true)
        String model,

        @NotNull @Schema(description = "What it reads: potential, or displayed-ph.", required = true)
        CalibrationSignal signal,

        @NotNull @Valid @Schema(description = "Temperature of the line, -10 to 100 degC.", required = true)
        TemperatureQuantity temperature,

        @NotNull
        @DecimalMin("1")
        @DecimalMax("120")
        @Schema(description = "Loss of potential per pH unit at that temperature, mV.", required = true)
        Double slopeMvPerPh,

        @NotNull @Valid @Schema(description = "Potential at pH 7, -1000 to 1000 mV.", required = true)
        PotentialQuantity offset,

        @NotNull
        @DecimalMin("0")
        @DecimalMax("10000")
        @Schema(description = "Variance of the slope, (mV/pH)^2.", required = true)
        Double slopeVariance,

        @NotNull
        @DecimalMin("0")
        @DecimalMax("1000000")
        @Schema(description = "Variance of the offset, mV^2.", required = true)
        Double offsetVariance,

        @NotNull
        @DecimalMin("-100000")
        @DecimalMax("100000")
        @Schema(description = "Covariance of slope and offset, mV^2 per pH.", required = true)
        Double slopeOffsetCovariance,

        @NotNull
        @Schema(
                description =
                        "Where lines of different temperatures are taken to cross: offset-kept at pH 7, zero-point-kept"
                                + " at 0 mV. Both are assumptions.",
                required = true)
        IsothermalPoint isothermalPoint,

        @NotNull @Valid @Schema(description = "The meter; matters for displayed pH only.", required = true)
        MeterRequest meter,

        @NotNull @DecimalMin("0") @DecimalMax("14") @Schema(description = "Lowest buffer.", required = true)
        Double lowestPh,

        @NotNull @DecimalMin("0") @DecimalMax("14") @Schema(description = "Highest buffer.", required = true)
        Double highestPh,

        @NotNull @Schema(description = "Whether the electrode may be trusted with it.", required = true)
        Verdict verdict) {
    private static final int DIGITS = 12;

    /** The domain's value; a stand-in after a fault. */
    public Calibration toCalibration(Place place) {
        var at = temperature.toTemperature(place.member("temperature"), -10, 100);
        var offsetPotential = offset.toPotential(place.member("offset"), -1000, 1000);
        var compensation = MeterRequest.toCompensation(meter, place.member("meter"));
        return place.build(
                () -> new Calibration(
                        signal,
                        at,
                        slopeMvPerPh,
                        offsetPotential.millivolts(),
                        slopeVariance,
                        offsetVariance,
                        slopeOffsetCovariance,
                        isothermalPoint,
                        compensation,
                        lowestPh,
                        highestPh,
                        verdict,
                        model),
                new Calibration(
                        signal, at, 59, 0, 0, 0, 0, isothermalPoint, compensation, 4, 7, verdict, Calibration.MODEL));
    }

    /** Finds the faults of a document that is only handed on; an absent one has none. */
    public static void check(@Nullable CalibrationDocument document, Place place) {
        if (document != null) {
            document.toCalibration(place);
        }
    }

    /** As an answer states it, to {@value #DIGITS} digits, so that reading with it loses nothing. */
    public static CalibrationDocument of(Calibration calibration) {
        return new CalibrationDocument(
                calibration.model(),
                calibration.signal(),
                TemperatureQuantity.celsius(calibration.temperature().celsius(), 6),
                Rounded.significant(calibration.slopeMvPerPh(), DIGITS),
                PotentialQuantity.millivolts(calibration.offsetMv(), 9),
                Rounded.significant(calibration.slopeVariance(), DIGITS),
                Rounded.significant(calibration.offsetVariance(), DIGITS),
                Rounded.significant(calibration.slopeOffsetCovariance(), DIGITS),
                calibration.isothermalPoint(),
                MeterRequest.of(calibration.compensation()),
                Rounded.decimals(calibration.lowestPh(), 4),
                Rounded.decimals(calibration.highestPh(), 4),
                calibration.verdict());
    }
}

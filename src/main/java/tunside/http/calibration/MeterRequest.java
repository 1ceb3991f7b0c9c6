package tunside.http.calibration;

import static java.util.Objects.requireNonNull;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;
import tunside.electrode.MeterCompensation;
import tunside.electrode.TemperatureCompensation;
import tunside.http.problem.Place;
import tunside.http.quantity.TemperatureQuantity;

/** What is known of a meter. */
@Schema(description = "What is known of the meter.")
public record MeterRequest(
        @NotNull
        @Schema(
                description =
                        "automatic: it measures the temperature. manual: it is set by hand. none: it computes with"
                                + " 25 degC always.",
                required = true)
        TemperatureCompensation compensation,

        @Valid
        @Schema(
                description = "The temperature set by hand, 0 to 100 degC; needed with manual, and only then.",
                nullable = true)
        @Nullable
        TemperatureQuantity setTemperature) {

    /** The domain's value; automatic where the request says nothing. */
    public static MeterCompensation toCompensation(@Nullable MeterRequest request, Place place) {
        if (request == null) {
            return MeterCompensation.automatic();
        }
        boolean manual = request.compensation == TemperatureCompensation.MANUAL;
        if (manual && request.setTemperature == null) {
            place.member("setTemperature").fault("is missing: a meter set by hand needs the temperature it is set to");
            return MeterCompensation.automatic();
        }
        if (!manual && request.setTemperature != null) {
            place.member("setTemperature").fault("belongs to a meter with manual compensation only");
        }
        return switch (request.compensation) {
            case AUTOMATIC -> MeterCompensation.automatic();
            case MANUAL ->
                MeterCompensation.manual(
                        requireNonNull(request.setTemperature).toTemperature(place.member("setTemperature"), 0, 100));
            case NONE -> MeterCompensation.none();
        };
    }

    /** As a document states it. */
    static MeterRequest of(MeterCompensation compensation) {
        return new MeterRequest(
                compensation.kind(),
                compensation.kind() == TemperatureCompensation.MANUAL
                        ? TemperatureQuantity.celsius(compensation.setting().celsius(), 6)
                        : null);
    }
}

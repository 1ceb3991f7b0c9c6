package tunside.http.calibration;

import jakarta.validation.Valid;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;
import tunside.electrode.NernstSlope;
import tunside.electrode.ReadingUncertainty;
import tunside.http.problem.Place;
import tunside.http.quantity.PotentialQuantity;
import tunside.quantity.Temperature;

/** How sure one reading is. */
@Schema(description = "Standard uncertainties of one reading, apart from the calibration.")
public record ReadingUncertaintyRequest(
        @Valid
        @Schema(
                description = "Of the potential, 0 to 100 mV. Absent: 0.5 mV. Not together with displayed.",
                nullable = true)
        @Nullable
        PotentialQuantity potential,

        @DecimalMin("0")
        @DecimalMax("1")
        @Schema(
                description = "Of the displayed pH. Absent: 0.5 mV, which is 0.0085. Not together with potential.",
                examples = "0.01",
                nullable = true)
        @Nullable
        Double displayed,

        @DecimalMin("0")
        @DecimalMax("50")
        @Schema(description = "Of the temperature, in K. Absent: 0.5.", examples = "0.5", nullable = true)
        @Nullable
        Double temperatureK,

        @DecimalMin("0")
        @DecimalMax("1")
        @Schema(
                description = "Of the liquid junction between buffers and sample, in pH. Absent: 0.01.",
                examples = "0.01",
                nullable = true)
        @Nullable
        Double liquidJunctionPh) {

    /** The domain's value; the usual one for what the request does not state. */
    public static ReadingUncertainty toUncertainty(@Nullable ReadingUncertaintyRequest request, Place place) {
        ReadingUncertainty usual = ReadingUncertainty.USUAL;
        if (request == null) {
            return usual;
        }
        if (request.potential != null && request.displayed != null) {
            place.member("displayed").fault("stands beside potential; give one of the two");
        }
        double potentialMv = usual.potentialMv();
        if (request.potential != null) {
            potentialMv = request.potential
                    .toPotential(place.member("potential"), 0, 100)
                    .millivolts();
        } else if (request.displayed != null) {
            potentialMv = request.displayed * NernstSlope.millivoltsPerPh(new Temperature(25));
        }
        return new ReadingUncertainty(
                potentialMv,
                request.temperatureK == null ? usual.temperatureK() : request.temperatureK,
                request.liquidJunctionPh == null ? usual.liquidJunctionPh() : request.liquidJunctionPh);
    }
}

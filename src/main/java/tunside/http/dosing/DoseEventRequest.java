package tunside.http.dosing;

import jakarta.validation.Valid;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import tunside.http.quantity.MassQuantity;
import tunside.http.quantity.VolumeQuantity;

/** One thing that happened since the measured pH. */
@Schema(description = "One thing that happened: acid added (volume or mass), or a cooled sample read (ph).")
public record DoseEventRequest(
        @Valid
        @Schema(description = "Volume added, of the acid as it is dosed: diluted first where the answer said so.")
        VolumeQuantity addedVolume,

        @Valid @Schema(description = "Mass added, of the acid as it is dosed.")
        MassQuantity addedMass,

        @DecimalMin("2") @DecimalMax("12") @Schema(description = "pH read.", examples = "5.55", nullable = true)
        Double ph) {}

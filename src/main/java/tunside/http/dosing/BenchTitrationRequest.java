package tunside.http.dosing;

import jakarta.validation.Valid;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import tunside.http.quantity.VolumeQuantity;

/** A small titration of a sample. */
@Schema(
        description =
                "A sample of the liquid that was titrated on the bench, step by step, with the acid as it is dosed or"
                        + " with another that the entries name.")
public record BenchTitrationRequest(
        @NotNull @Valid @Schema(description = "Volume of the sample, 1 mL to 10 L.", required = true)
        VolumeQuantity sample,

        @NotNull
        @DecimalMin("2.5")
        @DecimalMax("10.5")
        @Schema(description = "pH of the sample before anything was added.", examples = "5.52", required = true)
        Double startPh,

        @NotNull
        @Size(min = 2, max = 32)
        @Schema(description = "What was added and read, in order, at least one of each.", required = true)
        List<@NotNull @Valid DoseEventRequest> steps) {}

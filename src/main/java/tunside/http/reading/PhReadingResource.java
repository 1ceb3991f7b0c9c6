package tunside.http.reading;

import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import tunside.http.answer.Answered;

/** {@code POST /v1/ph-readings}. A long series takes milliseconds, so it runs on a worker thread. */
@Path("/v1/ph-readings")
@Consumes(MediaType.APPLICATION_JSON)
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Electrode")
public final class PhReadingResource {

    @POST
    @Operation(
            operationId = "judgePhReading",
            summary = "Judge the reading of a sample",
            description =
                    "Fits an exponential approach to a series of 1 to 2,000 readings: settled or not, and where it is"
                            + " heading. Corrects by the calibration, for the meter's temperature compensation and for drift, brings"
                            + " the pH to 20 degC, and answers with the uncertainty of each cause, the probability that the true pH"
                            + " is in the range, a verdict and advice.")
    @APIResponse(responseCode = "200", description = "What the reading means.")
    public PhReadingResponse judge(PhReadingRequest request) {
        return PhReadingMapper.answer(request);
    }

    /** The answer as a picture. */
    @POST
    @Produces("image/svg+xml")
    @Operation(hidden = true)
    public Answered show(PhReadingRequest request) {
        return new Answered(request, PhReadingMapper.answer(request));
    }
}

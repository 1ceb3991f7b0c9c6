package tunside.http.calibration;

import io.smallrye.common.annotation.NonBlocking;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import tunside.http.answer.Answered;

/** {@code POST /v1/calibration-evaluations}. Trying every cause takes less than half a millisecond. */
@Path("/v1/calibration-evaluations")
@Consumes(MediaType.APPLICATION_JSON)
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Electrode")
public final class CalibrationEvaluationResource {

    @POST
    @Operation(
            operationId = "evaluateCalibration",
            summary = "Judge an electrode from its buffer readings",
            description =
                    "Fits a weighted straight line to 2 to 16 readings in buffers. Answers with slope, offset, zero"
                            + " point, residuals, segment slopes and their uncertainties, a verdict with reasons, suspected causes"
                            + " that were each tried on the readings, what to do next, and the calibration to send with later"
                            + " readings.")
    @APIResponse(responseCode = "200", description = "The judgement.")
    @NonBlocking
    public CalibrationEvaluationResponse evaluate(CalibrationEvaluationRequest request) {
        return CalibrationEvaluationMapper.answer(request);
    }

    /** The answer as a picture; drawing takes milliseconds, so it runs on a worker thread. */
    @POST
    @Produces("image/svg+xml")
    @Operation(hidden = true)
    public Answered show(CalibrationEvaluationRequest request) {
        return new Answered(request, CalibrationEvaluationMapper.answer(request));
    }
}

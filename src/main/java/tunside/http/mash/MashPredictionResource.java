package tunside.http.mash;

import io.smallrye.common.annotation.NonBlocking;
import jakarta.inject.Inject;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.util.concurrent.CompletionStage;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import tunside.http.answer.Answered;
import tunside.http.limits.Workers;
import tunside.http.vary.Variations;

/** {@code POST /v1/mash-predictions}. A curve takes milliseconds, so a worker computes it. */
@Path("/v1/mash-predictions")
@Consumes(MediaType.APPLICATION_JSON)
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Mash")
public final class MashPredictionResource {
    private final Variations variations;

    @Inject
    public MashPredictionResource(Variations variations) {
        this.variations = variations;
    }

    @POST
    @Operation(
            operationId = "predictMash",
            summary = "Predict where a mash lands",
            description = "Solves the proton balance of malt, liquor and additions. Answers with the pH of the cooled"
                    + " sample, its uncertainty and 90 % interval, what each component contributes, which input limits the"
                    + " certainty, buffer capacity, residual alkalinity, a titration curve and the ions. With 'vary' it has the"
                    + " curve of the pH against any quantity or number of the request.")
    @APIResponse(responseCode = "200", description = "The prediction.")
    @NonBlocking
    public CompletionStage<MashPredictionResponse> predict(MashPredictionRequest request) {
        return Workers.answer(request.vary() == null, () -> MashPredictionMapper.answer(request, variations));
    }

    /** The answer as a picture; drawing takes milliseconds, so it runs on a worker thread. */
    @POST
    @Produces("image/svg+xml")
    @Operation(hidden = true)
    public Answered show(MashPredictionRequest request) {
        return new Answered(request, MashPredictionMapper.answer(request, variations));
    }

    /** The answer as a sheet to print. */
    @POST
    @Produces("text/html")
    @Operation(hidden = true)
    public Answered print(MashPredictionRequest request) {
        return new Answered(request, MashPredictionMapper.answer(request, variations));
    }
}

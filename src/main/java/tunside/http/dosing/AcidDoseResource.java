package tunside.http.dosing;

import io.smallrye.common.annotation.NonBlocking;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.util.concurrent.CompletionStage;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import tunside.http.answer.Answered;
import tunside.http.limits.Workers;

/** {@code POST /v1/acid-doses}. A long history takes a worker thread. */
@Path("/v1/acid-doses")
@Consumes(MediaType.APPLICATION_JSON)
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Acid")
public final class AcidDoseResource {
    /** Up to here an answer takes a few hundred microseconds. */
    private static final int LONGEST_BRIEF_HISTORY = 10;

    @POST
    @Operation(
            operationId = "computeAcidDose",
            summary = "How much acid, and how to add it",
            description =
                    "Says what to add now, so that the pH ends below the range with no more than the accepted risk, and"
                            + " what may follow. Send what was added and read since as history: each reading teaches how strongly"
                            + " this mash buffers. Strong mineral acid is diluted first; the answer says how.")
    @NonBlocking
    public CompletionStage<AcidDoseResponse> compute(AcidDoseRequest request) {
        boolean brief = request.history() == null || request.history().size() <= LONGEST_BRIEF_HISTORY;
        return Workers.answer(brief, () -> AcidDoseMapper.answer(request));
    }

    /** The answer as a picture. */
    @POST
    @Produces("image/svg+xml")
    @Operation(hidden = true)
    public Answered show(AcidDoseRequest request) {
        return new Answered(request, AcidDoseMapper.answer(request));
    }

    /** The answer as a sheet to print. */
    @POST
    @Produces("text/html")
    @Operation(hidden = true)
    public Answered print(AcidDoseRequest request) {
        return new Answered(request, AcidDoseMapper.answer(request));
    }
}

package tunside.http.review;

import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** {@code POST /v1/brew-reviews}. A long record takes many milliseconds, so it runs on a worker thread. */
@Path("/v1/brew-reviews")
@Consumes(MediaType.APPLICATION_JSON)
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Mash")
public final class BrewReviewResource {
    @POST
    @Operation(
            operationId = "reviewBrews",
            summary = "What a brewer's own record teaches",
            description =
                    "Learns from measured mashes how far this household lies from published values: its bias, how strongly its"
                            + " mashes buffer, and how its malts differ from their classes, each drawn towards the published value"
                            + " as far as the record is thin. Answers with the experience to send with later questions, with the"
                            + " error of predicting each brew from the others before and after, with the brews that do not fit and"
                            + " what may lie behind them, and with what more brews would bring.")
    public BrewReviewResponse review(BrewReviewRequest request) {
        return BrewReviewMapper.answer(request);
    }
}

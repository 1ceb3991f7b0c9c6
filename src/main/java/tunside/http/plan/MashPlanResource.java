package tunside.http.plan;

import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** {@code POST /v1/mash-plans}. The search takes milliseconds, so it runs on a worker thread. */
@Path("/v1/mash-plans")
@Consumes(MediaType.APPLICATION_JSON)
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Mash")
@Blocking
public final class MashPlanResource {
    @POST
    @Operation(
            operationId = "planMash",
            summary = "Find the additions that take a mash to a pH",
            description =
                    "Finds the fewest and smallest additions of what is at hand that bring the mash to the target pH and"
                            + " the ions into their ranges, in whole steps of scales and syringe, and never acid and base"
                            + " together. Answers with the plan, its prediction and the probability of landing in range, which"
                            + " limits bind, and the best plan with each other acid. Where not all can be met: the nearest plan, and"
                            + " which limits stand in the way. Strong mineral acid is counted as diluted; the answer says how.")
    @APIResponse(responseCode = "200", description = "The plan.")
    public MashPlanResponse plan(MashPlanRequest request) {
        return MashPlanMapper.answer(request);
    }
}

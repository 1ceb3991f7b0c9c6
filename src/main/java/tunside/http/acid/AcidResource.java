package tunside.http.acid;

import io.smallrye.common.annotation.NonBlocking;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import tunside.http.table.TableAnswers;

/** {@code GET /v1/acids}. */
@Path("/v1/acids")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Tables")
@NonBlocking
public final class AcidResource {
    @Inject
    TableAnswers tables;

    @GET
    @Operation(
            operationId = "listAcids",
            summary = "The acids that can be dosed",
            description =
                    "Each with its strengths: hazards by strength are in the safety notes of the answers that use it.")
    @APIResponse(
            responseCode = "200",
            description = "The table.",
            content = @Content(schema = @Schema(implementation = AcidsResponse.class)))
    public Response list(@Context Request request) {
        return tables.of(request, AcidsResponse.current());
    }
}

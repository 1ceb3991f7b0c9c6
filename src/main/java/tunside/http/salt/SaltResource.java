package tunside.http.salt;

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

/** {@code GET /v1/salts}. */
@Path("/v1/salts")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Tables")
@NonBlocking
public final class SaltResource {
    @Inject
    TableAnswers tables;

    @GET
    @Operation(
            operationId = "listSalts",
            summary = "The salts and bases that can be weighed in",
            description = "What one gram brings into a litre.")
    @APIResponse(
            responseCode = "200",
            description = "The table.",
            content = @Content(schema = @Schema(implementation = SaltsResponse.class)))
    public Response list(@Context Request request) {
        return tables.of(request, SaltsResponse.current());
    }
}

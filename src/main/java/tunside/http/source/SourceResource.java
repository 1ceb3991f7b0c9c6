package tunside.http.source;

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

/** {@code GET /v1/sources}. */
@Path("/v1/sources")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Tables")
@NonBlocking
public final class SourceResource {
    @Inject
    TableAnswers tables;

    @GET
    @Operation(
            operationId = "listSources",
            summary = "Where the numbers come from",
            description = "Every publication or named kind of knowledge behind a value; answers name them by id.")
    @APIResponse(
            responseCode = "200",
            description = "Every source, once.",
            content = @Content(schema = @Schema(implementation = SourcesResponse.class)))
    public Response list(@Context Request request) {
        return tables.of(request, SourcesResponse.current());
    }
}

package tunside.http.mash;

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

/** {@code GET /v1/malts}. */
@Path("/v1/malts")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Tables")
@NonBlocking
public final class MaltResource {
    @Inject
    TableAnswers tables;

    @GET
    @Operation(
            operationId = "listMalts",
            summary = "Malt classes with their acidity and buffering",
            description =
                    "Generic classes only. Each value has its scatter, the number of lots measured and its source;"
                            + " classes without published data say so and are wide.")
    @APIResponse(
            responseCode = "200",
            description = "Every malt class.",
            content = @Content(schema = @Schema(implementation = MaltsResponse.class)))
    public Response list(@Context Request request) {
        return tables.of(request, MaltsResponse.current());
    }
}

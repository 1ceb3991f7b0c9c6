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

/** {@code GET /v1/ph-ranges}. */
@Path("/v1/ph-ranges")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Tables")
@NonBlocking
public final class PhRangeResource {
    @Inject
    TableAnswers tables;

    @GET
    @Operation(
            operationId = "listPhRanges",
            summary = "pH ranges that brewers work to",
            description = "Mash, wort, liquor and beer, each range with its source, all for cooled samples.")
    @APIResponse(
            responseCode = "200",
            description = "Every range.",
            content = @Content(schema = @Schema(implementation = PhRangesResponse.class)))
    public Response list(@Context Request request) {
        return tables.of(request, PhRangesResponse.current());
    }
}

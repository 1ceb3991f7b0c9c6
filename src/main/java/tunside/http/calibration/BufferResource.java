package tunside.http.calibration;

import io.smallrye.common.annotation.NonBlocking;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import tunside.http.table.TableAnswers;

/** {@code GET /v1/buffers}. */
@Path("/v1/buffers")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Tables")
@NonBlocking
public final class BufferResource {
    @Inject
    TableAnswers tables;

    @GET
    @Operation(
            operationId = "listBuffers",
            summary = "Buffers and their pH",
            description = "Primary standards, JIS and technical buffers with their pH against temperature; with a"
                    + " temperature also the pH there.")
    @APIResponse(
            responseCode = "200",
            description = "Every buffer.",
            content = @Content(schema = @Schema(implementation = BuffersResponse.class)))
    public Response list(
            @Context Request request,
            @Parameter(
                            description = "Temperature of the buffers, -10 to 100 degC. Only together with unit.",
                            schema =
                                    @Schema(
                                            type = SchemaType.NUMBER,
                                            format = "double",
                                            minimum = "-300",
                                            maximum = "1000"),
                            example = "25")
                    @QueryParam("temperature")
                    String temperature,
            @Parameter(
                            description = "Unit of the temperature. Only together with temperature.",
                            schema =
                                    @Schema(
                                            type = SchemaType.STRING,
                                            enumeration = {"degC", "degF"}),
                            example = "degC")
                    @QueryParam("unit")
                    String unit) {
        return tables.of(request, BuffersResponse.at(BufferQuery.toTemperature(temperature, unit)));
    }
}

package tunside.http.water;

import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** {@code POST /v1/water-analyses}; not on the event loop, since many sources and treatments take milliseconds. */
@Path("/v1/water-analyses")
@Consumes(MediaType.APPLICATION_JSON)
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Water")
public final class WaterAnalysisResource {

    @POST
    @Operation(
            operationId = "analyseWater",
            summary = "Judge a water report, blend and treat",
            description = "Reads reports in the units that laboratories print, holds each against itself and names the"
                    + " classic slips. Answers with ions, ion balance, alkalinity, hardness, residual alkalinity, dissolved"
                    + " carbon, saturation and pH of each source, of the blend and of what salts, acids, boiling and"
                    + " liming make of it.")
    @APIResponse(responseCode = "200", description = "The analysis.")
    public WaterAnalysisResponse analyse(WaterAnalysisRequest request) {
        return WaterAnalysisMapper.answer(request);
    }
}

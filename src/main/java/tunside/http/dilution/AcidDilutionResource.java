package tunside.http.dilution;

import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** {@code POST /v1/acid-dilutions}. Stages take milliseconds, so it runs on a worker thread. */
@Path("/v1/acid-dilutions")
@Consumes(MediaType.APPLICATION_JSON)
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Acid")
public final class AcidDilutionResource {
    @POST
    @Operation(
            operationId = "diluteAcid",
            summary = "Make a weaker acid safely",
            description =
                    "Says how much acid goes into how much water, how warm it gets, in which order to work and what to write"
                            + " on the bottle; with the hazards and supply limits before and after. What would get hot in one go is"
                            + " split into stages with cooling between.")
    public AcidDilutionResponse dilute(AcidDilutionRequest request) {
        return AcidDilutionMapper.answer(request);
    }
}

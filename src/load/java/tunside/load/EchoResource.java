package tunside.load;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.smallrye.common.annotation.NonBlocking;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.io.IOException;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.eclipse.microprofile.openapi.annotations.Operation;

/**
 * What the load is held against: JSON is read into a tree and a tree is written, without contract, checks and science. Its question
 * comes as bytes, so that the service's strict reader does not take it.
 */
@Path("/echo")
@Consumes(MediaType.APPLICATION_OCTET_STREAM)
@Produces(MediaType.APPLICATION_JSON)
@NonBlocking
public final class EchoResource {
    private final Map<String, JsonNode> answers = new ConcurrentHashMap<>();
    private final ObjectMapper mapper = new ObjectMapper();

    /** The question itself. */
    @POST
    @Operation(hidden = true)
    public JsonNode echo(byte[] question) throws IOException {
        return mapper.readTree(question);
    }

    /** Keeps an answer under a name. */
    @POST
    @Path("/answers/{name}")
    @Operation(hidden = true)
    public JsonNode keep(@PathParam("name") String name, byte[] answer) throws IOException {
        JsonNode read = mapper.readTree(answer);
        answers.put(name, read);
        return read;
    }

    /** The answer that was kept, so that both bodies are as long as those of a question of the service. */
    @POST
    @Path("/{name}")
    @Operation(hidden = true)
    public JsonNode answer(@PathParam("name") String name, byte[] question) throws IOException {
        JsonNode read = mapper.readTree(question);
        return read.isObject() ? answers.getOrDefault(name, read) : read;
    }
}

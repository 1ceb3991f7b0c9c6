package tunside.bench;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.validation.Validation;
import java.io.IOException;
import java.io.UncheckedIOException;
import tunside.http.json.BodyReader;
import tunside.http.json.StrictJson;

/** The service's JSON without the service: the same mapper, the same reader, the contract's own examples. */
public final class Json {
    private Json() {}

    /** The mapper as the service has it. */
    public static ObjectMapper mapper() {
        ObjectMapper mapper = new ObjectMapper();
        new StrictJson().customize(mapper);
        return mapper;
    }

    /** The reader of bodies. */
    public static BodyReader reader(ObjectMapper mapper) {
        return new BodyReader(
                mapper, Validation.buildDefaultValidatorFactory().getValidator());
    }

    /** The first example of an operation that was answered. */
    public static JsonNode example(ObjectMapper mapper, String operationId) {
        try {
            for (JsonNode example :
                    mapper.readTree(Json.class.getResourceAsStream("/examples/" + operationId + ".json"))) {
                if (example.get("status").asInt() == 200) {
                    return example;
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        throw new IllegalArgumentException("no example of " + operationId);
    }
}

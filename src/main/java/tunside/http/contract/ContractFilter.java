package tunside.http.contract;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.smallrye.openapi.OpenApiFilter;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.eclipse.microprofile.openapi.OASFactory;
import org.eclipse.microprofile.openapi.OASFilter;
import org.eclipse.microprofile.openapi.models.OpenAPI;
import org.eclipse.microprofile.openapi.models.Operation;
import org.eclipse.microprofile.openapi.models.PathItem;
import org.eclipse.microprofile.openapi.models.examples.Example;
import org.eclipse.microprofile.openapi.models.headers.Header;
import org.eclipse.microprofile.openapi.models.media.Content;
import org.eclipse.microprofile.openapi.models.media.MediaType;
import org.eclipse.microprofile.openapi.models.media.Schema;
import org.eclipse.microprofile.openapi.models.responses.APIResponse;
import tunside.http.json.ContractNames;
import tunside.quantity.ColourUnit;
import tunside.quantity.ConductivityUnit;
import tunside.quantity.DissolvedUnit;
import tunside.quantity.EquivalentUnit;
import tunside.quantity.MassUnit;
import tunside.quantity.PotentialUnit;
import tunside.quantity.StrengthUnit;
import tunside.quantity.TemperatureUnit;
import tunside.quantity.TimeUnit;
import tunside.quantity.VolumeUnit;

/**
 * Completes the generated contract: enums under the names that the JSON uses, the problem answers of every operation,
 * the examples of {@code /examples/<operationId>.json}, which a test executes, and which members an answer always has.
 * Runs when the contract is first asked for.
 */
@OpenApiFilter(OpenApiFilter.RunStage.RUNTIME_PER_REQUEST)
public final class ContractFilter implements OASFilter {
    private static final String JSON = "application/json";
    private static final String PROBLEM = "application/problem+json";
    private static final String OVERLOADED = "503";
    private static final BigDecimal LONGEST_WAIT = BigDecimal.valueOf(60);

    private static final List<Class<? extends Enum<?>>> UNITS = List.of(
            MassUnit.class,
            VolumeUnit.class,
            TemperatureUnit.class,
            PotentialUnit.class,
            TimeUnit.class,
            ColourUnit.class,
            StrengthUnit.class,
            DissolvedUnit.class,
            EquivalentUnit.class,
            ConductivityUnit.class);

    private static final Map<String, String> PROBLEMS_OF_GET = problems(
            "400", "A parameter is wrong; the problem says which and why.",
            "401", "This service asks for a key, and the request has none that it knows.",
            "406", "The answer does not exist in the form asked for.",
            "414", "The address is too long.",
            "431", "The headers are too large.",
            "500", "A fault of the service.",
            "503", "More work than the service can do now.");

    private static final Map<String, String> PROBLEMS_OF_POST = problems(
            "400", "The request has faults; the problem lists all of them.",
            "401", "This service asks for a key, and the request has none that it knows.",
            "406", "The answer does not exist in the form asked for.",
            "413", "The body is larger than 256 KiB, or than 16 MiB of lines.",
            "414", "The address is too long.",
            "415", "The body is neither JSON nor lines of JSON.",
            "422", "The request is valid but has no answer; the problem says what stands in the way.",
            "431", "The headers are too large.",
            "500", "A fault of the service.",
            "503", "More work than the service can do now.");

    private final ObjectMapper mapper = new ObjectMapper();

    @Override
    public void filterOpenAPI(OpenAPI contract) {
        if (contract.getComponents() == null || contract.getPaths() == null) {
            return;
        }
        contract.getComponents().getSchemas().forEach(ContractFilter::nameEnum);
        for (PathItem path : contract.getPaths().getPathItems().values()) {
            path.getOperations().forEach((method, operation) -> {
                boolean post = method == PathItem.HttpMethod.POST;
                (post ? PROBLEMS_OF_POST : PROBLEMS_OF_GET)
                        .forEach((status, description) ->
                                operation.getResponses().addAPIResponse(status, problem(status, description)));
                addExamples(operation);
                if (post) {
                    NdjsonContract.describe(operation, examples(operation.getOperationId()));
                    FormsContract.describe(operation, examples(operation.getOperationId()));
                }
            });
        }
        AnswersContract.describe(contract);
    }

    private static void nameEnum(String name, Schema schema) {
        if (schema.getEnumeration() == null) {
            return;
        }
        List<Object> names = new ArrayList<>();
        for (Class<? extends Enum<?>> unit : UNITS) {
            if (unit.getSimpleName().equals(name)) {
                for (Enum<?> constant : unit.getEnumConstants()) {
                    names.add(ContractNames.of(constant));
                }
            }
        }
        if (names.isEmpty()) {
            schema.getEnumeration().forEach(constant -> names.add(ContractNames.kebab(constant.toString())));
        }
        schema.setEnumeration(names);
    }

    private static APIResponse problem(String status, String description) {
        Content content = OASFactory.createContent()
                .addMediaType(
                        PROBLEM,
                        OASFactory.createMediaType()
                                .schema(OASFactory.createSchema().ref("#/components/schemas/Problem")));
        APIResponse response =
                OASFactory.createAPIResponse().description(description).content(content);
        return status.equals(OVERLOADED) ? response.addHeader("Retry-After", retryAfter()) : response;
    }

    private static Header retryAfter() {
        return OASFactory.createHeader()
                .description("Seconds to wait before the request is sent again.")
                .required(true)
                .schema(OASFactory.createSchema()
                        .addType(Schema.SchemaType.INTEGER)
                        .minimum(BigDecimal.ONE)
                        .maximum(LONGEST_WAIT));
    }

    private void addExamples(Operation operation) {
        JsonNode examples = examples(operation.getOperationId());
        examples.properties().forEach(entry -> {
            JsonNode example = entry.getValue();
            String status = example.get("status").asText();
            // a request that the contract itself refuses is no example of the contract's request
            if (example.has("request") && !status.equals("400")) {
                put(operation.getRequestBody().getContent().getMediaType(JSON), entry.getKey(), example, "request");
            }
            APIResponse response = operation.getResponses().getAPIResponse(status);
            put(
                    response.getContent().getMediaType(status.equals("200") ? JSON : PROBLEM),
                    entry.getKey(),
                    example,
                    "response");
        });
    }

    private void put(MediaType mediaType, String name, JsonNode example, String part) {
        Example model = OASFactory.createExample();
        model.setSummary(example.get("summary").asText());
        model.setValue(mapper.convertValue(example.get(part), Object.class));
        mediaType.addExample(name, model);
    }

    private JsonNode examples(String operationId) {
        String file = "/examples/" + operationId + ".json";
        try (InputStream in = ContractFilter.class.getResourceAsStream(file)) {
            return in == null ? mapper.createObjectNode() : mapper.readTree(in);
        } catch (IOException e) {
            throw new UncheckedIOException("reading " + file, e);
        }
    }

    private static Map<String, String> problems(String... pairs) {
        Map<String, String> problems = new LinkedHashMap<>();
        for (int i = 0; i < pairs.length; i += 2) {
            problems.put(pairs[i], pairs[i + 1]);
        }
        return problems;
    }
}

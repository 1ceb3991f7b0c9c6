package tunside.http.fuzz;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A contract as a test needs it: its operations, its schemas to look at, and its schemas to validate with. */
final class ContractSchemas {
    static final ObjectMapper MAPPER = new ObjectMapper();

    /** One operation; {@code request} is null for a table. */
    record Operation(String id, String method, String path, JsonNode node, JsonNode request, JsonNode response) {}

    private final JsonNode contract;
    private final SchemaRegistry registry = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12);
    private final Map<String, Schema> validators = new LinkedHashMap<>();

    ContractSchemas(JsonNode contract) {
        this.contract = contract;
    }

    List<Operation> operations() {
        List<Operation> operations = new ArrayList<>();
        for (Map.Entry<String, JsonNode> path : contract.get("paths").properties()) {
            for (Map.Entry<String, JsonNode> method : path.getValue().properties()) {
                JsonNode node = method.getValue();
                JsonNode request = node.at("/requestBody/content/application~1json");
                JsonNode response = node.at("/responses/200/content/application~1json/schema");
                operations.add(new Operation(
                        node.get("operationId").asText(),
                        method.getKey(),
                        path.getKey(),
                        node,
                        request.isMissingNode() ? null : request,
                        response));
            }
        }
        return operations;
    }

    /** A schema with its reference followed and, of alternatives, the first that is not null. */
    JsonNode followed(JsonNode schema) {
        if (schema.has("$ref")) {
            return followed(contract.at(schema.get("$ref").asText().substring(1)));
        }
        for (JsonNode alternative : schema.path("anyOf")) {
            if (!alternative.path("type").asText().equals("null")) {
                return followed(alternative);
            }
        }
        return schema;
    }

    JsonNode problem() {
        return MAPPER.createObjectNode().put("$ref", "#/components/schemas/Problem");
    }

    /** What a document breaks of a schema, in words; empty for a valid one. */
    synchronized List<String> faults(JsonNode schema, JsonNode document) {
        Schema validator = validators.computeIfAbsent(schema.toString(), key -> {
            ObjectNode whole = schema.deepCopy();
            whole.put("$schema", "https://json-schema.org/draft/2020-12/schema");
            whole.set("components", contract.get("components"));
            return registry.getSchema(whole);
        });
        return validator.validate(document).stream()
                .map(error -> error.getInstanceLocation() + " " + error.getMessage())
                .toList();
    }

    /** A copy without null members, which the service takes as left out. */
    static JsonNode withoutNulls(JsonNode node) {
        if (node instanceof ObjectNode object) {
            ObjectNode copy = MAPPER.createObjectNode();
            object.properties().forEach(member -> {
                if (!member.getValue().isNull()) {
                    copy.set(member.getKey(), withoutNulls(member.getValue()));
                }
            });
            return copy;
        }
        if (node instanceof ArrayNode array) {
            ArrayNode copy = MAPPER.createArrayNode();
            array.forEach(item -> copy.add(withoutNulls(item)));
            return copy;
        }
        return node;
    }
}

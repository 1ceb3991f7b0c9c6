package tunside.http.brewday;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Map;

/**
 * One question of the brew day.
 *
 * @param number from 1
 * @param name of the step and of the shell variable that holds its answer
 * @param operation that answers, by its operationId
 * @param path of the operation
 * @param say what happens in the brewery
 * @param show JSON Pointers into the answer that the story prints
 * @param template the request; {@code {"$from": step, "at": pointer}} stands for a part of an earlier answer
 */
record Step(
        int number,
        String name,
        String operation,
        String path,
        String say,
        java.util.List<String> show,
        JsonNode template) {
    static final String FROM = "$from";

    /** Name of the contract's example. */
    String example() {
        return "brew-day-%d-%s".formatted(number, name);
    }

    /** The request, with what earlier steps answered. */
    JsonNode request(Map<String, JsonNode> answers) {
        return filled(template, answers);
    }

    private JsonNode filled(JsonNode node, Map<String, JsonNode> answers) {
        if (node.has(FROM)) {
            JsonNode part =
                    answers.get(node.get(FROM).asText()).at(node.get("at").asText());
            if (part.isMissingNode()) {
                throw new IllegalStateException("step %s: nothing at %s".formatted(name, node));
            }
            return part;
        }
        if (node.isObject()) {
            ObjectNode copy = ((ObjectNode) node).objectNode();
            node.properties().forEach(member -> copy.set(member.getKey(), filled(member.getValue(), answers)));
            return copy;
        }
        if (node.isArray()) {
            ArrayNode copy = ((ArrayNode) node).arrayNode();
            node.forEach(item -> copy.add(filled(item, answers)));
            return copy;
        }
        return node;
    }
}

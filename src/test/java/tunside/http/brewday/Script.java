package tunside.http.brewday;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** The brew day as a shell script: curl asks, jq hands parts of an answer to the next question. */
final class Script {
    private static final int WIDTH = 110;

    private Script() {}

    static String of(List<Step> steps) {
        StringBuilder script = new StringBuilder(
                "post() { curl -s \"${TUNSIDE:-http://localhost:8080}$1\" -H 'Content-Type: application/json' -d @-; }\n");
        for (Step step : steps) {
            script.append("\n# %d. %s\n".formatted(step.number(), step.say()))
                    .append("%s=$(post %s <<JSON\n".formatted(variable(step.name()), step.path()))
                    .append(json(step.template(), ""))
                    .append("\nJSON\n)\n");
            String shown = step.show().stream().map(Script::jqPath).collect(Collectors.joining(", "));
            script.append("jq -c '[%s]' <<<\"$%s\"\n".formatted(shown, variable(step.name())));
        }
        return script.toString();
    }

    private static String variable(String name) {
        return name.replace('-', '_');
    }

    private static String json(JsonNode node, String indent) {
        String line = line(node);
        if (line.length() + indent.length() <= WIDTH || !node.isContainerNode() || node.has(Step.FROM)) {
            return line;
        }
        List<String> members = new ArrayList<>();
        String deeper = indent + " ";
        if (node.isObject()) {
            node.properties()
                    .forEach(member ->
                            members.add(deeper + "\"" + member.getKey() + "\": " + json(member.getValue(), deeper)));
            return "{\n" + String.join(",\n", members) + "\n" + indent + "}";
        }
        node.forEach(item -> members.add(deeper + json(item, deeper)));
        return "[\n" + String.join(",\n", members) + "\n" + indent + "]";
    }

    private static String line(JsonNode node) {
        if (node.has(Step.FROM)) {
            return "$(jq -c '%s' <<<\"$%s\")"
                    .formatted(
                            jqPath(node.get("at").asText()),
                            variable(node.get(Step.FROM).asText()));
        }
        if (node.isObject()) {
            return node.properties().stream()
                    .map(member -> "\"" + member.getKey() + "\": " + line(member.getValue()))
                    .collect(Collectors.joining(", ", "{", "}"));
        }
        if (node.isArray()) {
            List<String> items = new ArrayList<>();
            node.forEach(item -> items.add(line(item)));
            return "[" + String.join(", ", items) + "]";
        }
        return node.toString();
    }

    private static String jqPath(String pointer) {
        return java.util.Arrays.stream(pointer.substring(1).split("/"))
                .map(part -> part.matches("\\d+") ? "[" + part + "]" : "." + part)
                .collect(Collectors.joining());
    }
}

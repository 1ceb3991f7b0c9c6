package tunside.http.contract;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/**
 * What a client of an older contract would trip over in a newer one. In a request more may be taken, never less; in an
 * answer less may be given by way of range, never another thing or nothing where something was promised.
 */
final class ContractDifference {
    private final JsonNode older;
    private final JsonNode newer;
    private final List<String> breaks = new ArrayList<>();
    private final Set<String> compared = new HashSet<>();

    private ContractDifference(JsonNode older, JsonNode newer) {
        this.older = older;
        this.newer = newer;
    }

    /** Every breaking change, in words with its place; empty where a client of the older contract notices nothing. */
    static List<String> breaks(JsonNode older, JsonNode newer) {
        ContractDifference difference = new ContractDifference(older, newer);
        difference.comparePaths();
        return difference.breaks;
    }

    private void comparePaths() {
        for (Map.Entry<String, JsonNode> path : older.path("paths").properties()) {
            for (Map.Entry<String, JsonNode> method : path.getValue().properties()) {
                String at = method.getKey() + " " + path.getKey();
                JsonNode now = newer.path("paths").path(path.getKey()).path(method.getKey());
                if (now.isMissingNode()) {
                    breaks.add(at + " is gone");
                } else {
                    compareOperation(at, method.getValue(), now);
                }
            }
        }
    }

    private void compareOperation(String at, JsonNode was, JsonNode now) {
        if (!was.path("operationId").equals(now.path("operationId"))) {
            breaks.add(at + " has another operationId: generated clients call it by that name");
        }
        for (JsonNode parameter : now.path("parameters")) {
            JsonNode before = named(was.path("parameters"), parameter);
            if (before == null) {
                if (parameter.path("required").asBoolean()) {
                    breaks.add(at + " needs a new parameter " + parameter.get("name"));
                }
            } else {
                compare(at + " " + parameter.get("name"), before.path("schema"), parameter.path("schema"), true);
                if (parameter.path("required").asBoolean()
                        && !before.path("required").asBoolean()) {
                    breaks.add(at + " needs the parameter " + parameter.get("name"));
                }
            }
        }
        for (JsonNode parameter : was.path("parameters")) {
            if (named(now.path("parameters"), parameter) == null) {
                breaks.add(at + " lost the parameter " + parameter.get("name"));
            }
        }
        compareContent(at + " request", was.at("/requestBody/content"), now.at("/requestBody/content"), true);
        for (Map.Entry<String, JsonNode> response : was.path("responses").properties()) {
            JsonNode after = now.path("responses").path(response.getKey());
            if (after.isMissingNode()) {
                if (response.getKey().startsWith("2")) {
                    breaks.add(at + " no longer answers " + response.getKey());
                }
            } else {
                String answer = at + " " + response.getKey();
                compareContent(answer, response.getValue().path("content"), after.path("content"), false);
                response.getValue().path("headers").fieldNames().forEachRemaining(name -> {
                    if (!after.path("headers").has(name)) {
                        breaks.add(answer + " lost its header " + name);
                    }
                });
            }
        }
    }

    private static JsonNode named(JsonNode parameters, JsonNode wanted) {
        for (JsonNode parameter : parameters) {
            if (parameter.path("name").equals(wanted.path("name"))
                    && parameter.path("in").equals(wanted.path("in"))) {
                return parameter;
            }
        }
        return null;
    }

    private void compareContent(String at, JsonNode was, JsonNode now, boolean request) {
        for (Map.Entry<String, JsonNode> type : was.properties()) {
            if (!now.has(type.getKey())) {
                breaks.add(at + " is no longer there as " + type.getKey());
            } else {
                compare(
                        at,
                        type.getValue().path("schema"),
                        now.path(type.getKey()).path("schema"),
                        request);
            }
        }
    }

    private void compare(String at, JsonNode wasRaw, JsonNode nowRaw, boolean request) {
        if (!compared.add(
                wasRaw.path("$ref").asText(at) + " " + nowRaw.path("$ref").asText(at) + " " + request)) {
            return;
        }
        String place = wasRaw.has("$ref") ? wasRaw.get("$ref").asText().replaceAll(".*/", "") : at;
        JsonNode was = followed(older, wasRaw);
        JsonNode now = followed(newer, nowRaw);
        if (nullable(wasRaw) != nullable(nowRaw) && nullable(wasRaw) == request) {
            breaks.add(place + (request ? " no longer takes null" : " may now be null"));
        }
        if (!type(was).equals(type(now))) {
            boolean wider = request ? widens(type(was), type(now)) : widens(type(now), type(was));
            if (!wider) {
                breaks.add(place + " was " + type(was) + " and is " + type(now));
            }
        }
        compareEnums(place, was, now, request);
        compareBounds(place, was, now, request);
        compareMembers(place, was, now, request);
        if (was.has("items") && now.has("items")) {
            compare(place + "/items", was.get("items"), now.get("items"), request);
        }
        compareChoices(place, was.path("oneOf"), now.path("oneOf"), request);
    }

    /** A request may take further choices at the end. */
    private void compareChoices(String at, JsonNode was, JsonNode now, boolean request) {
        if (request ? now.size() < was.size() : now.size() != was.size()) {
            breaks.add("%s had %d choices and has %d".formatted(at, was.size(), now.size()));
            return;
        }
        for (int i = 0; i < was.size(); i++) {
            compare(at + "/choice " + i, was.get(i), now.get(i), request);
        }
    }

    private static boolean widens(String from, String to) {
        return from.equals("integer") && to.equals("number");
    }

    private static void values(JsonNode schema, Set<String> into) {
        schema.path("enum").forEach(value -> into.add(value.asText()));
    }

    private void compareEnums(String at, JsonNode was, JsonNode now, boolean request) {
        Set<String> before = new HashSet<>();
        Set<String> after = new HashSet<>();
        values(was, before);
        values(now, after);
        if (!before.isEmpty() || !after.isEmpty()) {
            if (request && !after.isEmpty() && (before.isEmpty() || !after.containsAll(before))) {
                breaks.add(at + " no longer takes " + without(before, after));
            }
            if (!request && !before.isEmpty() && !after.containsAll(before)) {
                breaks.add(at + " no longer answers " + without(before, after));
            }
        }
    }

    private static Set<String> without(Set<String> all, Set<String> some) {
        Set<String> rest = new TreeSet<>(all);
        rest.removeAll(some);
        return rest;
    }

    /** A request's bounds may only widen. An answer's are what the model gives and may move within what was promised. */
    private void compareBounds(String at, JsonNode was, JsonNode now, boolean request) {
        for (String low : List.of("minimum", "minLength", "minItems")) {
            bound(at, low, was, now, request, -1);
        }
        for (String high : List.of("maximum", "maxLength", "maxItems")) {
            bound(at, high, was, now, request, 1);
        }
        if (request && now.has("pattern") && !now.path("pattern").equals(was.path("pattern"))) {
            breaks.add(at + " has another pattern");
        }
    }

    private void bound(String at, String name, JsonNode was, JsonNode now, boolean request, int outwards) {
        double open = outwards * Double.POSITIVE_INFINITY;
        double before = was.has(name) ? was.get(name).asDouble() : open;
        double after = now.has(name) ? now.get(name).asDouble() : open;
        boolean narrower = outwards * after < outwards * before;
        boolean wider = outwards * after > outwards * before;
        if (request ? narrower : wider) {
            breaks.add("%s: %s was %s and is %s".formatted(at, name, was.path(name), now.path(name)));
        }
    }

    private void compareMembers(String at, JsonNode was, JsonNode now, boolean request) {
        for (Map.Entry<String, JsonNode> member : was.path("properties").properties()) {
            JsonNode after = now.path("properties").path(member.getKey());
            if (after.isMissingNode()) {
                breaks.add(at + " lost its member " + member.getKey());
            } else {
                compare(at + "/" + member.getKey(), member.getValue(), after, request);
            }
        }
        Set<String> before = new HashSet<>();
        Set<String> after = new HashSet<>();
        was.path("required").forEach(name -> before.add(name.asText()));
        now.path("required").forEach(name -> after.add(name.asText()));
        if (request && !before.containsAll(after)) {
            breaks.add(at + " needs " + without(after, before));
        }
        if (!request && !after.containsAll(before)) {
            breaks.add(at + " no longer promises " + without(before, after));
        }
    }

    private static JsonNode followed(JsonNode contract, JsonNode schema) {
        if (schema.has("$ref")) {
            return followed(contract, contract.at(schema.get("$ref").asText().substring(1)));
        }
        for (JsonNode alternative : schema.path("anyOf")) {
            if (!alternative.path("type").asText().equals("null")) {
                return followed(contract, alternative);
            }
        }
        return schema;
    }

    private static boolean nullable(JsonNode schema) {
        if (schema.has("anyOf")) {
            for (JsonNode alternative : schema.get("anyOf")) {
                if (alternative.path("type").asText().equals("null")) {
                    return true;
                }
            }
        }
        for (JsonNode type : schema.path("type")) {
            if (type.asText().equals("null")) {
                return true;
            }
        }
        return false;
    }

    private static String type(JsonNode schema) {
        JsonNode type = schema.path("type");
        return type.isArray() ? type.get(0).asText() : type.asText();
    }
}

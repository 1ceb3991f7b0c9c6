package tunside.http.fuzz;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;

/**
 * Makes bodies for one operation from its schema and its examples: some that fit, some on the edge of what fits, some that
 * mean harm. The same seed gives the same bodies.
 */
final class RequestMaker {
    /** Stands in every harmful text, so that an answer that gives it back can be told. */
    static final String MARK = "<img src=x onerror=alert(1)>";

    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private static final List<String> HARMFUL_TEXTS = List.of(
            MARK,
            "\"" + MARK + "'&",
            "</script>" + MARK,
            "%s%n${7*7}{{7*7}}#{7*7}",
            "'; DROP TABLE malts; --",
            "../../../../etc/passwd",
            "\r\nX-Planted: yes",
            "\u0000\u0007\u001b[31m",
            "\u202e\ufeff\u2028",
            "\ud83c\udf7a".repeat(100),
            "a".repeat(3999),
            "",
            " ",
            "null",
            "NaN",
            "-0");

    private static final double[] EDGES = {
        0,
        -0.0,
        1,
        -1,
        5.4,
        7,
        14,
        1e-12,
        -1e-12,
        1e-300,
        Double.MIN_VALUE,
        1e6,
        1e12,
        -1e12,
        1e300,
        -Double.MAX_VALUE,
        273.15,
        -273.15
    };

    private final ContractSchemas schemas;
    private final SplittableRandom random;
    private final JsonNode schema;
    private final List<JsonNode> examples = new ArrayList<>();
    private final Map<String, List<JsonNode>> seen = new LinkedHashMap<>();

    RequestMaker(ContractSchemas schemas, JsonNode request, List<JsonNode> corpus, long seed) {
        this.schemas = schemas;
        this.schema = request.get("schema");
        this.random = new SplittableRandom(seed);
        request.path("examples").forEach(example -> examples.add(example.get("value")));
        corpus.forEach(this::learn);
    }

    private void learn(JsonNode node) {
        node.properties().forEach(member -> {
            seen.computeIfAbsent(member.getKey(), key -> new ArrayList<>()).add(member.getValue());
            learn(member.getValue());
        });
        if (node.isArray()) {
            node.forEach(this::learn);
        }
    }

    /** The next body. */
    byte[] next() {
        int kind = random.nextInt(100);
        if (kind < 30) {
            return bytes(mutated());
        }
        return kind < 75
                ? bytes(generated(schema, "", 0, kind < 55))
                : broken(bytes(kind < 94 ? mutated() : example()));
    }

    private static byte[] bytes(JsonNode node) {
        return node.toString().getBytes(StandardCharsets.UTF_8);
    }

    private JsonNode example() {
        return pick(examples).deepCopy();
    }

    private <T> T pick(List<T> list) {
        return list.get(random.nextInt(list.size()));
    }

    private boolean chance(double probability) {
        return random.nextDouble() < probability;
    }

    /** A value for a schema; a tame one keeps within the bounds that the schema states. */
    private JsonNode generated(JsonNode raw, String name, int depth, boolean tame) {
        if (!tame && chance(0.04)) {
            return harmful();
        }
        if (seen.containsKey(name) && chance(tame ? 0.9 : 0.3)) {
            return pick(seen.get(name)).deepCopy();
        }
        JsonNode one = schemas.followed(raw);
        if (one.has("enum")) {
            return one.get("enum").get(random.nextInt(one.get("enum").size())).deepCopy();
        }
        JsonNode type = one.path("type").isArray() ? one.get("type").get(0) : one.path("type");
        return switch (type.asText()) {
            case "object" -> object(one, depth, tame);
            case "array" -> array(one, depth, tame);
            case "number" -> NODES.numberNode(number(one, tame));
            case "integer" -> NODES.numberNode((long) number(one, tame));
            case "boolean" -> NODES.booleanNode(random.nextInt(2) == 0);
            default -> NODES.textNode(text(name, tame));
        };
    }

    private ObjectNode object(JsonNode one, int depth, boolean tame) {
        ObjectNode object = NODES.objectNode();
        List<String> required = new ArrayList<>();
        one.path("required").forEach(member -> required.add(member.asText()));
        double optional = depth > 3 ? 0.1 : 0.35;
        for (Map.Entry<String, JsonNode> member : one.path("properties").properties()) {
            boolean wanted = required.contains(member.getKey()) ? tame || chance(0.95) : chance(optional);
            if (wanted) {
                object.set(member.getKey(), generated(member.getValue(), member.getKey(), depth + 1, tame));
            }
        }
        return object;
    }

    private ArrayNode array(JsonNode one, int depth, boolean tame) {
        int least = one.path("minItems").asInt(0);
        int most = one.path("maxItems").asInt(8);
        int size = tame || chance(0.8)
                ? Math.min(most, least + random.nextInt(4))
                : pick(List.of(0, least, Math.min(most, 300), Math.min(most, 300) + 1));
        ArrayNode array = NODES.arrayNode();
        JsonNode first = generated(one.get("items"), "", depth + 1, tame);
        for (int i = 0; i < size; i++) {
            array.add(size > 20 ? first : generated(one.get("items"), "", depth + 1, tame));
        }
        return array;
    }

    private double number(JsonNode one, boolean tame) {
        double low = one.path("minimum").asDouble(-1000);
        double high = one.path("maximum").asDouble(1000);
        if (tame) {
            return switch (random.nextInt(4)) {
                case 0 -> low;
                case 1 -> high;
                case 2 -> rounded(low + (high - low) * random.nextDouble());
                // bounds are wide and the values that mean something are small
                default -> Math.max(low, Math.min(high, rounded(Math.exp(random.nextDouble() * 8 - 3))));
            };
        }
        return switch (random.nextInt(5)) {
            case 0 -> Math.nextDown(low);
            case 1 -> Math.nextUp(high);
            case 2 -> rounded(low + (high - low) * random.nextDouble());
            default -> EDGES[random.nextInt(EDGES.length)];
        };
    }

    private static double rounded(double value) {
        return Math.round(value * 1000) / 1000.0;
    }

    private String text(String name, boolean tame) {
        if (!tame) {
            return pick(HARMFUL_TEXTS);
        }
        return name.isEmpty() ? "a" : name.toLowerCase(java.util.Locale.ROOT);
    }

    private JsonNode harmful() {
        return switch (random.nextInt(9)) {
            case 0 -> NODES.nullNode();
            case 1 -> NODES.booleanNode(true);
            case 2 -> NODES.objectNode();
            case 3 -> NODES.arrayNode().add(NODES.arrayNode()).add(1);
            case 4 -> NODES.objectNode().put("value", "5").put("unit", pick(HARMFUL_TEXTS));
            case 5 -> NODES.objectNode().put(pick(HARMFUL_TEXTS.subList(0, 8)), 1);
            case 6, 7 -> NODES.numberNode(EDGES[random.nextInt(EDGES.length)]);
            default -> NODES.textNode(pick(HARMFUL_TEXTS));
        };
    }

    /** An example with up to three places changed. */
    private JsonNode mutated() {
        JsonNode body = example();
        for (int i = random.nextInt(4); i > 0; i--) {
            mutate(body);
        }
        return body;
    }

    private void mutate(JsonNode body) {
        List<JsonNode> containers = new ArrayList<>();
        containers(body, containers);
        JsonNode chosen = pick(containers);
        if (chosen instanceof ObjectNode object) {
            List<String> names = new ArrayList<>();
            object.fieldNames().forEachRemaining(names::add);
            if (names.isEmpty() || chance(0.1)) {
                object.set(chance(0.5) ? "zymurgy" : pick(HARMFUL_TEXTS), harmful());
                return;
            }
            String name = pick(names);
            switch (random.nextInt(6)) {
                case 0 -> object.remove(name);
                case 1 -> object.putNull(name);
                case 2 ->
                    object.set(
                            name,
                            pick(seen.getOrDefault(name, List.of(NODES.nullNode())))
                                    .deepCopy());
                case 3 -> object.set(pick(new ArrayList<>(seen.keySet())), object.get(name));
                case 4 ->
                    object.set(
                            name,
                            object.get(name).isNumber() ? near(object.get(name).asDouble()) : harmful());
                default -> object.set(name, harmful());
            }
        } else if (chosen instanceof ArrayNode array && !array.isEmpty()) {
            switch (random.nextInt(4)) {
                case 0 -> array.removeAll();
                case 1 -> array.add(harmful());
                case 2 -> array.remove(random.nextInt(array.size()));
                default -> {
                    JsonNode item = array.get(random.nextInt(array.size())).deepCopy();
                    for (int i = pick(List.of(1, 2, 65, 201)); i > 0; i--) {
                        array.add(item);
                    }
                }
            }
        }
    }

    private JsonNode near(double value) {
        return NODES.numberNode(
                switch (random.nextInt(6)) {
                    case 0 -> -value;
                    case 1 -> value * 1000;
                    case 2 -> value / 1000;
                    case 3 -> value + random.nextDouble() - 0.5;
                    case 4 -> 0;
                    default -> EDGES[random.nextInt(EDGES.length)];
                });
    }

    private static void containers(JsonNode node, List<JsonNode> found) {
        if (node.isContainerNode()) {
            found.add(node);
            node.forEach(inside -> containers(inside, found));
        }
    }

    /** A body that is no proper JSON any more, or not quite. */
    private byte[] broken(byte[] good) {
        String text = new String(good, StandardCharsets.UTF_8);
        String inside = text.substring(1);
        return switch (random.nextInt(14)) {
            case 0 -> Arrays.copyOf(good, random.nextInt(good.length));
            case 1 -> flipped(good);
            case 2 -> ("\ufeff" + text).getBytes(StandardCharsets.UTF_8);
            case 3 -> text.getBytes(StandardCharsets.UTF_16);
            case 4 -> ("{\"a\":1,\"a\":2," + inside).getBytes(StandardCharsets.UTF_8);
            case 5 -> (text + text).getBytes(StandardCharsets.UTF_8);
            case 6 -> ("{\"" + MARK + "\":" + "[".repeat(random.nextInt(1, 3000))).getBytes(StandardCharsets.UTF_8);
            case 7 ->
                text.replaceFirst(
                                "(?<=:)-?[0-9][0-9.eE+-]*",
                                pick(List.of(
                                        "1e999",
                                        "NaN",
                                        "-Infinity",
                                        "0x10",
                                        "01",
                                        "1_000",
                                        ".5",
                                        "5.",
                                        "1e-400",
                                        "9".repeat(39),
                                        "9".repeat(2000),
                                        "1e" + "9".repeat(30),
                                        "0." + "1".repeat(60))))
                        .getBytes(StandardCharsets.UTF_8);
            case 8 -> ("/* " + MARK + " */" + text).getBytes(StandardCharsets.UTF_8);
            case 9 -> text.replace('"', '\'').getBytes(StandardCharsets.UTF_8);
            case 10 -> ("\"" + MARK + "\"").getBytes(StandardCharsets.UTF_8);
            case 11 -> ("{\"\\ud800\":\"\\udfff\"," + inside).getBytes(StandardCharsets.UTF_8);
            case 12 -> MARK.getBytes(StandardCharsets.UTF_8);
            default ->
                ("{\"__proto__\":{\"x\":1},\"@class\":\"java.lang.Runtime\"," + inside)
                        .getBytes(StandardCharsets.UTF_8);
        };
    }

    private byte[] flipped(byte[] good) {
        byte[] bytes = good.clone();
        for (int i = random.nextInt(1, 4); i > 0; i--) {
            bytes[random.nextInt(bytes.length)] = (byte) random.nextInt(256);
        }
        return bytes;
    }
}

package tunside.http.contract;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;

/**
 * No client of a released contract is broken by the one that is committed now. A release records it, without its examples, with
 * {@code -Dcontract.release=true}; what is recorded once is not written over.
 */
class ContractDifferenceTest {
    private static final YAMLMapper YAML = new YAMLMapper();
    private static final Path COMMITTED = Path.of("openapi/tunside.yaml");
    private static final Path RELEASED = Path.of("openapi/released");

    /** A change, and a word of what is said about it; null where it breaks nothing. */
    private record Change(String name, Consumer<ObjectNode> made, String said) {}

    /** As committed; read once, since it is long. */
    private static final ObjectNode CONTRACT = committed();

    /** As a release records it. */
    private static final ObjectNode RELEASE = released();

    private static ObjectNode committed() {
        try {
            return (ObjectNode) YAML.readTree(COMMITTED.toFile());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Without examples, which break no client: they are nine tenths of it. */
    private static ObjectNode released() {
        ObjectNode contract = CONTRACT.deepCopy();
        dropExamples(contract, false);
        return contract;
    }

    private static void dropExamples(JsonNode node, boolean members) {
        if (!members && node instanceof ObjectNode object) {
            object.remove(List.of("example", "examples"));
        }
        node.properties()
                .forEach(entry -> dropExamples(
                        entry.getValue(), !members && entry.getKey().equals("properties")));
        if (node.isArray()) {
            node.forEach(item -> dropExamples(item, false));
        }
    }

    @Test
    @EnabledIfSystemProperty(named = "contract.release", matches = "true")
    void aReleaseRecordsItsContract() throws IOException {
        Files.createDirectories(RELEASED);
        Files.writeString(
                RELEASED.resolve(RELEASE.at("/info/version").asText() + ".yaml"),
                YAML.writeValueAsString(RELEASE),
                StandardOpenOption.CREATE_NEW,
                StandardOpenOption.WRITE);
    }

    @TestFactory
    Stream<DynamicTest> noReleasedContractIsBroken() throws IOException {
        if (!Files.exists(RELEASED)) {
            return Stream.of(DynamicTest.dynamicTest("nothing is released yet", () -> {}));
        }
        try (Stream<Path> files = Files.list(RELEASED)) {
            return files.filter(file -> file.toString().endsWith(".yaml")).sorted().toList().stream()
                    .map(file -> DynamicTest.dynamicTest(
                            file.getFileName().toString(),
                            () -> assertThat(ContractDifference.breaks(YAML.readTree(file.toFile()), RELEASE))
                                    .isEmpty()));
        }
    }

    @Test
    void aContractDoesNotDifferFromItselfWithOrWithoutExamples() {
        assertThat(ContractDifference.breaks(CONTRACT, CONTRACT)).isEmpty();
        assertThat(ContractDifference.breaks(RELEASE, CONTRACT)).isEmpty();
        assertThat(ContractDifference.breaks(CONTRACT, RELEASE)).isEmpty();
        assertThat(RELEASE.findValues("examples")).isEmpty();
        assertThat(CONTRACT.findValues("examples")).isNotEmpty();
    }

    private static ObjectNode at(ObjectNode contract, String pointer) {
        JsonNode node = contract.at(pointer);
        assertThat(node.isObject()).as(pointer).isTrue();
        return (ObjectNode) node;
    }

    private static ObjectNode schema(ObjectNode contract, String name) {
        return at(contract, "/components/schemas/" + name);
    }

    @TestFactory
    Stream<DynamicTest> everyKindOfChangeIsJudged() {
        String dose = "/paths/~1v1~1acid-doses/post";
        return Stream.of(
                        new Change("an address goes", c -> at(c, "/paths").remove("/v1/acid-doses"), "is gone"),
                        new Change(
                                "an operation is renamed", c -> at(c, dose).put("operationId", "dose"), "operationId"),
                        new Change(
                                "a request loses a member",
                                c -> at(c, "/components/schemas/MassQuantity/properties")
                                        .remove("unit"),
                                "lost its member unit"),
                        new Change(
                                "an answer loses a member",
                                c -> at(c, "/components/schemas/Check/properties")
                                        .remove("code"),
                                "lost its member code"),
                        new Change(
                                "a unit is no longer taken",
                                c -> ((ArrayNode) schema(c, "MassUnit").get("enum")).remove(0),
                                "no longer takes"),
                        new Change(
                                "a request needs more",
                                c -> schema(c, "AcidDoseRequest")
                                        .withArray("required")
                                        .add("acid"),
                                "needs [acid]"),
                        new Change(
                                "a request needs a new member",
                                c -> {
                                    at(c, "/components/schemas/AcidDoseRequest/properties")
                                            .putObject("colour")
                                            .put("type", "string");
                                    schema(c, "AcidDoseRequest")
                                            .withArray("required")
                                            .add("colour");
                                },
                                "needs [colour]"),
                        new Change(
                                "an outcome is no longer answered",
                                c -> ((ArrayNode) schema(c, "DoseResult").get("enum")).remove(0),
                                "no longer answers"),
                        new Change(
                                "an answer no longer promises a member",
                                c -> ((ArrayNode) schema(c, "Check").get("required")).remove(0),
                                "no longer promises"),
                        new Change(
                                "an answer loses a header",
                                c -> at(c, dose + "/responses/503").remove("headers"),
                                "lost its header Retry-After"),
                        new Change(
                                "a choice goes",
                                c -> ((ArrayNode) schema(c, "VaryEnd").get("oneOf")).remove(0),
                                "had 2 choices and has 1"),
                        new Change(
                                "a request's bound narrows",
                                c -> at(c, "/components/schemas/AcidDoseRequest/properties/targetPh")
                                        .put("maximum", 6),
                                "maximum was"),
                        new Change(
                                "a request's member changes its type",
                                c -> at(c, "/components/schemas/AcidDoseRequest/properties/targetPh")
                                        .put("type", "string"),
                                "was number and is string"),
                        new Change(
                                "an answer's bound widens",
                                c -> at(c, "/components/schemas/Check/properties/code")
                                        .put("maxLength", 800),
                                "maxLength was"),
                        new Change(
                                "a form of answer goes",
                                c -> at(c, dose + "/responses/200/content").remove("application/x-ndjson"),
                                "no longer there as application/x-ndjson"),
                        new Change(
                                "a parameter becomes needed",
                                c -> at(c, "/paths/~1v1~1acids/get")
                                        .withArray("parameters")
                                        .addObject()
                                        .put("name", "strength")
                                        .put("in", "query")
                                        .put("required", true),
                                "needs a new parameter"),
                        new Change(
                                "a unit is added",
                                c -> ((ArrayNode) schema(c, "MassUnit").get("enum")).add("t"),
                                null),
                        new Change(
                                "a request's bound widens",
                                c -> at(c, "/components/schemas/AcidDoseRequest/properties/targetPh")
                                        .put("maximum", 15),
                                null),
                        new Change(
                                "an optional member is added",
                                c -> at(c, "/components/schemas/AcidDoseRequest/properties")
                                        .putObject("colour")
                                        .put("type", "string"),
                                null),
                        new Change(
                                "an answer says more",
                                c -> {
                                    at(c, "/components/schemas/Check/properties")
                                            .putObject("since")
                                            .put("type", "string");
                                    schema(c, "Check").withArray("required").add("since");
                                },
                                null),
                        new Change(
                                "an answer gets a header",
                                c -> at(c, dose + "/responses/503/headers").putObject("X-More"),
                                null),
                        new Change("an address is added", c -> at(c, "/paths").putObject("/v1/hops"), null))
                .map(change -> DynamicTest.dynamicTest(change.name, () -> {
                    ObjectNode changed = RELEASE.deepCopy();
                    change.made.accept(changed);
                    List<String> breaks = ContractDifference.breaks(RELEASE, changed);
                    if (change.said == null) {
                        assertThat(breaks).isEmpty();
                    } else {
                        assertThat(breaks)
                                .isNotEmpty()
                                .anySatisfy(said -> assertThat(said).contains(change.said));
                    }
                }));
    }
}

package tunside.http;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Every example in the contract is the real answer. Record them with {@code -Dexamples.record=true}. */
@QuarkusTest
class ExamplesTest {
    private static final Path EXAMPLES = Path.of("src/main/resources/examples");
    private static final ObjectMapper MAPPER = new ObjectMapper().enable(SerializationFeature.INDENT_OUTPUT);

    /** Media types of other forms of an answer, each with the end of what a contract's reader needs to see of it. */
    private static final Map<String, String> FORMS = Map.of("image/svg+xml", "</desc>", "text/html", "</h1>");

    /** @param forms media types of its answer that have a shortened example */
    record Operation(String id, String method, String path, List<String> forms) {}

    @Test
    void everyOperationHasAnExampleOfItsAnswer() throws IOException {
        for (Operation operation : operations()) {
            Path file = file(operation);
            assertThat(file).exists();
            JsonNode examples = MAPPER.readTree(file.toFile());
            assertThat(examples)
                    .as(operation.id)
                    .anySatisfy(
                            example -> assertThat(example.get("status").asInt()).isEqualTo(200));
            if (operation.method.equals("post")) {
                assertThat(examples)
                        .as(operation.id)
                        .anySatisfy(example ->
                                assertThat(example.get("status").asInt()).isEqualTo(400));
            }
        }
    }

    @TestFactory
    Stream<DynamicTest> everyOtherFormHasAShortenedExampleOfTheRealAnswer() throws IOException {
        return operations().stream()
                .flatMap(operation -> operation.forms.stream()
                        .map(form -> DynamicTest.dynamicTest(
                                operation.id + ": " + form, () -> executeForm(operation, form))));
    }

    private static void executeForm(Operation operation, String form) throws IOException {
        ObjectNode examples = (ObjectNode) MAPPER.readTree(file(operation).toFile());
        ObjectNode example = (ObjectNode) StreamSupport.stream(examples.spliterator(), false)
                .filter(one -> one.get("status").asInt() == 200)
                .findFirst()
                .orElseThrow();
        Response response = given().contentType("application/json")
                .accept(form)
                .body(MAPPER.writeValueAsBytes(example.get("request")))
                .post(operation.path);
        assertThat(response.statusCode()).isEqualTo(200);
        String shortened = shortened(response.asString(), FORMS.get(form));
        if (Boolean.getBoolean("examples.record")) {
            example.withObject("/forms").put(form, shortened);
            Files.writeString(file(operation), MAPPER.writeValueAsString(examples) + "\n");
        }
        assertThat(example.path("forms").path(form).asText()).isEqualTo(shortened);
    }

    /** Without styles, up to a tag, closed so that it is well-formed again. */
    private static String shortened(String text, String last) {
        String head =
                text.substring(0, text.indexOf(last) + last.length()).replaceAll("(?s)<style>.*?</style>\\s*", "");
        return head + "<!-- and so on -->" + (last.equals("</desc>") ? "</svg>" : "</main></div></body></html>");
    }

    @TestFactory
    Stream<DynamicTest> everyExampleIsTheRealAnswer() throws IOException {
        List<DynamicTest> tests = new ArrayList<>();
        for (Operation operation : operations()) {
            if (Files.exists(file(operation))) {
                JsonNode examples = MAPPER.readTree(file(operation).toFile());
                examples.fieldNames()
                        .forEachRemaining(name -> tests.add(
                                DynamicTest.dynamicTest(operation.id + ": " + name, () -> execute(operation, name))));
            }
        }
        return tests.stream();
    }

    private static void execute(Operation operation, String name) throws IOException {
        ObjectNode examples = (ObjectNode) MAPPER.readTree(file(operation).toFile());
        ObjectNode example = (ObjectNode) examples.get(name);
        Response response = operation.method.equals("post")
                ? given().contentType("application/json")
                        .body(MAPPER.writeValueAsBytes(example.get("request")))
                        .post(operation.path)
                : given().get(operation.path
                        + (example.has("query") ? example.get("query").asText() : ""));
        JsonNode answer = MAPPER.readTree(response.asByteArray());
        if (Boolean.getBoolean("examples.record")) {
            example.put("status", response.statusCode());
            example.set("response", answer);
            Files.writeString(file(operation), MAPPER.writeValueAsString(examples) + "\n");
        }
        assertThat(response.statusCode()).isEqualTo(example.get("status").asInt());
        assertThat(answer).isEqualTo(example.get("response"));
        assertThat(answer.has("checks") && answer.has("safety") && answer.has("basis"))
                .as("the frame")
                .isTrue();
    }

    private static Path file(Operation operation) {
        return EXAMPLES.resolve(operation.id + ".json");
    }

    private static List<Operation> operations() throws IOException {
        JsonNode contract = MAPPER.readTree(given().queryParam("format", "json")
                .get("/q/openapi")
                .then()
                .statusCode(200)
                .extract()
                .asByteArray());
        List<Operation> operations = new ArrayList<>();
        for (Map.Entry<String, JsonNode> path : contract.get("paths").properties()) {
            for (Map.Entry<String, JsonNode> method : path.getValue().properties()) {
                JsonNode content = method.getValue().at("/responses/200/content");
                operations.add(new Operation(
                        method.getValue().get("operationId").asText(),
                        method.getKey(),
                        path.getKey(),
                        FORMS.keySet().stream().filter(content::has).sorted().toList()));
            }
        }
        return operations;
    }
}

package tunside.http;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.equalTo;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** What no endpoint may swallow: tried on every computation of the contract, with its own examples as the good request. */
@QuarkusTest
class BadInputTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();

    private record Bad(String name, String contentType, String body, int status, String inDetail) {}

    @TestFactory
    Stream<DynamicTest> everyComputationRefuses() throws IOException {
        List<DynamicTest> tests = new ArrayList<>();
        for (Map.Entry<String, JsonNode> path : contract().get("paths").properties()) {
            JsonNode post = path.getValue().get("post");
            if (post != null) {
                String good = MAPPER.writeValueAsString(
                        goodRequest(post.get("operationId").asText()));
                for (Bad bad : bads(good)) {
                    tests.add(DynamicTest.dynamicTest(
                            path.getKey() + ": " + bad.name, () -> refuses(path.getKey(), bad)));
                }
            }
        }
        return tests.stream();
    }

    private static List<Bad> bads(String good) {
        String json = "application/json";
        String member = good.substring(1, good.indexOf(':'));
        String inside = good.substring(1, good.length() - 1);
        return List.of(
                new Bad("an unknown member", json, "{\"zymurgy\": 1," + inside + "}", 400, "is not a member"),
                new Bad("a duplicate key", json, "{" + member + ": 1," + inside + "}", 400, "twice"),
                new Bad("a number in quotes", json, firstNumber(good, "\"2\""), 400, "number"),
                new Bad("NaN", json, firstNumber(good, "NaN"), 400, "NaN"),
                new Bad("1e999", json, firstNumber(good, "1e999"), 400, "finite number"),
                new Bad("trailing garbage", json, good + " {}", 400, "more than one"),
                new Bad("truncated JSON", json, good.substring(0, good.length() / 2), 400, "ends before"),
                new Bad("an empty body", json, "", 400, "empty"),
                new Bad("null", json, "null", 400, "null"),
                new Bad("an array", json, "[]", 400, "object"),
                new Bad("deep nesting", json, "{\"a\":".repeat(500) + "1" + "}".repeat(500), 400, "deep"),
                new Bad("a body of 1 MB", json, "{\"a\":\"" + "x".repeat(1 << 20) + "\"}", 413, null),
                new Bad("another content type", "text/plain", good, 415, null));
    }

    private static String firstNumber(String good, String replacement) {
        return good.replaceFirst("(?<=:)-?[0-9][0-9.eE+-]*", replacement);
    }

    private static void refuses(String path, Bad bad) throws IOException {
        Response response = given().header("Content-Type", bad.contentType)
                .body(bad.body.getBytes(StandardCharsets.UTF_8))
                .post(path);
        JsonNode problem = problem(response, bad.status);
        if (bad.inDetail != null) {
            assertThat(problem.get("errors"))
                    .isNotEmpty()
                    .anySatisfy(
                            error -> assertThat(error.get("detail").asText()).contains(bad.inDetail));
        }
    }

    @Test
    void anUnknownPathIsAProblem() throws IOException {
        problem(given().get("/v1/nothing-here"), 404);
        problem(given().get("/nothing"), 404);
    }

    @Test
    void aWrongMethodIsAProblemThatNamesTheRightOnes() throws IOException {
        for (Map.Entry<String, JsonNode> path : contract().get("paths").properties()) {
            problem(given().delete(path.getKey()), 405);
            problem(path.getValue().has("post") ? given().get(path.getKey()) : given().post(path.getKey()), 405);
        }
    }

    @Test
    void aFormThatDoesNotExistIsAProblem() throws IOException {
        problem(given().accept("application/x-nothing").get("/v1/sources"), 406);
    }

    @Test
    void aLongAddressAndLargeHeadersAreProblems() throws IOException {
        problem(given().get("/v1/sources?x=" + "y".repeat(3000)), 414);
        problem(given().header("X-Long", "y".repeat(9000)).get("/v1/sources"), 431);
    }

    private static JsonNode problem(Response response, int status) throws IOException {
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(status);
        assertThat(response.contentType()).startsWith("application/problem+json");
        JsonNode problem = MAPPER.readTree(response.asByteArray());
        assertThat(problem.get("status").asInt()).isEqualTo(status);
        assertThat(problem.get("type").asText()).startsWith("/problems/");
        assertThat(problem.get("title").asText()).isNotBlank();
        assertThat(problem.get("checks")).isNotEmpty();
        assertThat(problem.get("safety")).isNotEmpty();
        assertThat(response.asString()).doesNotContain("Exception").doesNotContain("jackson");
        return problem;
    }

    private static JsonNode contract() throws IOException {
        return MAPPER.readTree(
                given().queryParam("format", "json").get("/q/openapi").asByteArray());
    }

    private static JsonNode goodRequest(String operationId) throws IOException {
        JsonNode examples =
                MAPPER.readTree(BadInputTest.class.getResourceAsStream("/examples/" + operationId + ".json"));
        for (JsonNode example : examples) {
            if (example.get("status").asInt() == 200) {
                return (ObjectNode) example.get("request");
            }
        }
        throw new AssertionError("no good example of " + operationId);
    }

    @Test
    void ofVeryManyFaultsFiveHundredAreTold() {
        String reading =
                "{\"elapsed\": {\"value\": 1e6, \"unit\": \"min\"}, \"temperature\": {\"value\": 22, \"unit\": \"degC\"}}";
        given().contentType("application/json")
                .body("{\"liquid\": \"mash\", \"readings\": [" + String.join(",", Collections.nCopies(501, reading))
                        + "]}")
                .post("/v1/ph-readings")
                .then()
                .statusCode(400)
                .body("errors.size()", equalTo(500));
    }
}

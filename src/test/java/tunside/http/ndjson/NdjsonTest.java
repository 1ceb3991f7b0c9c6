package tunside.http.ndjson;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.io.IOException;
import java.net.URL;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Many questions in one body, on every computation of the contract. */
@QuarkusTest
class NdjsonTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();
    private static final String PATH = "/v1/mash-predictions";
    private static final int MEBIBYTE = 1024 * 1024;

    @Inject
    NdjsonRoutes routes;

    @TestHTTPResource
    URL service;

    private static Response post(String path, String body) {
        return given().header("Content-Type", NdjsonRoutes.MEDIA_TYPE)
                .body(body.getBytes(StandardCharsets.UTF_8))
                .post(path);
    }

    private static List<JsonNode> answers(Response response) throws IOException {
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(200);
        assertThat(response.contentType()).isEqualTo(NdjsonRoutes.MEDIA_TYPE);
        List<JsonNode> answers = new ArrayList<>();
        for (String line : response.asString().lines().toList()) {
            answers.add(MAPPER.readTree(line));
        }
        return answers;
    }

    private static Map<String, JsonNode> computations() throws IOException {
        Map<String, JsonNode> posts = new java.util.LinkedHashMap<>();
        JsonNode contract = MAPPER.readTree(
                given().queryParam("format", "json").get("/q/openapi").asByteArray());
        for (Map.Entry<String, JsonNode> path : contract.get("paths").properties()) {
            if (path.getValue().has("post")) {
                posts.put(path.getKey(), path.getValue().get("post"));
            }
        }
        return posts;
    }

    @TestFactory
    Stream<DynamicTest> everyComputationAnswersEachLineAsItAnswersJson() throws IOException {
        return computations().entrySet().stream()
                .map(post -> DynamicTest.dynamicTest(post.getKey(), () -> {
                    String examples =
                            "/examples/" + post.getValue().get("operationId").asText() + ".json";
                    StringBuilder body = new StringBuilder();
                    List<JsonNode> expected = new ArrayList<>();
                    for (JsonNode example : MAPPER.readTree(NdjsonTest.class.getResourceAsStream(examples))) {
                        body.append(example.get("request")).append('\n');
                        expected.add(example.get("response"));
                    }
                    List<JsonNode> answers = answers(post(post.getKey(), body.toString()));
                    assertThat(answers).hasSameSizeAs(expected);
                    for (int i = 0; i < answers.size(); i++) {
                        ObjectNode answer = (ObjectNode) answers.get(i);
                        JsonNode line = answer.remove("line");
                        assertThat(answer).isEqualTo(expected.get(i));
                        assertThat(line == null ? -1 : line.asInt()).isEqualTo(answer.has("status") ? i + 1 : -1);
                    }
                }));
    }

    @TestFactory
    Stream<DynamicTest> theContractsExampleIsTheRealAnswer() throws IOException {
        return computations().entrySet().stream()
                .map(post -> DynamicTest.dynamicTest(post.getKey(), () -> {
                    String question = example(post.getValue().get("requestBody"));
                    String answer = example(post.getValue().get("responses").get("200"));
                    List<JsonNode> lines = answers(post(post.getKey(), question));
                    assertThat(lines).hasSize(2);
                    for (int i = 0; i < 2; i++) {
                        assertThat(lines.get(i))
                                .isEqualTo(
                                        MAPPER.readTree(answer.lines().toList().get(i)));
                    }
                }));
    }

    private static String example(JsonNode holder) {
        return holder.get("content")
                .get(NdjsonRoutes.MEDIA_TYPE)
                .get("examples")
                .get("a-question-and-a-faulty-one")
                .get("value")
                .asText();
    }

    @Test
    void blankLinesAreSkippedAndTheLastLineNeedsNoLineFeed() throws IOException {
        List<JsonNode> answers = answers(post(PATH, "\n{\"a\":1}\r\n \t\r\n{\"b\":1}"));
        assertThat(answers).hasSize(2);
        assertThat(answers.get(0).get("line").asInt()).isEqualTo(2);
        assertThat(answers.get(1).get("line").asInt()).isEqualTo(4);
    }

    @Test
    void aBodyWithoutQuestionsHasNoAnswers() {
        Response response = post(PATH, "\n\n");
        assertThat(response.statusCode()).isEqualTo(200);
        assertThat(response.asString()).isEmpty();
    }

    @Test
    void aLineThatIsNoJsonGetsItsProblemAndTheNextAreAnswered() throws IOException {
        List<JsonNode> answers = answers(post(PATH, "{\"grist\n[1,\n" + good() + "\nnull\n"));
        assertThat(answers).hasSize(4);
        assertThat(answers.get(0).get("status").asInt()).isEqualTo(400);
        assertThat(answers.get(1).get("line").asInt()).isEqualTo(2);
        assertThat(answers.get(2).has("result")).isTrue();
        assertThat(answers.get(3).get("line").asInt()).isEqualTo(4);
        assertThat(answers.get(3).get("safety")).isNotEmpty();
    }

    @Test
    void aLineThatIsTooLongEndsTheAnswersWithItsProblem() throws IOException {
        String longest = " ".repeat(256 * 1024 - 2) + "{}";
        List<JsonNode> answers = answers(post(PATH, "{}\n" + longest + "\n " + longest + "\n{}\n"));
        assertThat(answers).hasSize(3);
        assertThat(answers.get(1).get("status").asInt()).isEqualTo(400);
        assertThat(answers.get(2).get("status").asInt()).isEqualTo(413);
        assertThat(answers.get(2).get("line").asInt()).isEqualTo(3);
        assertThat(answers.get(2).get("title").asText()).contains("256 KiB");
    }

    @Test
    void aLineWithoutEndIsRefusedBeforeItHasAllArrived() throws IOException {
        try (RawPost post = new RawPost(service.getPort(), PATH)) {
            post.sendAll("x".repeat(8192).getBytes(StandardCharsets.UTF_8), 100_000);
            assertThat(post.head()).startsWith("HTTP/1.1 200 ");
            assertThat(MAPPER.readTree(post.line()).get("title").asText()).contains("256 KiB");
            assertThat(post.line()).isNull();
        }
    }

    @Test
    void aBodyThatSaysItIsTooLongIsRefusedAtOnce() throws IOException {
        Response response = post(PATH, "\n".repeat(16 * MEBIBYTE + 1));
        assertThat(response.statusCode()).isEqualTo(413);
        assertThat(response.contentType()).startsWith("application/problem+json");
        assertThat(MAPPER.readTree(response.asString()).get("title").asText()).contains("16 MiB");
    }

    @Test
    void aBodyOf16MebibytesIsAnsweredAndOneByteMoreIsAProblem() throws IOException {
        byte[] blank = (" ".repeat(1023) + "\n").repeat(64).getBytes(StandardCharsets.UTF_8);
        for (String last : List.of("", "\n")) {
            try (RawPost post = new RawPost(service.getPort(), PATH)) {
                post.send(("{}" + " ".repeat(1021) + "\n").getBytes(StandardCharsets.UTF_8));
                post.send(new String(blank, StandardCharsets.UTF_8)
                        .substring(1024)
                        .getBytes(StandardCharsets.UTF_8));
                for (int i = 1; i < 256; i++) {
                    post.send(blank);
                }
                assertThat(post.sent()).isEqualTo(16 * MEBIBYTE);
                if (!last.isEmpty()) {
                    post.send(last.getBytes(StandardCharsets.UTF_8));
                }
                post.end();
                assertThat(post.head()).startsWith("HTTP/1.1 200 ");
                assertThat(MAPPER.readTree(post.line()).get("status").asInt()).isEqualTo(400);
                if (!last.isEmpty()) {
                    JsonNode problem = MAPPER.readTree(post.line());
                    assertThat(problem.get("status").asInt()).isEqualTo(413);
                    assertThat(problem.get("line").asInt()).isEqualTo(16 * 1024 + 1);
                    assertThat(problem.get("title").asText()).contains("16 MiB");
                }
                assertThat(post.line()).isNull();
            }
        }
    }

    @Test
    void tenThousandLinesAreAnsweredInTheirOrder() throws IOException {
        StringBuilder body = new StringBuilder();
        for (int i = 0; i < 10_000; i++) {
            body.append(i % 100 == 50 ? good() : "{\"q" + i + "\":1}").append('\n');
        }
        try (RawPost post = new RawPost(service.getPort(), PATH)) {
            post.sendAll(body.toString().getBytes(StandardCharsets.UTF_8), 1);
            post.head();
            for (int i = 0; i < 10_000; i++) {
                JsonNode answer = MAPPER.readTree(post.line());
                if (i % 100 == 50) {
                    assertThat(answer.has("result")).isTrue();
                } else {
                    assertThat(answer.get("line").asInt()).isEqualTo(i + 1);
                    assertThat(answer.get("errors").findValuesAsText("pointer")).contains("/q" + i);
                }
            }
            assertThat(post.line()).isNull();
        }
    }

    @Test
    void anAnswerComesBeforeTheNextQuestionIsAsked() throws IOException {
        try (RawPost post = new RawPost(service.getPort(), PATH)) {
            for (int i = 1; i <= 3; i++) {
                post.send("{}\n".getBytes(StandardCharsets.UTF_8));
                if (i == 1) {
                    post.head();
                }
                assertThat(MAPPER.readTree(post.line()).get("line").asInt()).isEqualTo(i);
            }
            post.end();
            assertThat(post.line()).isNull();
        }
    }

    @Test
    void aClientThatStopsReadingIsReadNoMoreAndTakesNoMemory() throws Exception {
        byte[] questions = "{}\n".repeat(10_000).getBytes(StandardCharsets.UTF_8);
        long before = usedMemory();
        try (RawPost post = new RawPost(service.getPort(), PATH)) {
            post.sendAll(questions, 500);
            long sent = untilItStandsStill(post);
            assertThat(sent).isLessThan(6L * MEBIBYTE);
            assertThat(usedMemory() - before).isLessThan(24L * MEBIBYTE);
            assertThat(routes.openStreams()).isEqualTo(1);
            post.head();
            for (int i = 1; i <= 5_000; i++) {
                assertThat(post.line()).contains("\"line\":" + i + ",");
            }
        }
        untilAllStreamsAreOver();
    }

    private static long untilItStandsStill(RawPost post) throws InterruptedException {
        long sent = -1;
        for (int still = 0; still < 5; still++) {
            if (post.sent() != sent) {
                sent = post.sent();
                still = 0;
            }
            Thread.sleep(300);
        }
        return sent;
    }

    private static long usedMemory() {
        System.gc();
        return Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory();
    }

    private void untilAllStreamsAreOver() throws InterruptedException {
        for (int i = 0; i < 200 && routes.openStreams() > 0; i++) {
            Thread.sleep(50);
        }
        assertThat(routes.openStreams()).isZero();
    }

    @Test
    void aClientThatGoesAwayFreesItsStream() throws Exception {
        byte[] questions = (good() + "\n").repeat(100).getBytes(StandardCharsets.UTF_8);
        RawPost post = new RawPost(service.getPort(), PATH);
        post.sendAll(questions, 200);
        post.head();
        post.line();
        post.close();
        untilAllStreamsAreOver();
    }

    @Test
    void moreStreamsThanTheServiceCanHoldAreTurnedAway() throws Exception {
        List<RawPost> posts = new ArrayList<>();
        try {
            for (int i = 0; i < NdjsonRoutes.MOST_STREAMS; i++) {
                RawPost post = new RawPost(service.getPort(), PATH);
                posts.add(post);
                post.send("{}\n".getBytes(StandardCharsets.UTF_8));
                assertThat(post.head()).startsWith("HTTP/1.1 200 ");
            }
            Response refused = post(PATH, "{}\n");
            assertThat(refused.statusCode()).isEqualTo(503);
            assertThat(refused.contentType()).startsWith("application/problem+json");
            assertThat(given().contentType("application/json")
                            .body(good())
                            .post(PATH)
                            .statusCode())
                    .isEqualTo(200);
        } finally {
            for (RawPost post : posts) {
                post.close();
            }
        }
        untilAllStreamsAreOver();
        assertThat(post(PATH, "{}\n").statusCode()).isEqualTo(200);
    }

    @Test
    void aFormThatLinesDoNotHaveIsAProblem() {
        Response response = given().header("Content-Type", NdjsonRoutes.MEDIA_TYPE)
                .accept("image/svg+xml")
                .body("{}\n".getBytes(StandardCharsets.UTF_8))
                .post(PATH);
        assertThat(response.statusCode()).isEqualTo(406);
        assertThat(response.contentType()).startsWith("application/problem+json");
    }

    @Test
    void aTableTakesNoLines() {
        assertThat(post("/v1/buffers", "{}\n").statusCode()).isEqualTo(405);
    }

    private static String good() throws IOException {
        for (JsonNode example : MAPPER.readTree(NdjsonTest.class.getResourceAsStream("/examples/predictMash.json"))) {
            if (example.get("status").asInt() == 200) {
                return example.get("request").toString();
            }
        }
        throw new AssertionError("no good example");
    }
}

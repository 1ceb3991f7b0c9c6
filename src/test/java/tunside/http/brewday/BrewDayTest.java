package tunside.http.brewday;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.test.junit.QuarkusTest;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/**
 * A whole brew day, from buffers to beer: each question is made of the answers before it. Its steps are examples of the
 * contract and stand in the README as a script. Record both with {@code -Dbrewday.record=true}.
 */
@QuarkusTest
class BrewDayTest {
    private static final ObjectMapper MAPPER = new ObjectMapper().enable(SerializationFeature.INDENT_OUTPUT);
    private static final Path STORY = Path.of("src/test/resources/brew-day.json");
    private static final Path EXAMPLES = Path.of("src/main/resources/examples");
    private static final Path README = Path.of("README.md");
    private static final String BEGIN = "<!-- brew day -->\n```sh\n";
    private static final String END = "```\n<!-- end of the brew day -->";
    private static final boolean RECORD = Boolean.getBoolean("brewday.record");

    private static List<Step> steps() throws IOException {
        JsonNode contract = MAPPER.readTree(
                given().queryParam("format", "json").get("/q/openapi").asByteArray());
        Map<String, String> paths = new TreeMap<>();
        contract.get("paths")
                .properties()
                .forEach(path -> path.getValue()
                        .forEach(operation ->
                                paths.put(operation.get("operationId").asText(), path.getKey())));
        List<Step> steps = new ArrayList<>();
        for (JsonNode step : MAPPER.readTree(STORY.toFile())) {
            List<String> show = new ArrayList<>();
            step.get("show").forEach(pointer -> show.add(pointer.asText()));
            String operation = step.get("operation").asText();
            steps.add(new Step(
                    steps.size() + 1,
                    step.get("name").asText(),
                    operation,
                    paths.get(operation),
                    step.get("say").asText(),
                    show,
                    step.get("request")));
        }
        return steps;
    }

    @Test
    void everyStepIsAnsweredFromTheStepsBeforeIt() throws IOException {
        Map<String, JsonNode> answers = new LinkedHashMap<>();
        for (Step step : steps()) {
            JsonNode request = step.request(answers);
            var response = given().contentType("application/json")
                    .body(MAPPER.writeValueAsBytes(request))
                    .post(step.path());
            JsonNode answer = MAPPER.readTree(response.asByteArray());
            assertThat(response.statusCode())
                    .as("%s: %s", step.name(), answer.toPrettyString())
                    .isEqualTo(200);
            step.show()
                    .forEach(pointer -> assertThat(answer.at(pointer).isMissingNode())
                            .as("%s shows %s", step.name(), pointer)
                            .isFalse());
            answers.put(step.name(), answer);
            Path file = EXAMPLES.resolve(step.operation() + ".json");
            ObjectNode examples = (ObjectNode) MAPPER.readTree(file.toFile());
            if (RECORD) {
                record(step, request, answer, examples);
                Files.writeString(file, MAPPER.writeValueAsString(examples) + "\n");
            }
            assertThat(examples.path(step.example()).path("request"))
                    .as(step.example())
                    .isEqualTo(request);
            assertThat(examples.path(step.example()).path("response"))
                    .as(step.example())
                    .isEqualTo(answer);
        }
    }

    @Test
    void theReadmeTellsTheSameDay() throws IOException {
        String script = Script.of(steps());
        String readme = Files.readString(README);
        int from = readme.indexOf(BEGIN) + BEGIN.length();
        int to = readme.indexOf(END);
        assertThat(to).isGreaterThanOrEqualTo(from);
        if (RECORD) {
            Files.writeString(README, readme.substring(0, from) + script + readme.substring(to));
            return;
        }
        assertThat(readme.substring(from, to)).isEqualTo(script);
    }

    private static void record(Step step, JsonNode request, JsonNode answer, ObjectNode examples) {
        new ArrayList<>(examples.properties())
                .stream()
                        .map(Map.Entry::getKey)
                        .filter(name -> name.endsWith("-" + step.name()) && name.startsWith("brew-day-"))
                        .forEach(examples::remove);
        ObjectNode example = examples.putObject(step.example());
        example.put("summary", step.say());
        example.set("request", request);
        example.put("status", 200);
        example.set("response", answer);
    }
}

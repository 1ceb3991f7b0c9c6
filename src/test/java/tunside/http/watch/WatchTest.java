package tunside.http.watch;

import static io.restassured.RestAssured.given;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@QuarkusTest
class WatchTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();

    @TestHTTPResource(value = "/", management = true)
    URI management;

    private static Response asks(String id) {
        return given().header("X-Request-Id", id).get("/v1/nothing");
    }

    @Test
    void aWellFormedRequestIdComesBack() {
        assertThat(asks("brew-day_7.mash").header("X-Request-Id")).isEqualTo("brew-day_7.mash");
        assertThat(given().header("X-Request-Id", "a1").get("/v1/sources").header("X-Request-Id"))
                .isEqualTo("a1");
    }

    @Test
    void anyOtherIsReplaced() {
        Set<String> ids = new HashSet<>();
        for (String bad : List.of("a b", "<script>", "x".repeat(65), "ä", "a,b", "\"", "")) {
            String id = asks(bad).header("X-Request-Id");
            assertThat(id).isNotEqualTo(bad).matches("[0-9a-f-]{36}");
            ids.add(id);
        }
        ids.add(given().get("/v1/sources").header("X-Request-Id"));
        assertThat(ids).hasSize(8);
    }

    private String metrics() {
        return given().get(management.resolve("/q/metrics")).asString();
    }

    private double count(String name, String... labels) {
        for (String line : metrics().lines().toList()) {
            if (line.startsWith(name + "{") && List.of(labels).stream().allMatch(line::contains)) {
                return Double.parseDouble(line.substring(line.lastIndexOf(' ') + 1));
            }
        }
        return 0;
    }

    /** An example of the operation that has an answer. */
    private static JsonNode answered(String operation) throws IOException {
        for (JsonNode example : MAPPER.readTree(
                Path.of("src/main/resources/examples", operation + ".json").toFile())) {
            if (example.get("status").asInt() == 200) {
                return example;
            }
        }
        throw new AssertionError(operation);
    }

    @Test
    void everyAnswerIsCountedByCapabilityAndOutcome() throws IOException {
        JsonNode answered = answered("computeAcidDose");
        String outcome = answered.at("/response/result/outcome").asText();
        String[] labels = {"capability=\"acid-doses\"", "outcome=\"" + outcome + "\""};
        double before = count("tunside_answers_total", labels);
        given().contentType("application/json")
                .body(answered.get("request").toString())
                .post("/v1/acid-doses");
        given().contentType("application/x-ndjson")
                .body((answered.get("request") + "\n" + answered.get("request") + "\n").getBytes(UTF_8))
                .post("/v1/acid-doses");
        assertThat(count("tunside_answers_total", labels) - before).isEqualTo(3);
    }

    @Test
    void problemsAndStopChecksAreCountedToo() {
        String[] problem = {"capability=\"acid-doses\"", "outcome=\"invalid-request\""};
        String[] stop = {"capability=\"acid-doses\"", "code=\"request.valid\""};
        double problems = count("tunside_answers_total", problem);
        double stops = count("tunside_checks_stop_total", stop);
        given().contentType("application/json").body("{}").post("/v1/acid-doses");
        assertThat(count("tunside_answers_total", problem) - problems).isEqualTo(1);
        assertThat(count("tunside_checks_stop_total", stop) - stops).isEqualTo(1);
    }

    @ParameterizedTest
    @CsvSource({
        "evaluateCalibration, calibration-evaluations, calibration",
        "judgePhReading, ph-readings, settling",
        "analyseWater, water-analyses, water",
        "predictMash, mash-predictions, mash",
        "computeAcidDose, acid-doses, dose",
        "planMash, mash-plans, plan"
    })
    void whatTheSolversDidIsCounted(String operation, String capability, String solver) throws IOException {
        String label = "solver=\"" + solver + "\"";
        double solves = count("tunside_solver_solves_total", label);
        double iterations = count("tunside_solver_iterations_total", label);
        given().contentType("application/json").body("{}").post("/v1/" + capability);
        assertThat(count("tunside_solver_solves_total", label)).isEqualTo(solves);
        assertThat(count("tunside_solver_iterations_total", label)).isEqualTo(iterations);
        given().contentType("application/json")
                .body(answered(operation).get("request").toString())
                .post("/v1/" + capability);
        solves = count("tunside_solver_solves_total", label) - solves;
        iterations = count("tunside_solver_iterations_total", label) - iterations;
        assertThat(solves).isPositive();
        assertThat(iterations).isBetween(solves, 300 * solves);
    }

    @Test
    void inventedAddressesMakeNoNewSeries() {
        given().get("/v1/invented-address-one");
        given().get("/v1/invented-address-two?secret=3");
        given().get("/invented-address-three?x=" + "y".repeat(3000));
        given().get("/v1/invented-address-four?x=" + "y".repeat(3000));
        given().header("X-Long", "y".repeat(9000)).get("/v1/invented-address-five");
        given().contentType("application/x-ndjson").body("{}".getBytes(UTF_8)).post("/v1/invented-address-six");
        assertThat(metrics())
                .contains("status=\"414\"")
                .doesNotContain("invented-address")
                .doesNotContain("secret");
    }

    @Test
    void readyAndStartedMeanThatTheTablesAreRead() throws IOException {
        for (String probe : List.of("/q/health/ready", "/q/health/started")) {
            JsonNode health =
                    MAPPER.readTree(given().get(management.resolve(probe)).asByteArray());
            assertThat(health.get("status").asText()).isEqualTo("UP");
            assertThat(health.get("checks").findValuesAsText("name")).contains("reference tables");
        }
    }

    @Test
    void everyQueryOfTheDashboardNamesAMetricThatThereIs() throws IOException {
        given().get("/v1/sources");
        given().contentType("application/json").body("{}").post("/v1/acid-doses");
        String metrics = metrics();
        JsonNode dashboard = MAPPER.readTree(Path.of("k8s/dashboard.json").toFile());
        List<String> queries = dashboard.findValuesAsText("expr");
        assertThat(queries).hasSizeGreaterThan(6);
        for (String query : queries) {
            Matcher name = Pattern.compile("\\b([a-z]+(?:_[a-z]+)+)\\{").matcher(query);
            assertThat(name.find()).as(query).isTrue();
            do {
                assertThat(metrics).as(query).containsPattern("\n" + name.group(1) + "[{ ]");
            } while (name.find());
        }
    }
}

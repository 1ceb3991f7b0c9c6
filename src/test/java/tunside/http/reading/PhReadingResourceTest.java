package tunside.http.reading;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasItems;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.config.JsonPathConfig;
import io.restassured.response.ValidatableResponse;
import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@QuarkusTest
class PhReadingResourceTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();

    private static ObjectNode example(String name) throws IOException {
        JsonNode examples = MAPPER.readTree(
                Path.of("src/main/resources/examples/judgePhReading.json").toFile());
        return (ObjectNode) examples.get(name).get("request");
    }

    private static ValidatableResponse ask(Object body, int status) {
        return given().config(io.restassured.RestAssured.config()
                        .jsonConfig(io.restassured.config.JsonConfig.jsonConfig()
                                .numberReturnType(JsonPathConfig.NumberReturnType.DOUBLE)))
                .contentType("application/json")
                .body(body.toString().replace('\'', '"'))
                .post("/v1/ph-readings")
                .then()
                .statusCode(status);
    }

    private static String one(double displayed, double celsius, String more) {
        return "{'liquid': 'mash', 'readings': [{'elapsed': {'value': 0, 'unit': 's'}, 'temperature': {'value': %s, 'unit': 'degC'}, 'displayed': %s}]%s}"
                .formatted(celsius, displayed, more);
    }

    @ParameterizedTest
    @CsvSource({"5.480, 10", "5.320, 40", "5.1853, 65"})
    void anIdealElectrodeWithoutCompensationIsReadBack(double displayed, double celsius) {
        ask(one(displayed, celsius, ", 'meter': {'compensation': 'none'}"), 200)
                .body("result.settling.headingFor", closeTo(5.40, 0.0011))
                .body("checks.find { it.code == 'reading.compensation' }.outcome", equalTo("note"));
    }

    @Test
    void anUncalibratedMeterCarriesAStopAndCannotTell() {
        ask(one(5.35, 20, ""), 200)
                .body("result.verdict", equalTo("cannot-tell"))
                .body("checks.find { it.code == 'reading.calibration' }.outcome", equalTo("stop"))
                .body("result.advice[0].advice", equalTo("calibrate"))
                .body("result.advice.advice", org.hamcrest.Matchers.not(hasItem("leave-it")));
    }

    @Test
    void anUnfitElectrodeIsNoBetterThanNone() throws IOException {
        ObjectNode request = example("mash-settled");
        ((ObjectNode) request.get("calibration")).put("verdict", "unfit");
        ask(request, 200)
                .body("result.verdict", equalTo("cannot-tell"))
                .body("result.at20.standardUncertainty", org.hamcrest.Matchers.greaterThan(0.2))
                .body("checks.find { it.code == 'reading.calibration' }.outcome", equalTo("stop"));
    }

    @Test
    void theSharesMakeTheWhole() throws IOException {
        JsonNode result = MAPPER.readTree(
                        ask(example("evening-recheck"), 200).extract().asByteArray())
                .get("result");
        double sum = 0;
        for (JsonNode share : result.get("budget")) {
            sum += Math.pow(share.get("standardUncertainty").asDouble(), 2);
        }
        assertThat(Math.sqrt(sum))
                .isCloseTo(
                        result.get("at20").get("standardUncertainty").asDouble(),
                        org.assertj.core.api.Assertions.within(0.001));
        assertThat(result.get("drift").get("ph").asDouble()).isEqualTo(0.055);
    }

    @Test
    void twoThousandReadingsAreTakenAndOneMoreIsNot() throws IOException {
        ObjectNode request = example("mash-settled");
        ArrayNode readings = (ArrayNode) request.get("readings");
        JsonNode last = readings.get(readings.size() - 1);
        int start = (int) last.get("elapsed").get("value").asDouble();
        while (readings.size() < 2000) {
            ObjectNode more = last.deepCopy();
            ((ObjectNode) more.get("elapsed")).put("value", start + readings.size());
            readings.add(more);
        }
        ask(request, 200).body("result.settled", equalTo(true));
        ObjectNode more = last.deepCopy();
        ((ObjectNode) more.get("elapsed")).put("value", 9000);
        readings.add(more);
        ask(request, 400).body("errors.find { it.pointer == '/readings' }.detail", containsString("1 to 2000"));
    }

    @Test
    void everyFaultHasItsPlace() throws IOException {
        ask(
                        one(
                                5.4,
                                20,
                                ", 'lowPh': 5.5, 'highPh': 5.2, 'settledWithin': {'value': 1, 'unit': 's'}, 'sinceCalibration': {'value': 1, 'unit': 'h'}"),
                        400)
                .body("errors.pointer", hasItems("/highPh", "/settledWithin", "/sinceCalibration"));
        ask(one(5.4, 120, "").replace("'displayed'", "'potential': {'value': 10, 'unit': 'mV'}, 'displayed'"), 400)
                .body("errors.pointer", hasItems("/readings/0", "/readings/0/temperature"));
        ObjectNode request = example("mash-settled");
        ((ObjectNode) request.get("calibration")).put("model", "calibration-line-0");
        request.putObject("meter").put("compensation", "none");
        ask(request, 400).body("errors.pointer", hasItems("/calibration", "/meter"));
        ObjectNode displayed = example("mash-settled");
        ObjectNode first = (ObjectNode) displayed.get("readings").get(0);
        first.remove("potential");
        first.put("displayed", 5.4);
        ask(displayed, 400)
                .body("errors.find { it.pointer == '/readings/0/displayed' }.detail", containsString("millivolts"));
    }
}

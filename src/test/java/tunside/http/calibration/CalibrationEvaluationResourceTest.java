package tunside.http.calibration;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.io.IOException;
import java.util.Collections;
import java.util.List;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tunside.electrode.Calibration;
import tunside.http.problem.Place;
import tunside.quantity.Potential;
import tunside.quantity.Temperature;

@QuarkusTest
class CalibrationEvaluationResourceTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();
    private static final String AT_25 = "'temperature': {'value': 25, 'unit': 'degC'}";
    private static final String FOUR = mv("iupac-phthalate", "170");
    private static final String SEVEN = mv("iupac-phosphate", "5");

    private static String mv(String buffer, String millivolts) {
        return "{'buffer': '%s', %s, 'potential': {'value': %s, 'unit': 'mV'}}".formatted(buffer, AT_25, millivolts);
    }

    private static Response post(String readings, String more) {
        String body = "{'readings': [%s]%s}".formatted(readings, more.isEmpty() ? "" : ", " + more);
        return given().contentType("application/json")
                .body(body.replace('\'', '"'))
                .post("/v1/calibration-evaluations");
    }

    private static JsonNode good(String readings, String more) throws IOException {
        Response response = post(readings, more);
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(200);
        return MAPPER.readTree(response.asByteArray()).get("result");
    }

    private static void refused(Response response, int status, String pointer, String inDetail) throws IOException {
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(status);
        assertThat(MAPPER.readTree(response.asByteArray()).get("errors"))
                .as(response.asString())
                .anySatisfy(error -> {
                    assertThat(error.get("pointer").asText()).isEqualTo(pointer);
                    assertThat(error.get("detail").asText()).contains(inDetail);
                });
    }

    @Test
    void aMinusZeroIsAZeroAtTheEndOfATable() throws IOException {
        String plus = (mv("jis-phthalate", "170") + "," + mv("jis-phosphate", "5")).replace("25", "0.0");
        assertThat(good(plus.replace("0.0", "-0.0"), "")).isEqualTo(good(plus, ""));
    }

    @Test
    void theWorkedCaseIsAnswered() throws IOException {
        JsonNode result = good(FOUR + "," + SEVEN, "");
        assertThat(result.get("verdict").asText()).isEqualTo("fit");
        assertThat(result.get("slope").get("mvPerPh").asDouble()).isEqualTo(57.692);
        assertThat(result.get("slope").get("percentOfIdeal").asDouble()).isEqualTo(97.52);
        assertThat(result.get("slope").get("percentUncertainty").asDouble()).isEqualTo(0.64);
        assertThat(result.get("offset").get("value").asDouble()).isEqualTo(-2.79);
        assertThat(result.get("zeroPointPh").asDouble()).isEqualTo(6.952);
        assertThat(result.get("expected").get("ph").asDouble()).isEqualTo(5.4);
        assertThat(result.get("expected").get("bracketed").asBoolean()).isTrue();
        assertThat(result.get("expected").get("fromLineAndPotential").asDouble())
                .isEqualTo(0.0128);
        assertThat(result.get("unknown")).isEmpty();
        assertThat(result.get("reasons")).isEmpty();
    }

    @Inject
    ObjectMapper strict;

    @Test
    void theDocumentReadsTheSampleLater() throws IOException {
        JsonNode kept = good(FOUR + "," + SEVEN, "").get("calibration");
        Calibration calibration =
                strict.treeToValue(kept, CalibrationDocument.class).toCalibration(Place.root());
        assertThat(calibration.ph(new Potential(90), new Temperature(25))).isCloseTo(5.391667, within(1e-6));
        assertThat(strict.valueToTree(CalibrationDocument.of(calibration)).equals(kept))
                .as("%s", kept)
                .isTrue();
    }

    @Test
    void tradeUnitsGiveTheSameAnswer() throws IOException {
        String fahrenheit = FOUR.replace("'value': 25, 'unit': 'degC'", "'value': 77, 'unit': 'degF'");
        assertThat(good(fahrenheit + "," + SEVEN, "").get("slope"))
                .isEqualTo(good(FOUR + "," + SEVEN, "").get("slope"));
    }

    @Test
    void anOwnBufferIsTaken() throws IOException {
        String own =
                "{'ph': 4.01, 'phUncertainty': 0.02, %s, 'potential': {'value': 160, 'unit': 'mV'}}, {'ph': 7.01, %s, 'potential': {'value': 15, 'unit': 'mV'}}"
                        .formatted(AT_25, AT_25);
        JsonNode result = good(own, "");
        assertThat(result.get("slope").get("percentOfIdeal").asDouble()).isEqualTo(81.7);
        assertThat(result.get("verdict").asText()).isEqualTo("unfit");
        assertThat(result.get("readings").get(0).get("buffer").asText()).isEqualTo("pH 4.01");
        assertThat(result.get("readings").get(0).get("bufferUncertainty").asDouble())
                .isEqualTo(0.02);
    }

    @Test
    void aMeterThatShowsOnlyPhIsToldWhatCannotBeKnown() throws IOException {
        String readings =
                "{'buffer': 'jis-phthalate', %s, 'displayed': 4.05}, {'buffer': 'jis-phosphate', %s, 'displayed': 6.93}"
                        .formatted(AT_25, AT_25);
        JsonNode found = good(readings, "'readout': 'as-found'");
        assertThat(found.get("unknown")).hasSize(3);
        assertThat(found.get("unknown").get(0).asText()).contains("cannot be known");
        assertThat(found.get("calibration").get("signal").asText()).isEqualTo("displayed-ph");
        JsonNode manual = good(
                readings,
                "'readout': 'after-adjusting', 'meter': {'compensation': 'manual', 'setTemperature': {'value': 20, 'unit': 'degC'}}");
        assertThat(manual.get("calibration")
                        .get("meter")
                        .get("setTemperature")
                        .get("value")
                        .asDouble())
                .isEqualTo(20);
    }

    @Test
    void thePreparationOfAPowderIsCounted() throws IOException {
        String powder = SEVEN.replace(
                "'potential'",
                "'preparation': {'labelVolume': {'value': 250, 'unit': 'mL'}, 'waterUsed': {'value': 0.5, 'unit': 'L'}}, 'potential'");
        JsonNode reading = good(FOUR + "," + powder, "").get("readings").get(1);
        assertThat(reading.get("changeByWater").asDouble()).isEqualTo(0.08);
        assertThat(reading.get("bufferPh").asDouble()).isEqualTo(6.945);
    }

    @Test
    void twoToSixteenReadingsAreTaken() throws IOException {
        assertThat(good(String.join(",", Collections.nCopies(8, FOUR + "," + SEVEN)), "")
                        .get("readings"))
                .hasSize(16);
        refused(post(String.join(",", Collections.nCopies(17, FOUR)), ""), 400, "/readings", "from 2 to 16");
        refused(post(FOUR, ""), 400, "/readings", "from 2 to 16");
    }

    @Test
    void oneBufferOnlyHasNoAnswer() throws IOException {
        refused(post(FOUR + "," + FOUR, ""), 422, "/readings", "at least 1");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '~', textBlock = """
            {'buffer': 'technical-7.00', 'temperature': {'value': 71, 'unit': 'degC'}, 'potential': {'value': 5, 'unit': 'mV'}} | /temperature | 50.0 degC
            {'buffer': 'technical-7.00', 'temperature': {'value': -1, 'unit': 'degC'}, 'potential': {'value': 5, 'unit': 'mV'}} | /temperature | -1.0
            {'buffer': 'technical-7.00', 'temperature': {'value': 400, 'unit': 'degF'}, 'potential': {'value': 5, 'unit': 'mV'}} | /temperature | 400 degF
            {'buffer': 'mystery', 'temperature': {'value': 25, 'unit': 'degC'}, 'potential': {'value': 5, 'unit': 'mV'}} | /buffer | jis-phosphate
            {'buffer': 'jis-borax', 'ph': 9, 'temperature': {'value': 25, 'unit': 'degC'}, 'potential': {'value': 5, 'unit': 'mV'}} | ~~ | either name a buffer
            {'temperature': {'value': 25, 'unit': 'degC'}, 'potential': {'value': 5, 'unit': 'mV'}} | ~~ | either name a buffer
            {'ph': 15, 'temperature': {'value': 25, 'unit': 'degC'}, 'potential': {'value': 5, 'unit': 'mV'}} | /ph | 15
            {'ph': 7, 'potential': {'value': 5, 'unit': 'mV'}} | /temperature | missing
            {'ph': 7, 'temperature': {'value': 25}, 'potential': {'value': 5, 'unit': 'mV'}} | /temperature/unit | missing
            {'ph': 7, 'temperature': {'value': 25, 'unit': 'K'}, 'potential': {'value': 5, 'unit': 'mV'}} | /temperature/unit | degC
            {'ph': 7, 'temperature': {'value': 25, 'unit': 'degC'}, 'potential': {'value': 5}} | /potential/unit | missing
            {'ph': 7, 'temperature': {'value': 25, 'unit': 'degC'}, 'potential': {'value': 1500, 'unit': 'mV'}} | /potential | 1500
            {'ph': 7, 'temperature': {'value': 25, 'unit': 'degC'}, 'displayed': 7} | /potential | missing
            {'ph': 7, 'temperature': {'value': 25, 'unit': 'degC'}, 'potential': {'value': 5, 'unit': 'mV'}, 'displayed': 7} | /displayed | readout
            {'ph': 7, 'temperature': {'value': 25, 'unit': 'degC'}, 'potential': {'value': 5, 'unit': 'mV'}, 'settlingTime': {'value': 2, 'unit': 'h'}} | /settlingTime | 2 h
            {'ph': 7, 'temperature': {'value': 25, 'unit': 'degC'}, 'potential': {'value': 5, 'unit': 'mV'}, 'preparation': {'age': {'value': 2, 'unit': 'h'}}} | /preparation/since | missing
            {'ph': 7, 'temperature': {'value': 25, 'unit': 'degC'}, 'potential': {'value': 5, 'unit': 'mV'}, 'preparation': {'since': 'opened'}} | /preparation/age | missing
            {'ph': 7, 'temperature': {'value': 25, 'unit': 'degC'}, 'potential': {'value': 5, 'unit': 'mV'}, 'preparation': {'labelVolume': {'value': 250, 'unit': 'mL'}}} | /preparation/waterUsed | missing
            {'ph': 7, 'temperature': {'value': 25, 'unit': 'degC'}, 'potential': {'value': 5, 'unit': 'mV'}, 'preparation': {'labelVolume': {'value': 250, 'unit': 'mL'}, 'waterUsed': {'value': 1, 'unit': 'L'}}} | /preparation/waterUsed | 0.5 to 2
            """)
    void aBadReadingIsRefusedAtItsPlace(String reading, String pointer, String inDetail) throws IOException {
        refused(post(FOUR + "," + reading, ""), 400, "/readings/1" + pointer, inDetail);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '~', textBlock = """
            'expectedPh': 15                                                              | /expectedPh                  | 15
            'readout': 'guessed'                                                          | /readout                     | as-found
            'readout': 'as-found'                                                         | /readings/0/displayed        | missing
            'meter': {}                                                                   | /meter/compensation          | missing
            'meter': {'compensation': 'manual'}                                           | /meter/setTemperature        | missing
            'meter': {'compensation': 'none', 'setTemperature': {'value': 20, 'unit': 'degC'}} | /meter/setTemperature   | manual compensation only
            'uncertainty': {'potential': {'value': -1, 'unit': 'mV'}}                     | /uncertainty/potential       | -1
            'uncertainty': {'potential': {'value': 1, 'unit': 'mV'}, 'displayed': 0.01}   | /uncertainty/displayed       | one of the two
            'uncertainty': {'temperatureK': 51}                                           | /uncertainty/temperatureK    | 51
            """)
    void aBadFactIsRefusedAtItsPlace(String more, String pointer, String inDetail) throws IOException {
        refused(post(FOUR + "," + SEVEN, more), 400, pointer, inDetail);
    }

    @Test
    void allFaultsComeAtOnce() throws IOException {
        Response response = post(
                mv("mystery", "170") + "," + mv("technical-7.00", "5").replace("25", "80"),
                "'meter': {'compensation': 'manual'}");
        List<String> pointers = StreamSupport.stream(
                        MAPPER.readTree(response.asByteArray()).get("errors").spliterator(), false)
                .map(error -> error.get("pointer").asText())
                .toList();
        assertThat(pointers).contains("/readings/0/buffer", "/readings/1/temperature", "/meter/setTemperature");
    }

    @Test
    void theBuffersAreServedWithTheirPhAtATemperature() throws IOException {
        JsonNode buffers = MAPPER.readTree(
                        given().get("/v1/buffers?temperature=20&unit=degC").asByteArray())
                .get("result");
        assertThat(buffers).anySatisfy(buffer -> {
            assertThat(buffer.get("buffer").asText()).isEqualTo("technical-7.00");
            assertThat(buffer.get("ph").asDouble()).isEqualTo(7.02);
        });
        assertThat(MAPPER.readTree(given().get("/v1/buffers?temperature=176&unit=degF")
                                .asByteArray())
                        .get("result"))
                .anySatisfy(buffer -> {
                    assertThat(buffer.get("buffer").asText()).isEqualTo("jis-borax");
                    assertThat(buffer.get("ph").asDouble()).isEqualTo(8.89);
                })
                .anySatisfy(buffer -> {
                    assertThat(buffer.get("buffer").asText()).isEqualTo("technical-7.00");
                    assertThat(buffer.has("ph")).isFalse();
                });
        Response whole = given().get("/v1/buffers");
        assertThat(whole.statusCode()).isEqualTo(200);
        assertThat(given().header("If-None-Match", whole.header("ETag"))
                        .get("/v1/buffers")
                        .statusCode())
                .isEqualTo(304);
    }

    @ParameterizedTest
    @CsvSource({
        "temperature=25, /unit, degC",
        "temperature=25&unit=K, /unit, degC",
        "unit=degC, /temperature, missing",
        "temperature=warm&unit=degC, /temperature, number",
        "temperature=1e3&unit=degC, /temperature, number",
        "temperature=101&unit=degC, /temperature, 101 degC",
    })
    void aBadTemperatureIsRefused(String query, String pointer, String inDetail) throws IOException {
        refused(given().get("/v1/buffers?" + query), 400, pointer, inDetail);
    }
}

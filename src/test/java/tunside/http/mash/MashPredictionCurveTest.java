package tunside.http.mash;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import java.io.IOException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A prediction with {@code vary}: the pH against one member of the request. */
@QuarkusTest
class MashPredictionCurveTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();

    private static String mash(String kilograms, String litres, String millGap) {
        return "{'grist': [{'malt': 'pale', 'mass': {'value': %s, 'unit': 'kg'}}, {'malt': 'munich', 'mass': {'value': 500, 'unit': 'g'}}],"
                        .formatted(kilograms)
                + "'liquor': {'volume': {'value': %s, 'unit': 'L'}, 'water': {'alkalinity': {'value': 3, 'unit': 'mEq/L'}}},"
                        .formatted(litres)
                + "'additions': [{'acid': 'lactic', 'strength': {'value': 80, 'unit': '%w/w'}, 'volume': {'value': 2, 'unit': 'mL'}}],"
                + "'millGapMm': " + millGap;
    }

    private static Response post(String mash, String vary) {
        String body = mash + (vary.isEmpty() ? "}" : ", 'vary': " + vary + "}");
        return given().contentType("application/json")
                .body(body.replace('\'', '"'))
                .post("/v1/mash-predictions");
    }

    private static JsonNode result(Response response) throws IOException {
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(200);
        return MAPPER.readTree(response.asByteArray()).get("result");
    }

    private static String range(String pointer, String from, String to, int steps) {
        return "{'pointer': '%s', 'from': %s, 'to': %s, 'steps': %d}".formatted(pointer, from, to, steps);
    }

    @ParameterizedTest
    @CsvSource({"0, 10", "1, 15", "2, 20", "3, 25"})
    void everyPointIsThePredictionOfTheMashWithThatValue(int index, double litres) throws IOException {
        String vary = range("/liquor/volume", "{'value': 10, 'unit': 'L'}", "{'value': 25, 'unit': 'L'}", 4);
        JsonNode curve = result(post(mash("4", "18", "0.8"), vary)).get("curve");
        assertThat(curve.get("pointer").asText()).isEqualTo("/liquor/volume");
        assertThat(curve.get("unit").asText()).isEqualTo("L");
        assertThat(curve.get("points")).hasSize(4);
        JsonNode point = curve.get("points").get(index);
        JsonNode alone = result(post(mash("4", String.valueOf(litres), "0.8"), ""));
        assertThat(alone.has("curve")).isFalse();
        assertThat(point.get("value").asDouble()).isEqualTo(litres);
        assertThat(point.get("ph").asDouble()).isCloseTo(alone.get("ph").asDouble(), within(0.00501));
        assertThat(point.get("standardUncertainty").asDouble())
                .isEqualTo(alone.get("standardUncertainty").asDouble());
        assertThat(point.get("interval90").get("low").asDouble())
                .isCloseTo(alone.get("interval90").get("low").asDouble(), within(0.00501));
        assertThat(point.get("interval90").get("high").asDouble())
                .isCloseTo(alone.get("interval90").get("high").asDouble(), within(0.00501));
    }

    @Test
    void theRestOfTheAnswerIsThatOfTheRequestItself() throws IOException {
        String vary = range("/grist/0/mass", "{'value': 1, 'unit': 'lb'}", "{'value': 9, 'unit': 'lb'}", 2);
        JsonNode with = result(post(mash("4", "18", "0.8"), vary));
        assertThat(with.get("curve").get("unit").asText()).isEqualTo("lb");
        ((com.fasterxml.jackson.databind.node.ObjectNode) with).remove("curve");
        assertThat(with).isEqualTo(result(post(mash("4", "18", "0.8"), "")));
    }

    @Test
    void aPlainNumberIsVariedDownwardsAndHasNoUnit() throws IOException {
        JsonNode curve = result(post(mash("4", "18", "0.8"), range("/millGapMm", "1.5", "0", 4)))
                .get("curve");
        assertThat(curve.has("unit")).isFalse();
        assertThat(curve.get("points").findValuesAsText("value")).containsExactly("1.5", "1.0", "0.5", "0.0");
    }

    @Test
    void stepsAreSpacedEvenlyWithoutRoundingDust() throws IOException {
        String vary = range("/additions/0/volume", "{'value': 0, 'unit': 'mL'}", "{'value': 1, 'unit': 'mL'}", 11);
        JsonNode points =
                result(post(mash("4", "18", "0.8"), vary)).get("curve").get("points");
        assertThat(points.findValuesAsText("value"))
                .containsExactly("0.0", "0.1", "0.2", "0.3", "0.4", "0.5", "0.6", "0.7", "0.8", "0.9", "1.0");
        for (int i = 1; i < points.size(); i++) {
            assertThat(points.get(i).get("ph").asDouble())
                    .isLessThan(points.get(i - 1).get("ph").asDouble());
        }
    }

    @Test
    void whereTheModelHasNoAnswerThePointHasNoPh() throws IOException {
        String vary = range("/additions/0/volume", "{'value': 0, 'unit': 'mL'}", "{'value': 300, 'unit': 'mL'}", 2);
        JsonNode points =
                result(post(mash("4", "18", "0.8"), vary)).get("curve").get("points");
        assertThat(points.get(0).has("ph")).isTrue();
        assertThat(points.get(1).properties()).hasSize(1);
        assertThat(points.get(1).get("value").asDouble()).isEqualTo(300);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "{'pointer': '/liquor', 'from': 1, 'to': 2, 'steps': 3} | /vary/pointer | one of /grist/0/mass, /grist/1/mass, /liquor/volume",
                "{'pointer': '/grist/0/mass/value', 'from': 1, 'to': 2, 'steps': 3} | /vary/pointer | but is \"/grist/0/mass/value\"",
                "{'pointer': '/vary/steps', 'from': 1, 'to': 2, 'steps': 3} | /vary/pointer | must point to",
                "{'pointer': 'liquor', 'from': 1, 'to': 2, 'steps': 3} | /vary/pointer | must point to",
                "{'pointer': '/rest', 'from': 1, 'to': 2, 'steps': 3} | /vary/pointer | must point to",
                "{'pointer': '/grist/0/mass', 'from': 1, 'to': {'value': 2, 'unit': 'kg'}, 'steps': 3} | /vary/from | must be a quantity like {\"value\": 5, \"unit\": \"kg\"}",
                "{'pointer': '/grist/0/mass', 'from': {'value': 2}, 'to': {'value': 2, 'unit': 'kg'}, 'steps': 3} | /vary/from | must be a quantity",
                "{'pointer': '/grist/0/mass', 'from': {'value': 2, 'unit': 'kg'}, 'to': '3 kg', 'steps': 3} | /vary/to | must be a quantity",
                "{'pointer': '/grist/0/mass', 'from': {'value': 2, 'unit': 'kg'}, 'to': {'value': 2000, 'unit': 'g'}, 'steps': 3} | /vary/to | must be in kg, the unit of 'from', but is in g",
                "{'pointer': '/millGapMm', 'from': {'value': 2, 'unit': 'kg'}, 'to': 2, 'steps': 3} | /vary/from | must be a plain number",
                "{'pointer': '/millGapMm', 'from': 0, 'to': 1e999, 'steps': 3} | /vary/to | must be a plain number",
                "{'pointer': '/millGapMm', 'from': 1, 'to': 3, 'steps': 3} | /vary | at 3, /millGapMm must be from 0 to 2 but is 3",
                "{'pointer': '/liquor/volume', 'from': {'value': 9, 'unit': 'pint'}, 'to': {'value': 12, 'unit': 'pint'}, 'steps': 3} | /vary | at 9 pint, /liquor/volume/unit must be one of",
                "{'pointer': '/grist/0/mass', 'from': {'value': -1, 'unit': 'kg'}, 'to': {'value': 2, 'unit': 'kg'}, 'steps': 3} | /vary | at -1 kg, /grist/0/mass/value must be from 0",
                "{'pointer': '/millGapMm', 'from': 1, 'to': 2, 'steps': 1} | /vary/steps | from 2 to 200",
                "{'pointer': '/millGapMm', 'from': 1, 'to': 2, 'steps': 201} | /vary/steps | from 2 to 200",
                "{'pointer': '/millGapMm', 'from': 1, 'to': 2} | /vary/steps | is missing",
                "{'from': 1, 'to': 2, 'steps': 3} | /vary/pointer | is missing",
                "{'pointer': '/millGapMm', 'to': 2, 'steps': 3} | /vary/from | is missing",
                "{'pointer': '/millGapMm', 'from': null, 'to': 2, 'steps': 3} | /vary/from | must be a plain number",
            })
    void aRangeThatDoesNotFitIsRefusedInWordsThatHelp(String vary, String pointer, String inDetail) throws IOException {
        Response response = post(mash("4", "18", "0.8"), vary);
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(400);
        assertThat(MAPPER.readTree(response.asByteArray()).get("errors"))
                .as(response.asString())
                .anySatisfy(error -> {
                    assertThat(error.get("pointer").asText()).isEqualTo(pointer);
                    assertThat(error.get("detail").asText()).contains(inDetail);
                });
    }

    @Test
    void aCurveOf200PointsIsAnswered() throws IOException {
        JsonNode curve = result(post(mash("4", "18", "0.8"), range("/millGapMm", "0", "2", 200)))
                .get("curve");
        assertThat(curve.get("points")).hasSize(200);
    }
}

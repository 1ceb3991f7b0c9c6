package tunside.http.plan;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import java.io.IOException;
import java.util.Collections;
import java.util.List;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tunside.reference.Row;
import tunside.reference.Table;

@QuarkusTest
class MashPlanResourceTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();
    private static final String PALE = "{'malt': 'pale', 'mass': {'value': 5, 'unit': 'kg'}}";
    private static final String TAP =
            "'calcium': {'value': 48, 'unit': 'mg/L'}, 'magnesium': {'value': 9, 'unit': 'mg/L'},"
                    + " 'sodium': {'value': 16, 'unit': 'mg/L'}, 'chloride': {'value': 28, 'unit': 'mg/L'}, 'sulfate': {'value':"
                    + " 35, 'unit': 'mg/L'}, 'alkalinity': {'value': 3.4, 'unit': 'mEq/L'}";
    private static final String PHOSPHORIC = "{'acid': 'phosphoric', 'strength': {'value': 10, 'unit': '%w/w'}}";

    private static Response post(String path, String body) {
        return given().contentType("application/json")
                .body(body.replace('\'', '"'))
                .post(path);
    }

    private static String body(String grist, String atHand, String more) {
        return "{'grist': [%s], 'liquor': {'volume': {'value': 18, 'unit': 'L'}, 'water': {%s}}, 'targetPh': 5.4, 'atHand': {%s}%s}"
                .formatted(grist, TAP, atHand, more.isEmpty() ? "" : ", " + more);
    }

    private static JsonNode plan(String atHand, String more) throws IOException {
        Response response = post("/v1/mash-plans", body(PALE, atHand, more));
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(200);
        return MAPPER.readTree(response.asByteArray());
    }

    private static void refused(String grist, String atHand, String more, String pointer, String detail)
            throws IOException {
        Response response = post("/v1/mash-plans", body(grist, atHand, more));
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(400);
        JsonNode problem = MAPPER.readTree(response.asByteArray());
        assertThat(problem.get("errors")).as(response.asString()).anySatisfy(error -> {
            assertThat(error.get("pointer").asText()).isEqualTo(pointer);
            assertThat(error.get("detail").asText()).contains(detail);
        });
        assertThat(problem.get("safety")).isNotEmpty();
    }

    private static List<String> texts(JsonNode list, String member) {
        return StreamSupport.stream(list.spliterator(), false)
                .map(node -> node.get(member).asText())
                .toList();
    }

    private static JsonNode check(JsonNode answer, String code) {
        return StreamSupport.stream(answer.get("checks").spliterator(), false)
                .filter(check -> check.get("code").asText().equals(code))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void aPredictionOfThePlanIsThePlansPrediction() throws IOException {
        JsonNode answer = plan(
                "'acids': [%s], 'salts': [{'salt': 'gypsum'}], 'dilutingWater': {'mostPercent': 50}"
                        .formatted(PHOSPHORIC),
                "'ions': {'sulfate': {'low': {'value': 60, 'unit': 'mg/L'}, 'high': {'value': 70, 'unit': 'mg/L'}}, 'alkalinity': {'high': {'value': 2, 'unit':"
                        + " 'mEq/L'}}}");
        JsonNode result = answer.get("result");
        assertThat(texts(result.get("additions"), "kind")).containsExactly("diluting-water", "salt", "acid");
        JsonNode water = result.get("additions").get(0);
        String liquor = "'liquor': {'sources': [{'volume': %s, 'water': {%s}}, {'volume': %s, 'water': {}}]}"
                .formatted(water.get("ownLiquor"), TAP, water.get("volume"));
        String additions =
                "'additions': [{'salt': 'gypsum', 'mass': %s}, {'acid': 'phosphoric', 'strength': {'value': 10, 'unit': '%%w/w'}, 'volume': %s}]"
                        .formatted(
                                result.get("additions").get(1).get("mass"),
                                result.get("additions").get(2).get("volume"));
        JsonNode prediction = MAPPER.readTree(
                post("/v1/mash-predictions", "{'grist': [%s], %s, %s}".formatted(PALE, liquor, additions))
                        .asByteArray());
        assertThat(prediction.get("result").get("ph"))
                .isEqualTo(result.get("prediction").get("ph"));
        assertThat(prediction.get("result").get("standardUncertainty"))
                .isEqualTo(result.get("prediction").get("standardUncertainty"));
        assertThat(prediction.get("result").get("ions"))
                .isEqualTo(result.get("prediction").get("ions"));
        assertThat(result.get("after").get("ph"))
                .isEqualTo(result.get("prediction").get("ph"));
        assertThat(result.get("outcome").asText()).isEqualTo("plan");
        assertThat(result.get("standsInTheWay")).isEmpty();
        assertThat(result.get("wanted")).allMatch(wanted -> wanted.get("met").asBoolean());
    }

    @Test
    void theProbabilitiesSumToOne() throws IOException {
        JsonNode after =
                plan("'acids': [%s]".formatted(PHOSPHORIC), "").get("result").get("after");
        assertThat(after.get("probabilityBelow").asDouble()
                        + after.get("probabilityInRange").asDouble()
                        + after.get("probabilityAbove").asDouble())
                .isBetween(0.998, 1.002);
        assertThat(after.get("standardUncertainty").asDouble()).isBetween(0.1, 0.2);
    }

    @ParameterizedTest
    @CsvSource({"hydrochloric,31,25", "sulfuric,96,15"})
    void strongMineralAcidIsCountedDiluted(String acid, double percent, double limit) throws IOException {
        String strong = "'acids': [{'acid': '%s', 'strength': {'value': %s, 'unit': '%%w/w'}}]";
        JsonNode answer = plan(strong.formatted(acid, percent), "");
        JsonNode addition = answer.get("result").get("additions").get(0);
        assertThat(addition.get("strength").get("value").asDouble()).isEqualTo(10);
        assertThat(addition.get("diluteFirst").get("makes").get("value").asDouble())
                .isGreaterThan(addition.get("volume").get("value").asDouble());
        assertThat(check(answer, "dose.dilute-first").get("outcome").asText()).isEqualTo("stop");
        assertThat(answer.get("result").get("advice").asText()).contains("First pour");
        assertThat(texts(answer.get("safety"), "code")).contains("substance.corrosive");
        JsonNode mild = plan(strong.formatted(acid, limit - 0.1), "");
        assertThat(mild.get("result").get("additions").get(0).has("diluteFirst"))
                .isFalse();
        assertThat(check(mild, "dose.strength").get("outcome").asText()).isEqualTo("pass");
    }

    @Test
    void theLimitOfAStrongAcidCountsAsBought() throws IOException {
        String acid =
                "'acids': [{'acid': 'hydrochloric', 'strength': {'value': 30, 'unit': '%w/w'}, 'mostMass': {'value':"
                        + " 5, 'unit': 'g'}}]";
        JsonNode addition = plan(acid, "").get("result").get("additions").get(0);
        assertThat(addition.get("mass").get("value").asDouble()).isBetween(14.4, 15.0);
    }

    @Test
    void aPowderIsWeighed() throws IOException {
        String citric =
                "'acids': [{'acid': 'citric', 'strength': {'value': 100, 'unit': '%w/w'}, 'mostMass': {'value': 50,"
                        + " 'unit': 'g'}}]";
        JsonNode result = plan(citric, "").get("result");
        assertThat(result.get("additions").get(0).has("volume")).isFalse();
        assertThat(result.get("additions").get(0).get("mass").get("unit").asText())
                .isEqualTo("g");
        assertThat(result.get("addFirst").get("mass").get("value").asDouble()).isPositive();
    }

    @Test
    void tooLittleIsNearestReachableWithWhatStandsInTheWay() throws IOException {
        JsonNode result = plan(
                        "'acids': [{'acid': 'phosphoric', 'strength': {'value': 10, 'unit': '%w/w'}, 'most': {'value': 20,"
                                + " 'unit': 'mL'}}]",
                        "")
                .get("result");
        assertThat(result.get("outcome").asText()).isEqualTo("nearest-reachable");
        JsonNode first = result.get("standsInTheWay").get(0);
        assertThat(first.get("constraint").asText()).isEqualTo("plan.amount-volume");
        assertThat(first.get("pointer").asText()).isEqualTo("/atHand/acids/0/most");
        assertThat(first.get("enoughAlone").asBoolean()).isTrue();
        assertThat(first.get("limit").asDouble()).isEqualTo(20);
        assertThat(result.get("advice").asText()).contains(first.get("message").asText());
        assertThat(texts(result.get("binds"), "constraint")).containsExactly("plan.amount-volume");
    }

    @Test
    void alternativesSayWhatDiffers() throws IOException {
        JsonNode answer = plan(
                "'acids': [%s, {'acid': 'lactic', 'strength': {'value': 80, 'unit': '%%w/w'}}], 'acidulatedMalt': {}"
                        .formatted(PHOSPHORIC),
                "");
        JsonNode alternatives = answer.get("result").get("alternatives");
        assertThat(texts(alternatives, "with")).hasSize(2);
        for (JsonNode alternative : alternatives) {
            assertThat(alternative.get("difference").asText())
                    .contains("instead of")
                    .contains("as many additions");
            assertThat(alternative.get("objective").get("total").asDouble())
                    .isGreaterThanOrEqualTo(
                            answer.get("result").get("objective").get("total").asDouble() - 1e-3);
        }
    }

    @Test
    void whatIsNotStatedIsNoted() throws IOException {
        JsonNode answer = plan("'acids': [%s]".formatted(PHOSPHORIC), "");
        assertThat(check(answer, "plan.range").get("outcome").asText()).isEqualTo("note");
        assertThat(check(answer, "plan.most").get("outcome").asText()).isEqualTo("note");
        assertThat(check(answer, "plan.most").get("pointer").asText()).isEqualTo("/atHand/acids/0");
        assertThat(answer.get("basis").get("model").asText()).isEqualTo("mash-plan");
        assertThat(texts(answer.get("safety"), "code")).endsWith("defer.label-and-codes");
    }

    @Test
    void badInputIsRefusedWithItsPlace() throws IOException {
        String acids = "'acids': [%s]".formatted(PHOSPHORIC);
        refused(PALE, "", "", "/atHand", "is empty");
        refused(PALE, "'acids': [], 'salts': []", "", "/atHand", "is empty");
        refused(PALE, acids, "'lowPh': 5.5, 'highPh': 5.3", "/lowPh", "must be below highPh (5.3) but is 5.5");
        refused(PALE, acids, "'lowPh': 5.45, 'highPh': 5.6", "/targetPh", "must lie in the range from 5.45 to 5.6");
        refused(PALE, acids.replace("phosphoric", "vinegar"), "", "/atHand/acids/0/acid", "is no acid");
        refused(PALE, "'salts': [{'salt': 'sodium-bicarbonate'}]", "", "/atHand/salts/0/salt", "list it under bases");
        refused(PALE, "'salts': [{'salt': 'sand'}]", "", "/atHand/salts/0/salt", "is no salt");
        refused(PALE, "'bases': [{'base': 'gypsum'}]", "", "/atHand/bases/0/base", "is no base");
        refused(
                PALE,
                "'salts': [{'salt': 'gypsum', 'most': {'value': -1, 'unit': 'g'}}]",
                "",
                "/atHand/salts/0/most/value",
                "-1");
        refused(PALE, "'dilutingWater': {'mostPercent': 101}", "", "/atHand/dilutingWater/mostPercent", "101");
        refused(PALE, "'acidulatedMalt': {'mostPercent': 31}", "", "/atHand/acidulatedMalt/mostPercent", "31");
        refused(
                PALE,
                "'acidulatedMalt': {'lacticAcidPercent': 0}",
                "",
                "/atHand/acidulatedMalt/lacticAcidPercent",
                "0.1");
        refused(
                PALE,
                acids,
                "'ions': {'calcium': {'low': {'value': 100, 'unit': 'mg/L'}, 'high': {'value': 50, 'unit': 'mg/L'}}}",
                "/ions/calcium",
                "must run upwards");
        refused(PALE, acids, "'ions': {'calcium': {}}", "/ions/calcium", "needs a low or a high end");
        refused(
                PALE,
                acids,
                "'ions': {'calcium': {'low': {'value': 10, 'unit': 'mg/L-as-S'}}}",
                "/ions/calcium/low/unit",
                "as-S is for sulfate");
        refused(
                PALE,
                acids,
                "'ions': {'sodium': {'high': {'value': 9999, 'unit': 'mg/L'}}}",
                "/ions/sodium/high",
                "200 mmol/L");
        refused(PALE, acids, "'mostLactate': {'value': 4, 'unit': 'mg/L-as-N'}", "/mostLactate/unit", "lactate");
        refused(PALE, acids, "'steps': {'scale': {'value': 0, 'unit': 'g'}}", "/steps/scale", "0 g");
        refused(PALE, acids, "'steps': {'syringe': {'value': 2, 'unit': 'L'}}", "/steps/syringe", "2 L");
        refused(
                PALE,
                "'acids': [{'acid': 'citric', 'strength': {'value': 100, 'unit': '%w/w'}, 'most': {'value': 9, 'unit': 'mL'}}]",
                "",
                "/atHand/acids/0/most",
                "powder");
        refused(
                PALE,
                "'acids': [{'acid': 'lactic', 'strength': {'value': 80, 'unit': '%w/w'}, 'most': {'value': 9, 'unit':"
                        + " 'mL'}, 'mostMass': {'value': 9, 'unit': 'g'}}]",
                "",
                "/atHand/acids/0/mostMass",
                "one of the two");
        refused(String.join(",", Collections.nCopies(65, PALE)), acids, "", "/grist", "64");
        StringBuilder many = new StringBuilder();
        for (int i = 1; i <= 64; i++) {
            many.append(i == 1 ? "" : ",")
                    .append(
                            "{'malt': 'caramel', 'colour': {'value': %s, 'unit': 'EBC'}, 'mass': {'value': 0.1, 'unit': 'kg'}}"
                                    .formatted(3 * i));
        }
        refused(many.toString(), "'acidulatedMalt': {}", "", "/grist", "63 different malts");
    }

    @Test
    void allFaultsComeAtOnce() throws IOException {
        JsonNode problem = MAPPER.readTree(post(
                        "/v1/mash-plans",
                        body(
                                PALE.replace("pale", "purple"),
                                "'acids': [%s]".formatted(PHOSPHORIC.replace("phosphoric", "vinegar")),
                                "'lowPh': 5.5, 'highPh': 5.3"))
                .asByteArray());
        assertThat(texts(problem.get("errors"), "pointer"))
                .containsExactlyInAnyOrder("/lowPh", "/atHand/acids/0/acid", "/grist/0/malt");
    }

    @Test
    void aMashFarFromAnythingHasNoAnswer() throws IOException {
        Response response = post(
                "/v1/mash-plans",
                body(
                        PALE,
                        "'acids': [%s]".formatted(PHOSPHORIC),
                        "'additions': [{'salt': 'calcium-hydroxide', 'mass': {'value': 200, 'unit': 'g'}}]"));
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(422);
    }

    @Test
    void everyWordingIsOfACodeOfThisPackageAndHasNoHoleLeft() {
        for (Row row : Table.read("checks-plan.csv").rows()) {
            assertThat(row.text("code")).startsWith("plan.");
            assertThat(row.text("message").replaceAll("\\{(observed|expected|subject)}", ""))
                    .doesNotContain("{")
                    .endsWith(".");
        }
    }
}

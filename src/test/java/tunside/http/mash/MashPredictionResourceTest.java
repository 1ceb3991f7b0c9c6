package tunside.http.mash;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import java.io.IOException;
import java.util.Collections;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tunside.mash.MaltClasses;
import tunside.reference.Table;

@QuarkusTest
class MashPredictionResourceTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();
    private static final String PALE = "{'malt': 'pale', 'mass': {'value': 5, 'unit': 'kg'}}";
    private static final String LIQUOR = "{'volume': {'value': 20, 'unit': 'L'}}";

    private static Response post(String grist, String liquor, String more) {
        String body = "{'grist': [%s], 'liquor': %s%s}".formatted(grist, liquor, more.isEmpty() ? "" : ", " + more);
        return given().contentType("application/json")
                .body(body.replace('\'', '"'))
                .post("/v1/mash-predictions");
    }

    private static JsonNode good(String grist, String liquor, String more) throws IOException {
        Response response = post(grist, liquor, more);
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(200);
        return MAPPER.readTree(response.asByteArray());
    }

    private static void refused(Response response, int status, String pointer, String inDetail) throws IOException {
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(status);
        JsonNode problem = MAPPER.readTree(response.asByteArray());
        assertThat(problem.get("errors")).as(response.asString()).anySatisfy(error -> {
            assertThat(error.get("pointer").asText()).isEqualTo(pointer);
            assertThat(error.get("detail").asText()).contains(inDetail);
        });
        assertThat(problem.get("checks")).isNotEmpty();
        assertThat(problem.get("safety")).isNotEmpty();
    }

    @Test
    void anUnknownMaltAndANegativeMassAreNamedInOneAnswer() throws IOException {
        Response response = post(
                "{'malt': 'frost', 'mass': {'value': -1, 'unit': 'kg'}}",
                LIQUOR,
                "'additions': ["
                        + "{'acid': 'aqua', 'mass': {'value': -2, 'unit': 'g'}}, {'salt': 'sand', 'mass': {'value': 1, 'unit': 'stone'}}]");
        refused(response, 400, "/grist/0/malt", "\"frost\" is no malt class; choose one of pale");
        refused(response, 400, "/grist/0/mass/value", "is -1");
        refused(response, 400, "/additions/0/acid", "choose one of lactic");
        refused(response, 400, "/additions/1/salt", "\"sand\" is no salt");
        refused(response, 400, "/additions/1/mass/unit", "kg");
    }

    @Test
    void paleMaltInDistilledWaterLandsAtItsOwnPh() throws IOException {
        JsonNode result = good(PALE, LIQUOR, "").get("result");
        assertThat(result.get("ph").asDouble()).isEqualTo(5.72);
        assertThat(result.get("interval90").get("low").asDouble()).isEqualTo(5.48);
        assertThat(result.get("interval90").get("high").asDouble()).isEqualTo(5.96);
        assertThat(result.get("bufferCapacityMeqPerPh").asDouble()).isEqualTo(190);
        assertThat(result.get("bufferCapacityMeqPerKgPh").asDouble()).isEqualTo(38);
        assertThat(result.get("limitedBy").get("input").asText()).isEqualTo("malt-types-bias");
        assertThat(result.get("limitedBy").get("advice").asText()).contains("distilled water");
        assertThat(result.get("residualAlkalinity").get("unit").asText()).isEqualTo("mEq/L");
    }

    @Test
    void theSameMashInTradeUnitsIsTheSameMash() throws IOException {
        String pounds = "{'malt': 'pale', 'mass': {'value': 11.0231131, 'unit': 'lb'}}";
        String gallons = "{'volume': {'value': 5.28344105, 'unit': 'US-gal'}, 'water': {'alkalinity':"
                + " {'value': 8.4116, 'unit': 'dH'}, 'alkalinityEndPoint': 4.3, 'ph': 8.3}}";
        String litres = "{'volume': {'value': 20, 'unit': 'L'}, 'water': {'alkalinity': {'value': 3, 'unit': 'mEq/L'},"
                + " 'alkalinityEndPoint': 4.3, 'ph': 8.3}}";
        JsonNode metric = good(PALE, litres, "").get("result");
        JsonNode trade = good(pounds, gallons, "").get("result");
        assertThat(trade.get("ph")).isEqualTo(metric.get("ph"));
        assertThat(trade.get("standardUncertainty")).isEqualTo(metric.get("standardUncertainty"));
    }

    /** Cases B, D and E of published/mash/golden.csv, now with the water read with activities and the acid from its label. */
    @Test
    void theGoldenMashesComeOutOverHttp() throws IOException {
        String malt = "{'malt': 'pale', 'mass': {'value': 5, 'unit': 'kg'}, 'measured': {'distilledWaterPh': 5.74,"
                + " 'bufferingMeqPerKgPh': 38}}";
        String liquor = "{'volume': {'value': 20, 'unit': 'L'}, 'water': {%s 'alkalinityEndPoint': 4.3, 'ph': 8.3}}";
        String alkaline = liquor.formatted("'alkalinity': {'value': 3, 'unit': 'mEq/L'},");
        String hard = "{'volume': {'value': 20, 'unit': 'L'}, 'water': {'calcium': {'value': 5, 'unit': 'mEq/L'},"
                + " 'magnesium': {'value': 1, 'unit': 'mEq/L'}, 'chloride': {'value': 6, 'unit': 'mEq/L'},"
                + " 'alkalinity': {'value': 0, 'unit': 'mEq/L'}, 'ph': 7}}";
        String lactic = "'additions': [{'acid': 'lactic', 'strength': {'value': 20, 'unit': '%w/w'}, 'mass': {'value':"
                + " 27.0234, 'unit': 'g'}}]";
        assertThat(good(malt, alkaline, "").get("result").get("ph").asDouble()).isBetween(5.94, 5.98);
        assertThat(good(malt, hard, "").get("result").get("ph").asDouble()).isBetween(5.55, 5.59);
        assertThat(good(malt, LIQUOR, lactic).get("result").get("ph").asDouble())
                .isBetween(5.41, 5.45);
    }

    @Test
    void acidsSaltsAndBasesAreTaken() throws IOException {
        double plain = good(PALE, LIQUOR, "").get("result").get("ph").asDouble();
        String acid =
                "'additions': [{'acid': 'phosphoric', 'strength': {'value': 10, 'unit': '%w/w'}, 'mass': {'value': 30, 'unit': 'g'}}]";
        String base = "'additions': [{'salt': 'calcium-hydroxide', 'mass': {'value': 2, 'unit': 'g'}}]";
        String salt = "'additions': [{'salt': 'gypsum', 'mass': {'value': 5, 'unit': 'g'}}]";
        assertThat(good(PALE, LIQUOR, acid).get("result").get("ph").asDouble()).isLessThan(plain);
        assertThat(good(PALE, LIQUOR, base).get("result").get("ph").asDouble()).isGreaterThan(plain);
        assertThat(good(PALE, LIQUOR, salt).get("result").get("ph").asDouble()).isLessThan(plain);
    }

    @ParameterizedTest
    @CsvSource({"hydrochloric, 24.9, pass", "hydrochloric, 25, stop", "sulfuric, 14.9, pass", "sulfuric, 15, stop"})
    void corrosiveMineralAcidIsStopped(String acid, double percent, String outcome) throws IOException {
        String addition =
                "'additions': [{'acid': '%s', 'strength': {'value': %s, 'unit': '%%w/w'}, 'mass': {'value': 3, 'unit': 'g'}}]"
                        .formatted(acid, percent);
        assertThat(good(PALE, LIQUOR, addition).get("checks")).anySatisfy(check -> {
            assertThat(check.get("code").asText()).isEqualTo("mash.acid-neat");
            assertThat(check.get("outcome").asText()).isEqualTo(outcome);
            assertThat(check.get("pointer").asText()).isEqualTo("/additions/0/strength");
        });
    }

    @ParameterizedTest
    @CsvSource({"fit, pass", "fit-with-care, note", "unfit, caution"})
    void aPredictionSaysWhetherTheElectrodeIsFitButDoesNotRestOnIt(String verdict, String outcome) throws IOException {
        String calibration =
                "'calibration': {'model': 'calibration-line-1', 'signal': 'potential', 'temperature': {'value': 20, 'unit': 'degC'},"
                        + " 'slopeMvPerPh': 57.5, 'offset': {'value': 2, 'unit': 'mV'}, 'slopeVariance': 0.02, 'offsetVariance': 0.2,"
                        + " 'slopeOffsetCovariance': 0.01, 'isothermalPoint': 'offset-kept', 'meter': {'compensation': 'automatic'},"
                        + " 'lowestPh': 4, 'highestPh': 7, 'verdict': '" + verdict + "'}";
        JsonNode answer = good(PALE, LIQUOR, calibration);
        assertThat(answer.get("checks")).anySatisfy(check -> {
            assertThat(check.get("code").asText()).isEqualTo("mash.calibration");
            assertThat(check.get("outcome").asText()).isEqualTo(outcome);
            assertThat(check.get("pointer").asText()).isEqualTo("/calibration/verdict");
        });
        assertThat(answer.get("result")).isEqualTo(good(PALE, LIQUOR, "").get("result"));
    }

    @Test
    void crushRestAndDecoctionAreTaken() throws IOException {
        JsonNode result = good(PALE, LIQUOR, "'millGapMm': 1.2, 'rest': {'value': 1, 'unit': 'h'}, 'decoction': true")
                .get("result");
        assertThat(result.get("ph").asDouble()).isEqualTo(5.57);
        assertThat(result.get("bufferCapacityMeqPerKgPh").asDouble()).isEqualTo(21.7);
    }

    @Test
    void asMuchAcidAsTheContractAllowsIsRefusedAndNoFaultOfTheService() throws IOException {
        String acid =
                "{'acid': 'sulfuric', 'strength': {'value': 96, 'unit': '%w/w'}, 'volume': {'value': 250, 'unit': 'mL'}}";
        String all = "'additions': [" + String.join(", ", Collections.nCopies(32, acid)) + "]";
        refused(post(PALE, LIQUOR, all), 422, "/additions", "would land at pH 0,");
    }

    @Test
    void everyMaltClassIsAnswered() throws IOException {
        for (String id : MaltClasses.all().keySet()) {
            String grist = PALE + ", {'malt': '%s', 'mass': {'value': 200, 'unit': 'g'}}".formatted(id);
            JsonNode checks = good(grist, LIQUOR, "").get("checks");
            assertThat(checks).anySatisfy(check -> {
                assertThat(check.get("code").asText()).isEqualTo("mash.malt-evidence");
                assertThat(check.get("pointer").asText()).isEqualTo("/grist/1");
            });
        }
    }

    @Test
    void sixtyFourMaltsAreTakenAndSixtyFiveAreNot() throws IOException {
        assertThat(good(malts(64), LIQUOR, "").get("result").get("contributions"))
                .hasSize(64 + 3);
        refused(post(malts(65), LIQUOR, ""), 400, "/grist", "from 1 to 64 items but has 65");
        refused(post("", LIQUOR, ""), 400, "/grist", "from 1 to 64 items but has 0");
    }

    private static String malts(int count) {
        return IntStream.range(0, count)
                .mapToObj(i ->
                        "{'malt': 'caramel', 'mass': {'value': 1, 'unit': 'kg'}, 'colour': {'value': %d, 'unit': 'EBC'}}"
                                .formatted(30 + i))
                .collect(Collectors.joining(","));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            {'malt': 'pale', 'mass': {'value': 5}}                                  | /grist/0/mass/unit  | missing
            {'malt': 'pale', 'mass': {'value': 5, 'unit': 'stone'}}                 | /grist/0/mass/unit  | kg
            {'malt': 'pale', 'mass': {'value': -5, 'unit': 'kg'}}                   | /grist/0/mass/value | -5
            {'malt': 'pale', 'mass': {'value': 0, 'unit': 'kg'}}                    | /grist/0/mass       | 0 kg
            {'malt': 'pale', 'mass': 5}                                             | /grist/0/mass       | object
            {'malt': 'mystery', 'mass': {'value': 5, 'unit': 'kg'}}                 | /grist/0/malt       | caramel-wheat
            {'mass': {'value': 5, 'unit': 'kg'}}                                    | /grist/0/malt       | missing
            {'malt': 'pale', 'mass': {'value': 5, 'unit': 'kg'}, 'lacticAcidPercent': 3} | /grist/0/lacticAcidPercent | no lactic acid
            {'malt': 'acidulated', 'mass': {'value': 5, 'unit': 'kg'}, 'lacticAcidPercent': 3, 'measured': {'distilledWaterPh': 3.4}} | /grist/0/lacticAcidPercent | never both
            {'malt': 'pale', 'mass': {'value': 5, 'unit': 'kg'}, 'measured': {'distilledWaterPh': 9}} | /grist/0/measured/distilledWaterPh | 9
            {'malt': 'pale', 'mass': {'value': 5, 'unit': 'kg'}, 'measured': {'bufferingMeqPerKgPh': 38, 'coefficients': {'a1': -38, 'a2': 0, 'a3': 0}}} | /grist/0/measured/coefficients | one of the two
            {'malt': 'pale', 'mass': {'value': 5, 'unit': 'kg'}, 'measured': {'coefficients': {'a1': -38, 'a2': 100, 'a3': 0}}} | /grist/0/measured/coefficients | must fall
            {'malt': 'caramel', 'mass': {'value': 5, 'unit': 'kg'}, 'colour': {'value': 9000, 'unit': 'EBC'}} | /grist/0/colour/value | 5000
            """)
    void aBadMaltIsRefusedAtItsPlace(String malt, String pointer, String inDetail) throws IOException {
        refused(post(malt, LIQUOR, ""), 400, pointer, inDetail);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            {}                                                                            | /additions/0          | either an acid or a salt
            {'acid': 'lactic', 'salt': 'gypsum', 'mass': {'value': 5, 'unit': 'g'}}       | /additions/0          | either an acid or a salt
            {'acid': 'lactic', 'mass': {'value': 5, 'unit': 'g'}}                         | /additions/0/strength | missing
            {'acid': 'lactic', 'strength': {'value': 101, 'unit': '%w/w'}, 'mass': {'value': 5, 'unit': 'g'}} | /additions/0/strength/value | 101
            {'acid': 'lactic', 'strength': {'value': 80, 'unit': '%w/w'}}                 | /additions/0          | either a mass or a volume
            {'acid': 'vinegar', 'strength': {'value': 5, 'unit': '%w/w'}, 'mass': {'value': 5, 'unit': 'g'}} | /additions/0/acid | lactic, phosphoric
            {'acid': 'citric', 'strength': {'value': 100, 'unit': '%w/w'}, 'volume': {'value': 5, 'unit': 'mL'}} | /additions/0/volume | weighed
            {'salt': 'gypsum'}                                                            | /additions/0/mass     | missing
            {'salt': 'table-sugar', 'mass': {'value': 5, 'unit': 'g'}}                    | /additions/0/salt     | gypsum
            {'salt': 'gypsum', 'strength': {'value': 5, 'unit': '%w/w'}, 'mass': {'value': 5, 'unit': 'g'}} | /additions/0/strength | belongs to an acid
            {'salt': 'sodium-chloride', 'mass': {'value': 5, 'unit': 'kg'}}               | /additions            | 250
            """)
    void aBadAdditionIsRefusedAtItsPlace(String addition, String pointer, String inDetail) throws IOException {
        refused(post(PALE, LIQUOR, "'additions': [" + addition + "]"), 400, pointer, inDetail);
    }

    @Test
    void aBadLiquorIsRefusedAtItsPlace() throws IOException {
        refused(post(PALE, "{}", ""), 400, "/liquor/volume", "missing");
        refused(post(PALE, "{'volume': {'value': -1, 'unit': 'L'}}", ""), 400, "/liquor/volume/value", "-1");
        refused(post(PALE, "null", ""), 400, "/liquor", "missing");
    }

    @Test
    void aBadCrushOrRestIsRefusedAtItsPlace() throws IOException {
        refused(post(PALE, LIQUOR, "'millGapMm': 3"), 400, "/millGapMm", "3");
        refused(post(PALE, LIQUOR, "'rest': {'value': 2, 'unit': 'days'}"), 400, "/rest/unit", "min");
        refused(post(PALE, LIQUOR, "'rest': {'value': 30, 'unit': 'h'}"), 400, "/rest", "30 h");
    }

    @Test
    void aColourBeyondEveryMaltIsRefused() throws IOException {
        String malt =
                "{'malt': 'caramel', 'mass': {'value': 5, 'unit': 'kg'}, 'colour': {'value': 4000, 'unit': 'EBC'}}";
        refused(post(malt, LIQUOR, ""), 400, "/grist/0/colour", "2000 EBC but is 4000");
    }

    @Test
    void allFaultsComeAtOnce() throws IOException {
        Response response = post(
                "{'malt': 'mystery', 'mass': {'value': 5, 'unit': 'kg'}}, {'malt': 'pale', 'mass': {'value': 0, 'unit': 'g'}}",
                LIQUOR,
                "'additions': [{'acid': 'vinegar', 'mass': {'value': 5, 'unit': 'g'}}]");
        List<String> pointers = StreamSupport.stream(
                        MAPPER.readTree(response.asByteArray()).get("errors").spliterator(), false)
                .map(error -> error.get("pointer").asText())
                .toList();
        assertThat(pointers).contains("/grist/0/malt", "/grist/1/mass", "/additions/0/acid", "/additions/0/strength");
    }

    @Test
    void aMashBeyondTheModelHasNoAnswer() throws IOException {
        String acid =
                "'additions': [{'acid': 'hydrochloric', 'strength': {'value': 10, 'unit': '%w/w'}, 'volume': {'value': 500, 'unit': 'mL'}}]";
        refused(post(PALE, LIQUOR, acid), 422, "/additions", "no malt was ever titrated");
    }

    @Test
    void theTablesAnswerWithAnEntityTag() {
        for (String path : List.of("/v1/malts", "/v1/ph-ranges")) {
            Response response = given().get(path);
            assertThat(response.statusCode()).isEqualTo(200);
            assertThat(given().header("If-None-Match", response.header("ETag"))
                            .get(path)
                            .statusCode())
                    .isEqualTo(304);
        }
    }

    @Test
    void everyInputOfAPredictionHasWords() {
        Table.read("mash-inputs.csv")
                .rows()
                .forEach(row ->
                        assertThat(InputWords.of(row.text("input")).advice()).endsWith("."));
    }
}

package tunside.http.dosing;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.notNullValue;
import static org.hamcrest.Matchers.startsWith;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import io.restassured.response.ValidatableResponse;
import java.io.IOException;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Liquor, wort and beer, bases, histories and bad input of {@code POST /v1/acid-doses}. */
@QuarkusTest
class AcidDoseLiquidsResourceTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();
    private static final String ACID = "'acid': 'phosphoric', 'strength': {'value': 10, 'unit': '%w/w'}";
    private static final String MASH = "'liquid': 'mash', 'measuredPh': 5.7, 'phUncertainty': 0.03, 'targetPh': 5.4,"
            + " 'grist': [{'malt': 'pale', 'mass': {'value': 5, 'unit': 'kg'}}],"
            + " 'liquor': {'volume': {'value': 18, 'unit': 'L'}}";
    private static final String LIQUOR =
            "'liquid': 'liquor', 'targetPh': 5.6, 'liquor': {'volume': {'value': 20, 'unit': 'L'},"
                    + " 'water': {'alkalinity': {'value': 3, 'unit': 'mEq/L'}, 'ph': 7.6}}";
    private static final String WORT = "'liquid': 'wort', 'measuredPh': 5.5, 'phUncertainty': 0.02, 'targetPh': 5.2,"
            + " 'volume': {'value': 20, 'unit': 'L'}";

    private static Response post(String... members) {
        return given().contentType("application/json")
                .body(("{" + String.join(", ", members) + "}").replace('\'', '"'))
                .post("/v1/acid-doses");
    }

    private static ValidatableResponse good(String... members) {
        return post(members).then().statusCode(200);
    }

    private static JsonNode result(String... members) throws IOException {
        Response response = post(members);
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(200);
        return MAPPER.readTree(response.asByteArray()).get("result");
    }

    private static void refused(String pointer, String inDetail, String... members) throws IOException {
        Response response = post(members);
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(400);
        JsonNode problem = MAPPER.readTree(response.asByteArray());
        assertThat(problem.get("errors")).as(response.asString()).anySatisfy(error -> {
            assertThat(error.get("pointer").asText()).isEqualTo(pointer);
            assertThat(error.get("detail").asText()).contains(inDetail);
        });
        assertThat(problem.get("checks")).isNotEmpty();
        assertThat(problem.get("safety")).isNotEmpty();
    }

    private static String base(String id) {
        return "'base': '%s'".formatted(id);
    }

    @Test
    void aLiquorMayLeaveOutItsPhAndHearsOfTheCarbonDioxide() throws IOException {
        JsonNode result = result(LIQUOR, ACID);
        assertThat(result.get("outcome").asText()).isEqualTo("dose");
        assertThat(result.get("now").get("ph").asDouble()).isEqualTo(7.6);
        // 3 mEq/L, 85 % of it taken at 5.6 (fraction 1/(1 + 10^(5.6 - 6.33))), 1.03 protons a mole
        assertThat(result.get("total").get("mass").get("value").asDouble())
                .isCloseTo(20 * 3 * 0.84 / 1.03 / 1.0205, withinPercent(4));
        assertThat(result.get("phAfterCarbonDioxideEscapes").asDouble()).isBetween(6.3, 7.5);
        good(LIQUOR, ACID).body("checks.find { it.code == 'dose.closed' }.outcome", equalTo("note"));
    }

    private static org.assertj.core.data.Percentage withinPercent(double percent) {
        return org.assertj.core.data.Percentage.withPercentage(percent);
    }

    @Test
    void hotterLiquorIsTaken() throws IOException {
        assertThat(result(LIQUOR, ACID, "'temperature': {'value': 149, 'unit': 'degF'}")
                        .get("now")
                        .get("ph")
                        .asDouble())
                .isNotEqualTo(7.6);
    }

    @Test
    void wortIsDosedByExtractGravityOrMalt() throws IOException {
        double plato = total(result(WORT, ACID, "'originalExtractPlato': 12"));
        double gravity = total(result(WORT, ACID, "'specificGravity': 1.0486"));
        double malt = total(result(WORT, ACID, "'malt': {'value': 3.333, 'unit': 'kg'}"));
        assertThat(plato).isCloseTo(20 * 5 * 0.3 / 1.0205 / 1.01, withinPercent(1));
        assertThat(gravity).isCloseTo(plato, withinPercent(1));
        assertThat(malt).isCloseTo(plato, withinPercent(1));
        good(WORT, ACID, "'originalExtractPlato': 12")
                .body("checks.find { it.code == 'dose.wort-buffering' }.outcome", equalTo("note"))
                .body("result.learnt.unit", equalTo("mEq/(L pH)"));
    }

    private static double total(JsonNode result) {
        return result.get("total").get("mass").get("value").asDouble();
    }

    @Test
    void beerIsLessSureUntilItsSampleIsTitrated() throws IOException {
        String beer = WORT.replace("wort", "beer").replace("5.5", "4.6").replace("5.2", "4.4");
        String extract = "'originalExtractPlato': 12";
        String bench = "'benchTitration': {'sample': {'value': 500, 'unit': 'mL'}, 'startPh': 4.6, 'steps': ["
                + "{'addedMass': {'value': 0.5, 'unit': 'g'}}, {'ph': 4.4, 'phUncertainty': 0.01}]}";
        JsonNode known = result(beer, ACID, extract, bench);
        JsonNode unknown = result(beer, ACID, extract);
        assertThat(width(known)).isLessThan(width(unknown));
        // 0.5 g of acid in half a litre moved it by 0.2, so 20 L take 20 g for the same
        assertThat(total(known)).isCloseTo(20, withinPercent(8));
        good(beer, ACID, extract).body("checks.find { it.code == 'dose.wort-buffering' }.outcome", equalTo("caution"));
        good(beer, ACID, extract, bench)
                .body("checks.find { it.code == 'dose.wort-buffering' }.outcome", equalTo("pass"));
    }

    private static double width(JsonNode result) {
        JsonNode total = result.get("total");
        return total.get("high90").get("value").asDouble()
                / total.get("low90").get("value").asDouble();
    }

    @Test
    void whatIsTooLowIsRaisedWithTheBaseOfTheCaller() throws IOException {
        String low = MASH.replace("5.7", "5.1").replace("5.4", "5.4");
        String acidulated =
                "'additions': [{'acid': 'lactic', 'strength': {'value': 80, 'unit': '%w/w'}, 'mass': {'value': 16, 'unit': 'g'}}]";
        JsonNode usual = result(low, acidulated, ACID);
        assertThat(usual.get("outcome").asText()).isEqualTo("raise-instead");
        assertThat(usual.get("dosedBase").get("base").asText()).isEqualTo("sodium-bicarbonate");
        assertThat(usual.get("addNow").has("volume")).isFalse();
        double bicarbonate = total(usual);
        JsonNode lime = result(low, acidulated, base("calcium-hydroxide"));
        assertThat(lime.has("dosedAcid")).isFalse();
        assertThat(bicarbonate / total(lime)).isCloseTo(26.99 * (1 - 1 / 3.5) / (11.904 * 0.899), withinPercent(1));
        assertThat(lime.get("advice").asText()).contains("slaked lime");
        good(low, acidulated, base("calcium-hydroxide"))
                .body("checks.find { it.code == 'dose.base' }.outcome", equalTo("caution"));
        good(low, acidulated, base("sodium-bicarbonate"))
                .body("checks.find { it.code == 'dose.base' }.outcome", equalTo("pass"));
    }

    @Test
    void chalkCannotRaiseAMashFar() {
        String low = MASH.replace("5.7", "4.7");
        good(low, base("calcium-carbonate"))
                .body("result.outcome", equalTo("out-of-reach"))
                .body("result.largest.mass.value", equalTo(9.0f))
                .body("result.addNow", equalTo(null))
                .body("checks.find { it.code == 'dose.reach' }.outcome", equalTo("stop"));
    }

    @Test
    void aReadingThatTheGristCannotHaveWithholdsTheDose() {
        good(MASH.replace("5.7", "6.9"), ACID)
                .body("checks.find { it.code == 'dose.measured-against-grist' }.outcome", equalTo("stop"))
                .body("result.addNow", equalTo(null))
                .body("result.stages", hasSize(0))
                .body("result.advice", containsString("a check says stop"));
    }

    @Test
    void anUncalibratedMeterWithholdsTheDose() {
        good(MASH.replace("0.03", "0.4"), ACID)
                .body("checks.find { it.code == 'dose.reading-uncertainty' }.outcome", equalTo("stop"))
                .body("result.addNow", equalTo(null));
    }

    @Test
    void historyMayNameOtherProductsAndRepeatReadings() throws IOException {
        String history =
                "'history': [{'addedVolume': {'value': 5, 'unit': 'mL'}, 'acid': 'lactic', 'strength': {'value': 80, 'unit': '%w/w'}},"
                        + " {'ph': 5.56, 'phUncertainty': 0.05}, {'ph': 5.55, 'phUncertainty': 0.02}, {'addedMass': {'value': 1, 'unit': 'g'}, 'base': 'sodium-bicarbonate'}]";
        JsonNode result = result(MASH, ACID, history);
        assertThat(result.get("now").get("ph").asDouble()).isBetween(5.55, 5.65);
        assertThat(result.get("learnt").get("readings").asInt()).isEqualTo(1);
        assertThat(result.get("learnt").get("high90").asDouble()
                        / result.get("learnt").get("low90").asDouble())
                .isLessThan(1.6 * 1.6);
    }

    @Test
    void aContradictingReadingIsTakenAgainFirst() {
        good(MASH, ACID, "'history': [{'addedVolume': {'value': 30, 'unit': 'mL'}}, {'ph': 5.85}]")
                .body("result.advice", startsWith("The last reading contradicts"))
                .body("checks.find { it.code == 'dose.reading-rose' }.message", containsString("not mixed"));
    }

    @Test
    void whatIsSharedByAllReadingsWidensThePh() throws IOException {
        double shared = result(MASH, ACID, "'sharedUncertainty': 0.04")
                .get("now")
                .get("standardUncertainty")
                .asDouble();
        assertThat(shared).isEqualTo(0.05);
    }

    @Test
    void whatIsAtHandLimitsTheDose() {
        good(MASH, ACID, "'available': {'value': 10, 'unit': 'g'}")
                .body("result.outcome", equalTo("out-of-reach"))
                .body("result.largest.mass.value", equalTo(10.0f))
                .body("result.largest.volume", notNullValue())
                .body("result.anion", equalTo(null));
    }

    @Test
    void aSmallerRiskIsASmallerStage() throws IOException {
        String wide = "'lowPh': 5.35";
        double careful = now(result(MASH, ACID, wide, "'acceptedRisk': 0.01"));
        double bold = now(result(MASH, ACID, wide, "'acceptedRisk': 0.2"));
        assertThat(careful).isLessThan(bold);
    }

    private static double now(JsonNode result) {
        return result.get("addNow").get("mass").get("value").asDouble();
    }

    @Test
    void theFrameIsThereWithItsSources() {
        good(MASH, ACID)
                .body("basis.model", equalTo("staged-dose"))
                .body("basis.sources", hasItem("TROESTER-2009"))
                .body("basis.sources", hasItem("CRC-102"))
                .body("safety.code", not(hasSize(0)))
                .body("checks.code", hasItem("dose.range"));
        good(WORT, ACID, "'originalExtractPlato': 12")
                .body("basis.assumptions", hasItem(containsString("rule of thumb")));
    }

    @Test
    void aCrushThatIsCoarseNeedsLessAcid() throws IOException {
        assertThat(total(result(MASH, ACID, "'millGapMm': 1.2")) / total(result(MASH, ACID)))
                .isCloseTo(0.571, withinPercent(1));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '"', textBlock = """
            /acid                          | an acid is needed    | MASH   |
            /acid                          | is missing           | MASH   | 'strength': {'value': 10, 'unit': '%w/w'}
            /strength                      | is missing           | MASH   | 'acid': 'lactic'
            /base                          | choose one of sodium | MASH   | ACID, 'base': 'sodium-hydroxide'
            /base                          | by stirring          | LIQUOR | ACID, 'base': 'calcium-carbonate'
            /temperature                   | belongs to a liquor  | MASH   | ACID, 'temperature': {'value': 20, 'unit': 'degC'}
            /temperature                   | from 0 to 100        | LIQUOR | ACID, 'temperature': {'value': 120, 'unit': 'degC'}
            /volume                        | belongs to wort      | MASH   | ACID, 'volume': {'value': 20, 'unit': 'L'}
            /malt                          | belongs to wort      | LIQUOR | ACID, 'malt': {'value': 20, 'unit': 'kg'}
            /grist                         | belongs to a mash    | WORT   | ACID, 'originalExtractPlato': 12, 'grist': [{'malt': 'pale', 'mass': {'value': 5, 'unit': 'kg'}}]
            /liquor                        | belongs to a mash or | WORT   | ACID, 'originalExtractPlato': 12, 'liquor': {'volume': {'value': 18, 'unit': 'L'}}
            ""                             | has 0                | WORT   | ACID
            ""                             | has 2                | WORT   | ACID, 'originalExtractPlato': 12, 'specificGravity': 1.048
            /originalExtractPlato          | 35                   | WORT   | ACID, 'originalExtractPlato': 40
            /specificGravity               | 1.003                | WORT   | ACID, 'specificGravity': 0.9
            /smallestStep                  | 0.00001              | MASH   | ACID, 'smallestStep': {'value': 0, 'unit': 'mL'}
            /smallestStep/unit             | missing              | MASH   | ACID, 'smallestStep': {'value': 1}
            /lowPh                         | must be              | MASH   | ACID, 'lowPh': 1
            /targetPh                      | must hold the target | MASH   | ACID, 'lowPh': 5.5
            /acceptedRisk                  | 0.5                  | MASH   | ACID, 'acceptedRisk': 0.9
            /phUncertainty                 | 0.001                | LIQUOR | ACID, 'phUncertainty': 0
            /history/0                     | names no acid        | LOW    | 'history': [{'addedMass': {'value': 1, 'unit': 'g'}}]
            /history/0                     | has 2                | MASH   | ACID, 'history': [{'ph': 5.5, 'addedMass': {'value': 1, 'unit': 'g'}}]
            /history/0/phUncertainty       | belongs to a pH      | MASH   | ACID, 'history': [{'addedMass': {'value': 1, 'unit': 'g'}, 'phUncertainty': 0.02}]
            /history/0/addedVolume         | a base is weighed    | MASH   | ACID, 'history': [{'addedVolume': {'value': 1, 'unit': 'mL'}, 'base': 'sodium-bicarbonate'}]
            /history/0/base                | choose one of        | MASH   | ACID, 'history': [{'addedMass': {'value': 1, 'unit': 'g'}, 'base': 'ash'}]
            /history/0/acid                | choose one of        | MASH   | ACID, 'history': [{'addedMass': {'value': 1, 'unit': 'g'}, 'acid': 'aqua-regia', 'strength': {'value': 10, 'unit': '%w/w'}}]
            /history/0/acid                | give one of the two  | MASH   | ACID, 'history': [{'addedMass': {'value': 1, 'unit': 'g'}, 'acid': 'lactic', 'base': 'sodium-bicarbonate'}]
            /history                       | must not add more    | MASH   | ACID, 'history': [{'addedMass': {'value': 90, 'unit': 'kg'}}]
            /benchTitration/steps          | at least one addition| WORT   | ACID, 'originalExtractPlato': 12, 'benchTitration': {'sample': {'value': 1, 'unit': 'L'}, 'startPh': 5.5, 'steps': [{'ph': 5.4}, {'ph': 5.3}]}
            /benchTitration/sample         | 20 L                 | WORT   | ACID, 'originalExtractPlato': 12, 'benchTitration': {'sample': {'value': 20, 'unit': 'L'}, 'startPh': 5.5, 'steps': [{'addedMass': {'value': 1, 'unit': 'g'}}, {'ph': 5.3}]}
            """)
    void badInputIsRefusedAtItsPlace(String pointer, String inDetail, String question, String more) throws IOException {
        String start = switch (question) {
            case "MASH" -> MASH;
            case "LOW" -> MASH.replace("5.7", "5.1");
            case "LIQUOR" -> LIQUOR;
            default -> WORT;
        };
        String rest = more == null ? "" : more.replace("ACID", ACID);
        refused(pointer, inDetail, rest.isEmpty() ? new String[] {start} : new String[] {start, rest});
    }

    @Test
    void whatALiquidNeedsIsNamed() throws IOException {
        refused(
                "/measuredPh",
                "a wort needs it",
                WORT.replace("'measuredPh': 5.5,", ""),
                ACID,
                "'originalExtractPlato': 12");
        refused("/volume", "a wort needs it", WORT.replace(", 'volume': {'value': 20, 'unit': 'L'}", ""), ACID);
        refused("/liquor", "a liquor needs it", "'liquid': 'liquor', 'targetPh': 5.6", ACID);
        refused("/liquid", "missing", "'targetPh': 5.6", ACID);
        refused("/liquid", "mash", MASH.replace("'mash'", "'MASH'"), ACID);
    }

    @Test
    void answersAreTheSameEveryTime() {
        String first = post(MASH, ACID).asString();
        for (int i = 0; i < 3; i++) {
            assertThat(post(MASH, ACID).asString()).isEqualTo(first);
        }
        assertThat(first.toLowerCase(Locale.ROOT)).doesNotContain("nan");
    }
}

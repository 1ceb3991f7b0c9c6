package tunside.http.review;

import static io.restassured.RestAssured.given;
import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A record of brews as its brewer sends it. */
@QuarkusTest
class BrewReviewResourceTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();

    /** A mash of pale malt, with more members of the malt, the mash and the brew, each after a comma. */
    private static String brew(double ph, double kilograms, String ofMalt, String ofMash, String ofBrew) {
        return """
                {'mash': {'grist': [{'malt': 'pale', 'mass': {'value': %s, 'unit': 'kg'}%s}],
                          'liquor': {'volume': {'value': 16, 'unit': 'L'},
                                     'water': {'calcium': {'value': 60, 'unit': 'mg/L'},
                                               'alkalinity': {'value': 100, 'unit': 'mg/L-as-CaCO3'}, 'ph': 7.6}}%s},
                 'measuredPh': %s, 'phUncertainty': 0.03%s}""".formatted(kilograms, ofMalt, ofMash, ph, ofBrew);
    }

    private static String brew(double ph) {
        return brew(ph, 4, "", "", "");
    }

    private static String lactic(double millilitres) {
        return "{'acid': 'lactic', 'strength': {'value': 80, 'unit': '%%w/w'}, 'volume': {'value': %s, 'unit': 'mL'}}"
                .formatted(millilitres);
    }

    private static Response post(String... brews) {
        return given().contentType("application/json")
                .body("{'brews': [%s]}".formatted(String.join(", ", brews)).replace('\'', '"'))
                .post("/v1/brew-reviews");
    }

    private static JsonNode good(String... brews) throws IOException {
        Response response = post(brews);
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(200);
        return MAPPER.readTree(response.asByteArray());
    }

    private static String[] plus(String[] brews, String... more) {
        List<String> all = new ArrayList<>(Arrays.asList(brews));
        all.addAll(List.of(more));
        return all.toArray(String[]::new);
    }

    private static List<JsonNode> checks(JsonNode answer, String code) {
        return StreamSupport.stream(answer.get("checks").spliterator(), false)
                .filter(check -> check.get("code").asText().equals(code))
                .toList();
    }

    private static final String[] FIVE = {brew(5.60), brew(5.62), brew(5.58), brew(5.61), brew(5.59)};

    @Test
    void aRecordThatFitsCountsEveryBrew() throws IOException {
        JsonNode answer = good(FIVE);
        assertThat(answer.at("/result/brews").asInt()).isEqualTo(5);
        assertThat(answer.at("/result/counted").asInt()).isEqualTo(5);
        assertThat(answer.at("/result/leaveOneOut/setAside").asInt()).isZero();
        assertThat(answer.at("/result/leaveOneOut").has("ofCounted")).isFalse();
        assertThat(answer.at("/result/verdicts/0").has("setAside")).isFalse();
        assertThat(answer.at("/result/verdicts/3/label").asText()).isEqualTo("brew 4");
        assertThat(checks(answer, "review.set-aside").get(0).get("outcome").asText())
                .isEqualTo("pass");
        assertThat(answer.at("/result/leaveOneOut/after/medianAbsolute").asDouble())
                .isLessThan(0.5
                        * answer.at("/result/leaveOneOut/before/medianAbsolute").asDouble());
    }

    /** Ten times the acid: the mash would land where no malt was ever titrated. */
    @Test
    void aBrewThatNoMashCanBeIsNamedAndTheOthersAreReviewedAsWithoutIt() throws IOException {
        JsonNode without = good(FIVE);
        String impossible = brew(5.41, 4, "", ", 'additions': [" + lactic(60) + "]", ", 'label': 'too much acid'");
        JsonNode answer = good(plus(FIVE, impossible));
        assertThat(answer.at("/result/experience")).isEqualTo(without.at("/result/experience"));
        assertThat(answer.at("/result/counted").asInt()).isEqualTo(5);
        JsonNode verdict = answer.at("/result/verdicts/5");
        assertThat(verdict.get("counted").asBoolean()).isFalse();
        assertThat(verdict.get("setAside").asText()).isEqualTo("beyond-model");
        assertThat(verdict.at("/suspected/0/slip").asText()).isEqualTo("acid-strength");
        assertThat(verdict.at("/suspected/0/explains").asBoolean()).isTrue();
        JsonNode check = checks(answer, "review.beyond-model").get(0);
        assertThat(check.get("outcome").asText()).isEqualTo("caution");
        assertThat(check.get("pointer").asText()).isEqualTo("/brews/5/mash");
        assertThat(check.get("message").asText())
                .startsWith("too much acid is set aside")
                .contains("beyond 4,");
        assertThat(checks(answer, "review.set-aside").get(0).get("message").asText())
                .contains("1 of your brews are set aside")
                .contains("errors of leaving one out count them");
        assertThat(checks(answer, "review.brews").get(0).get("outcome").asText())
                .isEqualTo("pass");
    }

    @Test
    void theErrorsCountWhatIsSetAsideAndSayWhatTheyAreWithoutIt() throws IOException {
        JsonNode without = good(FIVE).at("/result/leaveOneOut");
        JsonNode errors = good(plus(FIVE, brew(5.41, 4, "", ", 'additions': [" + lactic(60) + "]", "")))
                .at("/result/leaveOneOut");
        assertThat(errors.get("setAside").asInt()).isEqualTo(1);
        assertThat(errors.at("/ofCounted/after")).isEqualTo(without.get("after"));
        assertThat(errors.at("/ofCounted/before")).isEqualTo(without.get("before"));
        assertThat(errors.at("/after/rootMeanSquare").asDouble())
                .isGreaterThan(5 * errors.at("/ofCounted/after/rootMeanSquare").asDouble());
        assertThat(errors.at("/after/within90").asDouble()).isCloseTo(0.83, within(0.001));
    }

    @Test
    void aDoseThatNoMashCanTakeIsNamedAtItsPlace() throws IOException {
        JsonNode answer = good(plus(
                FIVE,
                brew(
                        5.6,
                        4,
                        "",
                        "",
                        ", 'doses': [{'addition': %s, 'ph': 5.5}, {'addition': %s, 'ph': 5.3}]"
                                .formatted(lactic(2), lactic(70)))));
        JsonNode check = checks(answer, "review.beyond-model").get(0);
        assertThat(check.get("pointer").asText()).isEqualTo("/brews/5/doses/1");
        assertThat(answer.at("/result/counted").asInt()).isEqualTo(5);
    }

    @Test
    void aRecordOfWhichNothingIsLeftTeachesNothingAndSaysSo() throws IOException {
        JsonNode answer = good(brew(5.41, 4, "", ", 'additions': [" + lactic(60) + "]", ""));
        assertThat(answer.at("/result/counted").asInt()).isZero();
        assertThat(answer.at("/result/experience/brews").asInt()).isZero();
        assertThat(answer.at("/result/householdBias/shift").asDouble()).isZero();
        assertThat(answer.at("/result/leaveOneOut").has("ofCounted")).isFalse();
        JsonNode check = checks(answer, "review.brews").get(0);
        assertThat(check.get("outcome").asText()).isEqualTo("caution");
        assertThat(check.get("message").asText()).contains("No brew is counted");
    }

    @Test
    void aReadingFarFromTheOthersSaysWhyItIsSetAside() throws IOException {
        JsonNode answer = good(plus(FIVE, brew(6.4, 4, "", "", "")));
        JsonNode verdict = answer.at("/result/verdicts/5");
        assertThat(verdict.get("setAside").asText()).isEqualTo("far-from-others");
        assertThat(checks(answer, "review.brew").get(5).get("pointer").asText()).isEqualTo("/brews/5");
        assertThat(checks(answer, "review.brew").get(5).get("outcome").asText()).isEqualTo("caution");
    }

    @Test
    void namedProductsAreLearntApart() throws IOException {
        JsonNode answer = good(
                brew(5.60, 4, ", 'product': 'river'", "", ""),
                brew(5.61, 4, ", 'product': 'river'", "", ""),
                brew(5.78, 4, ", 'product': 'hill'", "", ""),
                brew(5.79, 4, ", 'product': 'hill'", "", ""));
        JsonNode malts = answer.at("/result/malts");
        assertThat(malts).hasSize(3);
        assertThat(malts.get(0).has("product")).isFalse();
        assertThat(malts.get(0).get("brews").asInt()).isEqualTo(4);
        assertThat(malts.get(1).get("product").asText()).isEqualTo("hill");
        assertThat(malts.get(1).get("brews").asInt()).isEqualTo(2);
        assertThat(malts.get(2).get("product").asText()).isEqualTo("river");
        assertThat(malts.at("/1/together/shift").asDouble()
                        - malts.at("/2/together/shift").asDouble())
                .isCloseTo(0.16, within(0.04));
        List<String> products = answer.at("/result/experience/parameters").findValuesAsText("product");
        assertThat(products).containsExactly("hill", "river");
    }

    @Test
    void whatAReviewAnswersIsTakenByAPrediction() throws IOException {
        JsonNode review = good(FIVE);
        ObjectNode mash =
                (ObjectNode) MAPPER.readTree(brew(5.6).replace('\'', '"')).get("mash");
        mash.set("experience", review.at("/result/experience"));
        Response response =
                given().contentType("application/json").body(mash.toString()).post("/v1/mash-predictions");
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(200);
        assertThat(MAPPER.readTree(response.asByteArray()).at("/result/ph").asDouble())
                .isCloseTo(5.60, within(0.02));
    }

    @Test
    void moreProductsThanCanBeLearntAreRefused() throws IOException {
        Response response = post(IntStream.range(0, 51)
                .mapToObj(i -> brew(5.6, 4, ", 'product': 'product %s'".formatted(i), "", ""))
                .toArray(String[]::new));
        assertThat(response.statusCode()).isEqualTo(400);
        JsonNode error = MAPPER.readTree(response.asByteArray()).at("/errors/0");
        assertThat(error.get("pointer").asText()).isEqualTo("/brews");
        assertThat(error.get("detail").asText()).isEqualTo("must name at most 50 products of malt but names 51");
    }

    @Test
    void fiftyProductsAreLearntAndTheirExperienceIsTaken() throws IOException {
        JsonNode review = good(IntStream.range(0, 50)
                .mapToObj(i -> brew(5.55 + 0.002 * i, 4, ", 'product': 'product %s'".formatted(i), "", ""))
                .toArray(String[]::new));
        ObjectNode mash = (ObjectNode)
                MAPPER.readTree(brew(5.6, 4, ", 'product': 'product 7'", "", "").replace('\'', '"'))
                        .get("mash");
        mash.set("experience", review.at("/result/experience"));
        Response response =
                given().contentType("application/json").body(mash.toString()).post("/v1/mash-predictions");
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(200);
    }

    @ParameterizedTest(name = "{0} for {1}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '^',
            value = {
                "'measuredPh': 5.6|'measuredPh': 2.4|/brews/1/measuredPh|must be from 2.5 to 10.5 but is 2.4",
                "'measuredPh': 5.6|'measuredPh': 10.6|/brews/1/measuredPh|must be from 2.5 to 10.5 but is 10.6",
                "'measuredPh': 5.6,||/brews/1/measuredPh|is missing",
                "'phUncertainty': 0.03|'phUncertainty': 0|/brews/1/phUncertainty|must be from 0.001 to 0.5 but is 0",
                "'phUncertainty': 0.03|'phUncertainty': 0.03, 'label': ''|/brews/1/label|must have from 1 to 60 characters",
                "'malt': 'pale'|'malt': 'frost'|/brews/1/mash/grist/0/malt|is no malt class",
                "'value': 4.0|'value': 0|/brews/1/mash/grist/0/mass|from 0.000001 to 10000 kg",
                "'mash': {|'mash': {'experience': {'model': 'mash-proton-balance', 'version': '2', 'brews': 0, 'parameters': [], 'covariance': []}, |/brews/1/mash/experience|must be left out",
                "'mash': {|'mash': {'vary': {'pointer': '/liquor/volume', 'from': 10, 'to': 20, 'steps': 3}, |/brews/1/mash/vary|belongs to a prediction alone"
            })
    void aBrokenBrewIsRefusedAtItsPlace(String good, String bad, String pointer, String inDetail) throws IOException {
        String brew = brew(5.6);
        assertThat(brew).contains(good);
        Response response = post(brew, brew.replace(good, bad == null ? "" : bad));
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(400);
        JsonNode errors = MAPPER.readTree(response.asByteArray()).get("errors");
        assertThat(errors).as(response.asString()).anySatisfy(error -> {
            assertThat(error.get("pointer").asText()).isEqualTo(pointer);
            assertThat(error.get("detail").asText()).contains(inDetail);
        });
    }

    @Test
    void noBrewAndTooManyAreRefused() throws IOException {
        for (String[] brews : List.of(
                new String[0], IntStream.range(0, 201).mapToObj(i -> brew(5.6)).toArray(String[]::new))) {
            Response response = post(brews);
            assertThat(response.statusCode()).isEqualTo(400);
            assertThat(response.asString()).contains("must have from 1 to 200 items");
        }
    }

    @Test
    void theExtremesThatTheContractAllowsAreAnswered() throws IOException {
        String drowned =
                "{'acid': 'sulfuric', 'strength': {'value': 96, 'unit': '%w/w'}, 'volume': {'value': 200, 'unit': 'mL'}}";
        String caustic = "{'salt': 'calcium-hydroxide', 'mass': {'value': 250, 'unit': 'g'}}";
        for (double ph : new double[] {2.5, 10.5}) {
            for (String addition : List.of(drowned, caustic)) {
                JsonNode answer = good(
                        brew(ph, 0.001, "", ", 'additions': [" + addition + "]", ""),
                        brew(ph, 4000, "", "", ""),
                        brew(
                                ph,
                                4,
                                "",
                                "",
                                ", 'doses': [{'addition': %s, 'ph': 2.5, 'phUncertainty': 0.001}]".formatted(addition)),
                        brew(5.6));
                assertThat(answer.at("/result/verdicts")).hasSize(4);
            }
        }
        String everything = String.join(", ", Collections.nCopies(32, drowned));
        JsonNode answer = good(brew(5.5, 4, "", ", 'additions': [" + everything + "]", ""), brew(5.6));
        assertThat(answer.at("/result/verdicts/0/published/ph").asDouble()).isZero();
        assertThat(answer.at("/result/verdicts/0/setAside").asText()).isEqualTo("beyond-model");
    }

    /** Records that once made a fault of the service: they are strange, but nothing in them is refused. */
    @ParameterizedTest
    @ValueSource(strings = {"acid-that-raises-the-ph", "one-brew-without-alkalinity"})
    void strangeRecordsAreReviewed(String record) throws IOException {
        byte[] body = requireNonNull(getClass().getResourceAsStream("/reviews/" + record + ".json"))
                .readAllBytes();
        Response response = given().contentType("application/json").body(body).post("/v1/brew-reviews");
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(200);
    }
}

package tunside.http.mash;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A prediction with what the household's own mashes have taught. */
@QuarkusTest
class ExperienceDocumentTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();
    private static final String NO_BREW =
            "{'model': 'mash-proton-balance', 'version': '2', 'brews': 0, 'parameters': [], 'covariance': []}";
    private static final String LEARNT = """
            {'model': 'mash-proton-balance', 'version': '2', 'brews': 5,
             'parameters': [{'quantity': 'malt-types-bias', 'mean': -0.12},
                            {'quantity': 'malt-offset', 'malt': 'pale', 'mean': 0.03}],
             'covariance': [[0.004, -0.0009], [-0.0009, 0.001]]}""";
    private static final String NAMED = """
            {'model': 'mash-proton-balance', 'version': '2', 'brews': 5,
             'parameters': [{'quantity': 'malt-offset', 'malt': 'pale', 'mean': -0.01},
                            {'quantity': 'product-offset', 'malt': 'pale', 'product': 'Mälzerei am Fluss', 'mean': -0.12}],
             'covariance': [[0.001, 0], [0, 0.001]]}""";

    private static Response post(String malt, String experience) {
        return post(malt, "", experience);
    }

    private static Response post(String malt, String product, String experience) {
        String body = """
                {'grist': [{'malt': '%s', 'mass': {'value': 5, 'unit': 'kg'}%s}],
                 'liquor': {'volume': {'value': 20, 'unit': 'L'}}%s}""".formatted(
                        malt,
                        product.isEmpty() ? "" : ", 'product': '%s'".formatted(product),
                        experience == null ? "" : ", 'experience': " + experience);
        return given().contentType("application/json")
                .body(body.replace('\'', '"'))
                .post("/v1/mash-predictions");
    }

    private static JsonNode good(String malt, String experience) throws IOException {
        Response response = post(malt, experience);
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(200);
        return MAPPER.readTree(response.asByteArray());
    }

    @Test
    void anExperienceShiftsAndNarrows() throws IOException {
        JsonNode published = good("pale", null).get("result");
        JsonNode answer = good("pale", LEARNT);
        JsonNode learnt = answer.get("result");
        assertThat(learnt.get("ph").asDouble()).isEqualTo(5.63);
        assertThat(learnt.get("standardUncertainty").asDouble())
                .isLessThan(0.85 * published.get("standardUncertainty").asDouble());
        assertThat(answer.get("checks")).anySatisfy(check -> {
            assertThat(check.get("code").asText()).isEqualTo("mash.experience");
            assertThat(check.get("outcome").asText()).isEqualTo("pass");
            assertThat(check.get("message").asText()).startsWith("What 5 of your own brews taught");
        });
        assertThat(answer.get("basis").get("assumptions").toString()).contains("same product");
        assertThat(answer.get("checks").findValuesAsText("code")).doesNotContain("mash.experience-malt");
    }

    @Test
    void aMaltThatTheBrewsSayNothingAboutIsNamed() throws IOException {
        assertThat(good("munich", LEARNT).get("checks")).anySatisfy(check -> {
            assertThat(check.get("code").asText()).isEqualTo("mash.experience-malt");
            assertThat(check.get("pointer").asText()).isEqualTo("/experience");
            assertThat(check.get("message").asText()).contains("munich");
        });
    }

    @Test
    void anExperienceOfNoBrewChangesNothing() throws IOException {
        assertThat(good("pale", NO_BREW)).isEqualTo(good("pale", null));
    }

    private static void isSaid(JsonNode answer, String code, String outcome, String inMessage) {
        assertThat(answer.get("checks")).as(answer.toString()).anySatisfy(check -> {
            assertThat(check.get("code").asText()).isEqualTo(code);
            assertThat(check.get("outcome").asText()).isEqualTo(outcome);
            assertThat(check.get("pointer").asText()).isEqualTo("/experience");
            assertThat(check.get("message").asText()).contains(inMessage);
        });
    }

    private static JsonNode named(String product) throws IOException {
        Response response = post("pale", product, NAMED);
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(200);
        return MAPPER.readTree(response.asByteArray());
    }

    @Test
    void aProductThatTheBrewsToldAboutReadsAsTheyShowed() throws IOException {
        JsonNode answer = named("Mälzerei am Fluss");
        isSaid(answer, "mash.experience-product", "pass", "pale, Mälzerei am Fluss");
        assertThat(answer.at("/result/ph").asDouble()).isEqualTo(5.59);
        assertThat(answer.at("/result/contributions/0/subject").asText()).isEqualTo("pale, Mälzerei am Fluss");
    }

    @Test
    void anotherProductReadsAsItsClassAndIsLessSure() throws IOException {
        JsonNode known = named("Mälzerei am Fluss");
        JsonNode other = named("hill");
        JsonNode unnamed = named("");
        isSaid(other, "mash.experience-product", "note", "pale, hill");
        isSaid(unnamed, "mash.experience-unnamed", "note", "No product is named for pale");
        for (JsonNode answer : List.of(other, unnamed)) {
            assertThat(answer.at("/result/ph").asDouble()).isEqualTo(5.71);
            assertThat(answer.at("/result/standardUncertainty").asDouble())
                    .isGreaterThan(known.at("/result/standardUncertainty").asDouble());
        }
    }

    @Test
    void withoutNamesTheSameProductIsTakenAndTheAnswerSaysSo() throws IOException {
        String unnamed = NAMED.replace(", 'product': 'Mälzerei am Fluss'", "");
        JsonNode answer = good("pale", unnamed);
        isSaid(answer, "mash.experience-same-product", "note", "For pale the same product as in your brews is taken");
        assertThat(answer.at("/result/ph").asDouble()).isEqualTo(5.59);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '^',
            value = {
                "<script>alert(1)</script>|must be letters and digits",
                " river|must be letters and digits",
                "river |must be letters and digits",
                "one & two|must be letters and digits",
                "a name that goes on and on and on and on 1|must have from 1 to 40 characters"
            },
            ignoreLeadingAndTrailingWhitespace = false)
    void whatIsNoNameOfAProductIsRefusedAtItsPlace(String product, String inDetail) throws IOException {
        Response response = post("pale", product, null);
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(400);
        assertThat(response.asString()).doesNotContain("<script>");
        JsonNode error = MAPPER.readTree(response.asByteArray()).at("/errors/0");
        assertThat(error.get("pointer").asText()).isEqualTo("/grist/0/product");
        assertThat(error.get("detail").asText()).contains(inDetail);
    }

    @ParameterizedTest(name = "{0} for {1}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '^',
            value = {
                "'version': '2'|'version': '1'|/experience/version|is \"1\" but this service predicts with version \"2\"",
                "'mash-proton-balance'|'mash-by-colour'|/experience/model|must be \"mash-proton-balance\"",
                "'malt': 'pale'|'malt': 'frost'|/experience/parameters/1|frost",
                "'malt': 'pale', ||/experience/parameters/1|needs its malt class",
                "'mean': -0.12|'mean': -0.12, 'malt': 'pale'|/experience/parameters/0|belongs to all malts",
                "[[0.004, -0.0009]|[[0.004, 0.0009]|/experience/covariance|positive definite",
                "[[0.004, -0.0009], [-0.0009|[[0.004, -0.005], [-0.005|/experience/covariance|positive definite",
                "[[0.004, -0.0009]|[[0.004]|/experience/covariance|2 rows of 2 values",
                "'mean': 0.03|'mean': 3|/experience/parameters/1/mean|is 3",
                "'brews': 5|'brews': 5.5|/experience/brews|whole number",
                "'malt': 'pale',|'malt': 'pale', 'product': 'river',|/experience/parameters/1|belongs to no product",
                "'malt-offset', 'malt': 'pale'|'product-offset', 'malt': 'pale', 'product': '<b>'|/experience/parameters/1/product|must be letters and digits",
                "'malt-offset', 'malt': 'pale'|'product-offset'|/experience/parameters/1|needs its malt class",
                "malt-types-bias|frost|/experience/parameters/0/quantity|malt-types-bias"
            })
    void aBrokenExperienceIsRefusedAtItsPlace(String good, String bad, String pointer, String inDetail)
            throws IOException {
        String broken = LEARNT.replace("\n", " ").replaceAll(" +", " ");
        assertThat(broken).contains(good.replaceAll(" +$", ""));
        Response response = post("pale", broken.replace(good, bad == null ? "" : bad));
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(400);
        List<JsonNode> errors = MAPPER.readTree(response.asByteArray()).findValues("errors");
        assertThat(errors.get(0)).as(response.asString()).anySatisfy(error -> {
            assertThat(error.get("pointer").asText()).isEqualTo(pointer);
            assertThat(error.get("detail").asText()).contains(inDetail);
        });
    }
}

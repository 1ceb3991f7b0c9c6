package tunside.http.water;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import java.io.IOException;
import java.util.Collections;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@QuarkusTest
class WaterAnalysisResourceTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();
    private static final String TAP = "{'calcium': {'value': 96, 'unit': 'mg/L'}, 'magnesium': {'value': 12, 'unit':"
            + " 'mg/L'}, 'sodium': {'value': 24, 'unit': 'mg/L'}, 'chloride': {'value': 42, 'unit': 'mg/L'}, 'sulfate':"
            + " {'value': 60, 'unit': 'mg/L'}, 'alkalinity': {'value': 4.2, 'unit': 'mEq/L'}, 'alkalinityEndPoint': 4.3,"
            + " 'ph': 7.4}";

    private static String source(String water) {
        return "{'volume': {'value': 10, 'unit': 'L'}, 'water': %s}".formatted(water);
    }

    private static Response post(String path, String body) {
        return given().contentType("application/json")
                .body(body.replace('\'', '"'))
                .post(path);
    }

    private static JsonNode good(String sources, String treatments) throws IOException {
        Response response =
                post("/v1/water-analyses", "{'sources': [%s], 'treatments': [%s]}".formatted(sources, treatments));
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(200);
        return MAPPER.readTree(response.asByteArray());
    }

    private static void refused(Response response, String pointer, String inDetail) throws IOException {
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(400);
        assertThat(MAPPER.readTree(response.asByteArray()).get("errors"))
                .as(response.asString())
                .anySatisfy(error -> {
                    assertThat(error.get("pointer").asText()).isEqualTo(pointer);
                    assertThat(error.get("detail").asText()).contains(inDetail);
                });
    }

    @Test
    void oneWaterInManyUnitsIsOneWater() throws IOException {
        JsonNode first = good(source("{'alkalinity': {'value': 2, 'unit': 'mEq/L'}, 'ph': 7.5}"), "")
                .get("result")
                .get("treated");
        String[] same = {
            "{'value': 100.086, 'unit': 'mg/L-as-CaCO3'}",
            "{'value': 122.032, 'unit': 'mg/L-as-HCO3'}",
            "{'value': 5.6077, 'unit': 'dH'}",
            "{'value': 10.0086, 'unit': 'fH'}"
        };
        for (String alkalinity : same) {
            JsonNode other = good(source("{'alkalinity': %s, 'ph': 7.5}".formatted(alkalinity)), "")
                    .get("result")
                    .get("treated");
            assertThat(other).as(alkalinity).isEqualTo(first);
        }
    }

    @Test
    void halfDistilledIsHalfOfEverything() throws IOException {
        JsonNode result = good(source(TAP) + "," + source("{}"), "").get("result");
        double tap = result.get("sources")
                .get(0)
                .get("water")
                .get("alkalinity")
                .get("value")
                .asDouble();
        assertThat(result.get("blended").get("alkalinity").get("value").asDouble())
                .isCloseTo(tap / 2, within(0.0011));
        assertThat(result.get("blended").get("ions").get(0).get("mgPerL").asDouble())
                .isEqualTo(48.0);
        assertThat(result.get("volume").get("value").asDouble()).isEqualTo(20);
    }

    @Test
    void treatmentsAreDoneInTheirOrderAndTellTheirSafetyNotes() throws IOException {
        String gypsum = "{'salt': 'gypsum', 'mass': {'value': 2, 'unit': 'g'}}";
        JsonNode answer = good(
                source(TAP),
                gypsum + ", {'boiling': {}}, {'liming': {'mass': {'value': 0.1, 'unit': 'g'}}}, {'acid': 'lactic',"
                        + " 'strength': {'value': 80, 'unit': '%w/w'}, 'volume': {'value': 0.5, 'unit': 'mL'}}");
        JsonNode effects = answer.get("result").get("treatments");
        assertThat(effects).hasSize(4);
        assertThat(effects.get(0).get("treatment").asText()).isEqualTo("salt");
        assertThat(effects.get(1).get("alkalinity").get("value").asDouble()).isEqualTo(1.0);
        assertThat(effects.get(1).get("deposit").get("value").asDouble()).isPositive();
        assertThat(answer.get("safety"))
                .anySatisfy(note -> assertThat(note.get("appliesTo").asText()).contains("lactic acid 80"));
        assertThat(answer.get("safety"))
                .anySatisfy(note -> assertThat(note.get("appliesTo").asText()).contains("calcium hydroxide"));
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {
                "{'calcium': {'value': -1, 'unit': 'mg/L'}} | /sources/0/water/calcium/value | from 0 to",
                "{'calcium': {'value': 1, 'unit': 'mg/L-as-S'}} | /sources/0/water/calcium/unit | for this ion",
                "{'sodium': {'value': 9999, 'unit': 'mmol/L'}} | /sources/0/water/sodium | from 0 to 200",
                "{'temperature': {'value': 61, 'unit': 'degC'}} | /sources/0/water/temperature | from 0 to 60",
                "{'carbonate': {'value': 5, 'unit': 'mg/L'}} | /sources/0/water/carbonate | needs bicarbonate",
                "{'alkalinity': {'value': 4, 'unit': 'mEq/L'}, 'bicarbonate': {'value': 122, 'unit': 'mg/L'}} | /sources/0/water/bicarbonate | state the one you trust",
                "{'alkalinity': {'value': 4, 'unit': 'mEq/L'}, 'ph': 4.4, 'alkalinityEndPoint': 4.5} | /sources/0/water | above the end point",
                "{'alkalinity': {'value': 4, 'unit': 'mEq/L'}, 'ph': 4.52, 'alkalinityEndPoint': 4.5} | /sources/0/water | too near the end point",
                "{'conductivity': {'value': 500, 'unit': 'uS/cm'}, 'conductivityTemperature': {'value': 22, 'unit': 'degC'}} | /sources/0/water/conductivityTemperature | 20 or 25",
                "{'dissolvedSolids': {'value': 5, 'unit': 'mEq/L'}} | /sources/0/water/dissolvedSolids/unit | must be mg/L"
            })
    void aReportThatCannotBeIsRefused(String water, String pointer, String inDetail) throws IOException {
        refused(post("/v1/water-analyses", "{'sources': [%s]}".formatted(source(water))), pointer, inDetail);
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {
                "{'salt': 'unobtainium', 'mass': {'value': 1, 'unit': 'g'}} | /treatments/0/salt | is no salt",
                "{'salt': 'gypsum'} | /treatments/0/mass | is missing",
                "{'acid': 'lactic', 'volume': {'value': 1, 'unit': 'mL'}} | /treatments/0/strength | is missing",
                "{} | /treatments/0 | but has 0",
                "{'boiling': {}, 'liming': {}} | /treatments/0 | but has 2",
                "{'boiling': {}}, {'boiling': {}} | /treatments | once at most",
                "{'boiling': {'supersaturation': 2.1}} | /treatments/0/boiling/supersaturation | from 0 to 2",
                "{'salt': 'sodium-chloride', 'mass': {'value': 500, 'unit': 'g'}} | /treatments | at most 250"
            })
    void aTreatmentThatCannotBeIsRefused(String treatment, String pointer, String inDetail) throws IOException {
        refused(
                post("/v1/water-analyses", "{'sources': [%s], 'treatments': [%s]}".formatted(source(TAP), treatment)),
                pointer,
                inDetail);
    }

    /** What is taken can also be varied for its uncertainty: a sour water without alkalinity, and the largest amounts. */
    @Test
    void whatIsTakenHasAnUncertainty() throws IOException {
        String sour =
                "{'calcium': {'value': 40, 'unit': 'mg/L'}, 'chloride': {'value': 18, 'unit': 'mg/L'}, 'ph': 4.4}";
        String none = "{'alkalinity': {'value': 0, 'unit': 'mEq/L'}, 'ph': 4.4, 'alkalinityEndPoint': 4.5}";
        for (String water : new String[] {sour, none}) {
            good(source(water), "");
        }
        // 249 mmol per litre of 10 L
        JsonNode treated = good(source(TAP), "{'salt': 'sodium-chloride', 'mass': {'value': 145.5, 'unit': 'g'}}")
                .get("result")
                .get("treated");
        assertThat(treated.get("closed").get("standardUncertainty").asDouble()).isPositive();
    }

    @Test
    void thirtyTwoSourcesAreTheMostAndEachNeedsAVolume() throws IOException {
        String most = String.join(",", Collections.nCopies(32, source(TAP)));
        assertThat(good(most, "").get("result").get("sources")).hasSize(32);
        refused(post("/v1/water-analyses", "{'sources': [%s,%s]}".formatted(most, source("{}"))), "/sources", "32");
        refused(post("/v1/water-analyses", "{'sources': [{'water': {}}]}"), "/sources/0/volume", "is missing");
        refused(post("/v1/water-analyses", "{'sources': []}"), "/sources", "from 1 to 32");
    }

    /** The same treated liquor, whether the service treats it in the prediction or the brewer adds the salt to the mash. */
    @Test
    void aMashTakesTheSameSourcesAndTreatments() throws IOException {
        String mash = "{'grist': [{'malt': 'pale', 'mass': {'value': 2.5, 'unit': 'kg'}}], 'liquor': %s%s}";
        String salt = "{'salt': 'gypsum', 'mass': {'value': 3, 'unit': 'g'}}";
        Response inLiquor = post(
                "/v1/mash-predictions",
                mash.formatted("{'sources': [%s], 'treatments': [%s]}".formatted(source(TAP), salt), ""));
        Response inMash = post(
                "/v1/mash-predictions",
                mash.formatted(
                        "{'volume': {'value': 10, 'unit': 'L'}, 'water': %s}".formatted(TAP),
                        ", 'additions': [%s]".formatted(salt)));
        assertThat(inLiquor.statusCode()).as(inLiquor.asString()).isEqualTo(200);
        JsonNode one = MAPPER.readTree(inLiquor.asByteArray()).get("result").get("ph");
        assertThat(one)
                .isEqualTo(MAPPER.readTree(inMash.asByteArray()).get("result").get("ph"));
    }

    @Test
    void boilingTheLiquorLowersTheMashPh() throws IOException {
        String mash = "{'grist': [{'malt': 'pale', 'mass': {'value': 2.5, 'unit': 'kg'}}], 'liquor': {'volume':"
                + " {'value': 10, 'unit': 'L'}, 'water': %s, 'treatments': [%s]}}";
        double raw = MAPPER.readTree(
                        post("/v1/mash-predictions", mash.formatted(TAP, "")).asByteArray())
                .get("result")
                .get("ph")
                .asDouble();
        double boiled = MAPPER.readTree(post("/v1/mash-predictions", mash.formatted(TAP, "{'boiling': {}}"))
                        .asByteArray())
                .get("result")
                .get("ph")
                .asDouble();
        assertThat(boiled).isLessThan(raw);
    }
}

package tunside.http.sheet;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import tunside.http.answer.Rounded;

/** The sheet of every example; and that it escapes, negotiates and stays short. */
@QuarkusTest
class BrewDaySheetTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();
    private static final Path SHEETS = Path.of("target/sheets");
    private static final Map<String, String> PATHS = new LinkedHashMap<>();

    static {
        PATHS.put("predictMash", "/v1/mash-predictions");
        PATHS.put("computeAcidDose", "/v1/acid-doses");
    }

    @Inject
    SheetWriter writer;

    private interface Trial {
        void run(String path, JsonNode example, String name) throws Exception;
    }

    private static JsonNode examples(String operation) throws IOException {
        return MAPPER.readTree(
                Path.of("src/main/resources/examples", operation + ".json").toFile());
    }

    private static Stream<DynamicTest> each(Trial trial) throws IOException {
        Stream.Builder<DynamicTest> tests = Stream.builder();
        for (Map.Entry<String, String> operation : PATHS.entrySet()) {
            examples(operation.getKey()).properties().forEach(example -> {
                if (example.getValue().get("status").asInt() == 200) {
                    String name = operation.getKey() + "-" + example.getKey();
                    tests.add(DynamicTest.dynamicTest(
                            name, () -> trial.run(operation.getValue(), example.getValue(), name)));
                }
            });
        }
        return tests.build();
    }

    private static Response ask(String path, JsonNode request, String accept) {
        return given().contentType("application/json")
                .accept(accept)
                .body(request.toString())
                .post(path);
    }

    private static String sheet(String path, JsonNode request) {
        Response response = ask(path, request, "text/html");
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(200);
        assertThat(response.contentType()).isEqualTo("text/html;charset=UTF-8");
        assertThat(response.header("Content-Security-Policy")).startsWith("default-src 'none'");
        assertThat(response.header("X-Content-Type-Options")).isEqualTo("nosniff");
        return new String(response.asByteArray(), StandardCharsets.UTF_8);
    }

    private static JsonNode result(String path, JsonNode request) throws IOException {
        return MAPPER.readTree(ask(path, request, "application/json").asByteArray())
                .get("result");
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;")
                .replace("'", "&#39;");
    }

    private static String number(JsonNode number) {
        return Rounded.text(number.asDouble());
    }

    private static String interval(JsonNode ph, JsonNode low, JsonNode high) {
        return "%s (90 %%: %s to %s)".formatted(number(ph), number(low), number(high));
    }

    @TestFactory
    Stream<DynamicTest> aSheetHoldsGristLiquorNumbersAndSafety() throws IOException {
        Files.createDirectories(SHEETS);
        return each((path, example, name) -> {
            String sheet = sheet(path, example.get("request"));
            Files.writeString(SHEETS.resolve(name + ".html"), sheet);
            JsonNode result = example.at("/response/result");
            for (JsonNode malt : example.at("/request/grist")) {
                assertThat(sheet)
                        .contains(malt.get("malt").asText().replace('-', ' ') + " malt")
                        .contains(">" + number(malt.at("/mass/value")) + " "
                                + malt.at("/mass/unit").asText() + "<");
            }
            JsonNode safety = example.at("/response/safety");
            assertThat(sheet)
                    .contains(escaped(safety.get(0).get("message").asText()))
                    .contains(
                            escaped(safety.get(safety.size() - 1).get("message").asText()));
            for (JsonNode check : example.at("/response/checks")) {
                if (check.get("outcome").asText().equals("stop")) {
                    assertThat(sheet)
                            .contains("<b>STOP.</b> "
                                    + escaped(check.get("message").asText()));
                }
            }
            if (path.equals("/v1/mash-predictions")) {
                assertThat(sheet)
                        .contains(interval(
                                result.get("ph"), result.at("/interval90/low"), result.at("/interval90/high")));
            } else {
                for (JsonNode stage : result.get("stages")) {
                    assertThat(sheet)
                            .contains(interval(stage.get("expectedPh"), stage.get("low90"), stage.get("high90")));
                }
                if (result.has("total")) {
                    assertThat(sheet).contains("<span class=\"amount\">" + total(result) + "</span>");
                }
                for (JsonNode reading : result.get("readings")) {
                    assertThat(sheet)
                            .contains("<td class=\"field\">"
                                    + number(reading.path("ph")).replaceFirst("^0$", "") + "</td>");
                }
                assertThat(sheet.contains(" now. Stir, wait")).isEqualTo(result.has("addNow"));
            }
            assertThat(sheet).doesNotContain("<script", "src=", "href=", "NOT_FOUND");
        });
    }

    /** The whole amount and its interval, all in the unit in which the stages are measured. */
    private static String total(JsonNode result) {
        JsonNode total = result.get("total");
        boolean measured = total.has("volume");
        double perUnit = measured ? result.at("/dosedAcid/densityGPerMl").asDouble() : 1;
        String unit = measured ? " mL" : " g";
        return "%s%s (90 %%: %s%s to %s%s)"
                .formatted(
                        number(total.get(measured ? "volume" : "mass").get("value")),
                        unit,
                        Rounded.text(
                                Rounded.significant(total.at("/low90/value").asDouble() / perUnit, 3)),
                        unit,
                        Rounded.text(
                                Rounded.significant(total.at("/high90/value").asDouble() / perUnit, 3)),
                        unit);
    }

    @TestFactory
    Stream<DynamicTest> theSheetIsTheSameEachTime() throws IOException {
        return each((path, example, name) ->
                assertThat(sheet(path, example.get("request"))).isEqualTo(sheet(path, example.get("request"))));
    }

    @Test
    void everyValueIsEscaped() {
        String hostile = "<script>alert('x')</script>\"&";
        BrewDaySheet sheet = new BrewDaySheet(
                false,
                hostile,
                hostile,
                List.of(new BrewDaySheet.Warning(hostile, hostile)),
                List.of(new BrewDaySheet.Ingredient(hostile, hostile)),
                1,
                hostile,
                List.of(new BrewDaySheet.Ingredient(hostile, hostile)),
                List.of(new BrewDaySheet.Fact(hostile, hostile)),
                List.of(new BrewDaySheet.Step(false, hostile, hostile, hostile)),
                List.of(1),
                List.of(new BrewDaySheet.Fact(hostile, hostile)),
                List.of(new BrewDaySheet.Note(hostile, hostile)),
                hostile,
                hostile);
        String page = writer.render(sheet);
        assertThat(page).doesNotContain("<script");
        int titleTwiceAndNineteenOthers = 21;
        assertThat(page.split(Pattern.quote(escaped(hostile)), -1)).hasSize(titleTwiceAndNineteenOthers + 1);
    }

    @Test
    void aMaltIsListedWithItsProduct() throws IOException {
        for (Map.Entry<String, String> operation : PATHS.entrySet()) {
            ObjectNode request = (ObjectNode) examples(operation.getKey())
                    .elements()
                    .next()
                    .get("request")
                    .deepCopy();
            ((ObjectNode) request.at("/grist/0")).put("product", "The miller's No. 1");
            String name = request.at("/grist/0/malt").asText().replace('-', ' ') + " malt, The miller&#39;s No. 1";
            assertThat(sheet(operation.getValue(), request)).contains(name);
        }
    }

    @Test
    void jsonStaysTheDefaultAndProblemsStayProblems() throws IOException {
        JsonNode request = examples("computeAcidDose").at("/first-stage/request");
        assertThat(ask("/v1/acid-doses", request, "*/*").contentType()).startsWith("application/json");
        assertThat(ask("/v1/acid-doses", request, "text/html,application/xhtml+xml,*/*;q=0.8")
                        .contentType())
                .startsWith("text/html");
        assertThat(ask("/v1/acid-doses", request, "application/pdf").statusCode())
                .isEqualTo(406);
        Response fault = ask("/v1/acid-doses", MAPPER.createObjectNode().put("<b>", 1), "text/html");
        assertThat(fault.statusCode()).isEqualTo(400);
        assertThat(fault.contentType()).isEqualTo("application/problem+json");
        JsonNode calibration = examples("evaluateCalibration").at("/three-buffers-sound/request");
        assertThat(ask("/v1/calibration-evaluations", calibration, "text/html").statusCode())
                .isEqualTo(406);
    }

    @Test
    void aSheetListsWhatIsDoneToTheLiquor() throws IOException {
        ObjectNode request = (ObjectNode)
                examples("predictMash").elements().next().get("request").deepCopy();
        ObjectNode well = (ObjectNode) request.get("liquor");
        ObjectNode liquor = request.putObject("liquor");
        liquor.putArray("sources").add(well.put("name", "well"));
        ArrayNode treatments = liquor.putArray("treatments");
        treatments.addObject().putObject("liming");
        treatments
                .addObject()
                .put("salt", "gypsum")
                .putObject("mass")
                .put("value", 2.5)
                .put("unit", "g");
        ObjectNode acid = treatments.addObject().put("acid", "lactic");
        acid.putObject("strength").put("value", 80).put("unit", "%w/w");
        acid.putObject("volume").put("value", 1.5).put("unit", "mL");
        treatments.addObject().putObject("boiling").put("lidOn", true);
        JsonNode analysis = MAPPER.readTree(given().contentType("application/json")
                .body(liquor.toString())
                .post("/v1/water-analyses")
                .asByteArray());
        String grams = number(analysis.at("/result/treatments/0/added/value"));
        String sheet = sheet("/v1/mash-predictions", request);
        assertThat(sheet)
                .contains("well: Ca 62 mg/L")
                .contains(
                        "then stir in slaked lime, let it settle, draw it off its deposit</span><span class=\"amount\">"
                                + grams + " g")
                .contains("then gypsum</span><span class=\"amount\">2.5 g")
                .contains("then lactic acid, 80 %w/w</span><span class=\"amount\">1.5 mL")
                .contains("then boil with the lid on, let it settle, draw it off its deposit");
        assertThat(sheet.indexOf("slaked lime")).isLessThan(sheet.indexOf("then gypsum"));
        assertThat(sheet.indexOf("then gypsum")).isLessThan(sheet.indexOf("then boil"));
    }

    @TestFactory
    Stream<DynamicTest> aSheetStatesTheElectrodeWhereTheCalibrationIsSent() throws IOException {
        JsonNode evaluated = examples("evaluateCalibration").at("/three-buffers-sound/response/result");
        String slope = "%s ± %s"
                .formatted(
                        Rounded.text(Rounded.decimals(
                                evaluated.at("/slope/percentOfIdeal").asDouble(), 1)),
                        number(evaluated.at("/slope/percentUncertainty")));
        return PATHS.entrySet().stream()
                .map(operation -> DynamicTest.dynamicTest(operation.getKey(), () -> {
                    ObjectNode request = (ObjectNode) examples(operation.getKey())
                            .elements()
                            .next()
                            .get("request")
                            .deepCopy();
                    assertThat(sheet(operation.getValue(), request))
                            .contains("Slope, % of ideal <span class=\"line\">");
                    JsonNode without = result(operation.getValue(), request);
                    request.set("calibration", evaluated.get("calibration").deepCopy());
                    assertThat(sheet(operation.getValue(), request))
                            .contains("Verdict <b>fit</b>")
                            .contains("Slope, % of ideal <b>" + slope + "</b>")
                            .contains("Calibrated on, at <span class=\"line\">");
                    assertThat(result(operation.getValue(), request)).isEqualTo(without);
                    ((ObjectNode) request.get("calibration")).put("model", "of-old");
                    Response refused = ask(operation.getValue(), request, "text/html");
                    assertThat(refused.statusCode()).isEqualTo(400);
                    assertThat(refused.jsonPath().getString("errors[0].pointer"))
                            .startsWith("/calibration");
                }));
    }

    /** The length of a sheet is bounded; its pages are counted where a browser prints it. */
    @Test
    void theLargestQuestionMakesABoundedSheet() throws IOException {
        ObjectNode request = (ObjectNode)
                examples("computeAcidDose").at("/first-stage/request").deepCopy();
        ArrayNode grist = (ArrayNode) request.get("grist");
        while (grist.size() < 64) {
            ObjectNode malt = grist.get(0).deepCopy();
            ((ObjectNode) malt.get("mass")).put("value", 0.05);
            grist.add(malt);
        }
        ArrayNode history = request.putArray("history");
        for (int i = 0; i < 20; i++) {
            history.addObject().putObject("addedVolume").put("value", 0.1).put("unit", "mL");
            history.addObject().put("ph", 5.78 - 0.004 * i);
        }
        String sheet = sheet("/v1/acid-doses", request);
        Files.createDirectories(SHEETS);
        Files.writeString(SHEETS.resolve("largest.html"), sheet);
        assertThat(sheet.split("<tr", -1).length).isLessThan(40);
        assertThat(sheet).contains("more, as in the question");
    }
}

package tunside.http.dilution;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.everyItem;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasItems;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.lessThanOrEqualTo;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.notNullValue;
import static org.hamcrest.Matchers.nullValue;
import static org.hamcrest.Matchers.startsWith;

import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import io.restassured.response.ValidatableResponse;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@QuarkusTest
class AcidDilutionResourceTest {
    private static final String LITRE = ",\"wantedVolume\":{\"value\":1,\"unit\":\"L\"}";

    private static String strength(double value) {
        return strength(value, "%w/w");
    }

    private static String strength(double value, String unit) {
        return "{\"value\":" + value + ",\"unit\":\"" + unit + "\"}";
    }

    private static String body(String acid, String strength, String wanted, String more) {
        return "{\"acid\":\"" + acid + "\",\"strength\":" + strength + ",\"wantedStrength\":" + wanted + more + "}";
    }

    private static String body(String acid, double strength, double wanted, String more) {
        return body(acid, strength(strength), strength(wanted), more);
    }

    private static ValidatableResponse ask(String body, int status) {
        return given().contentType("application/json")
                .body(body)
                .post("/v1/acid-dilutions")
                .then()
                .statusCode(status)
                .body("safety.code", hasItem("defer.label-and-codes"))
                .body("checks.code", hasItem("request.valid"));
    }

    @Test
    void theAmountsAnswerAddUp() {
        JsonPath result = ask(body("phosphoric", 85, 10, LITRE), 200).extract().jsonPath();
        double acid = result.getDouble("result.acidToUse.mass.value");
        double water = result.getDouble("result.water.mass.value");
        assertThat(acid + water).isCloseTo(result.getDouble("result.makes.mass.value"), within(0.11));
        assertThat(result.getDouble("result.makes.volume.value")).isEqualTo(1000);
        assertThat(result.getDouble("result.makes.mass.value")).isEqualTo(1053.1);
        assertThat(acid).isEqualTo(123.9);
        assertThat(result.getDouble("result.volumeLostMl"))
                .isCloseTo(
                        result.getDouble("result.acidToUse.volume.value")
                                + result.getDouble("result.water.volume.value")
                                - 1000,
                        within(0.11));
    }

    @Test
    void everyAmountThatTheRequestMayNameGivesTheSameDilution() {
        String made = ",\"wantedMass\":{\"value\":1053.1,\"unit\":\"g\"}";
        String used = ",\"acidMass\":{\"value\":123.894,\"unit\":\"g\"}";
        String poured = ",\"acidVolume\":{\"value\":73.354,\"unit\":\"mL\"}";
        for (String amount : List.of(LITRE, made, used, poured)) {
            ask(body("phosphoric", 85, 10, amount), 200)
                    .body("result.acidToUse.mass.value", equalTo(123.9f))
                    .body("result.water.mass.value", equalTo(929.2f));
        }
    }

    @Test
    void strengthsMayBeStatedPerLitre() {
        ask(body("sulfuric", strength(96), strength(2.1741, "eq/L"), LITRE), 200)
                .body("result.made.percent.value", equalTo(10.0f))
                .body("result.made.eqPerL.value", equalTo(2.174f))
                .body("result.made.molPerL.value", equalTo(1.087f));
        ask(body("hydrochloric", strength(12, "mol/L"), strength(1, "mol/L"), LITRE), 200)
                .body("result.inHand.percent.value", equalTo(36.96f))
                .body("result.made.molPerL.value", equalTo(1.0f));
    }

    @Test
    void waterGoesInFirstAndTheLabelIsWrittenBeforeItIsPutAway() {
        List<String> codes = ask(body("hydrochloric", 31.45, 10, LITRE), 200)
                .body("result.method", equalTo("one-go"))
                .body("result.stages", hasSize(0))
                .body("result.steps.text", everyItem(not(containsString("{"))))
                .body("result.label", everyItem(not(containsString("{"))))
                .extract()
                .path("result.steps.code");
        assertThat(codes)
                .containsExactly("protect", "air", "vessel", "water", "pour", "cool", "makes", "label", "away");
    }

    @Test
    void theLabelNamesStrengthHazardsAndLeavesTheDateBlank() {
        ask(body("hydrochloric", 31.45, 10, LITRE), 200)
                .body(
                        "result.label[0]",
                        equalTo("Hydrochloric acid, 10 %w/w in water (E507). For food only if made from food grade."))
                .body("result.label[1]", equalTo("2.873 mol/L, 2.873 eq/L. Density 1.048 g/mL at 20 degC."))
                .body("result.label[2]", startsWith("Made on ____________ by"))
                .body("result.label[3]", allOf(startsWith("WARNING: "), containsString("(H315, H319, H335, H290)")))
                .body("result.label[4]", containsString("Poison centre: ____________"))
                .body("result.label[5]", containsString("chlorine cleaner"));
        ask(body("phosphoric", 85, 5, LITRE), 200).body("result.label[3]", equalTo("Acid: keep out of eyes and cuts."));
        ask(body("lactic", 88, 50, LITRE), 200)
                .body(
                        "result.label[3]",
                        equalTo("DANGER: burns skin and eyes badly and burns the airways (H314, H318, EUH071)."));
    }

    @Test
    void whatWouldBoilInOneGoIsStoppedAndStaged() {
        JsonPath answer = ask(body("sulfuric", 96, 40, LITRE), 200)
                .body("checks.find { it.code == 'dilution.heat' }.outcome", equalTo("stop"))
                .body("result.method", equalTo("stages"))
                .body("result.advice", startsWith("In one go it would boil"))
                .body("result.steps.code", not(hasItem("pour")))
                .body("result.steps.code", hasItems("bath", "pour-stage"))
                .extract()
                .jsonPath();
        List<Float> pours = answer.getList("result.stages.acid.mass.value", Float.class);
        assertThat(pours.stream().mapToDouble(Float::doubleValue).sum())
                .isCloseTo(answer.getDouble("result.acidToUse.mass.value"), within(0.3));
        List<Float> hottest = answer.getList("result.stages.hottest.value", Float.class);
        assertThat(hottest).allSatisfy(celsius -> assertThat(celsius).isLessThan(50));
        assertThat(answer.getList("result.steps.findAll { it.code == 'pour-stage' }"))
                .hasSize(pours.size());
    }

    @Test
    void aLowerLimitMakesStagesOfATenPercentAcidToo() {
        String cool = ",\"warmLimit\":{\"value\":104,\"unit\":\"degF\"}";
        ask(body("sulfuric", 96, 10, LITRE), 200).body("result.method", equalTo("one-go"));
        ask(body("sulfuric", 96, 10, LITRE + cool), 200)
                .body("result.method", equalTo("stages"))
                .body("checks.find { it.code == 'dilution.heat' }.outcome", equalTo("caution"))
                .body("result.heat.finalTemperature.value", equalTo(37.0f))
                .body("result.heat.limit.value", equalTo(40.0f))
                .body("result.heat.halfWidthK", lessThanOrEqualTo(10.0f));
    }

    @Test
    void warmWaterIsLeftToCoolFirst() {
        String warm = ",\"waterTemperature\":{\"value\":60,\"unit\":\"degC\"}";
        ask(body("sulfuric", 96, 8, LITRE + warm), 200)
                .body("result.advice", startsWith("Let the water cool below 25 degC first."))
                .body("result.steps.code", hasItem("water-warm"))
                .body("checks.find { it.code == 'dilution.cold-water' }.outcome", equalTo("caution"));
        ask(body("lactic", 80, 8, LITRE + warm), 200).body("result.steps.code", hasItem("water-warm"));
    }

    @Test
    void hazardsAndSupplyLimitsAreToldBeforeAndAfter() {
        ask(body("sulfuric", 96, 10, LITRE), 200)
                .body("result.inHand.signal", equalTo("danger"))
                .body("result.inHand.hazards.code", contains("H314", "H318"))
                .body("result.made.signal", equalTo("warning"))
                .body("result.made.hazards.code", contains("H315", "H319"))
                .body(
                        "result.inHand.supplyLimits.region",
                        contains("Great Britain", "European Union", "European Union"))
                .body("result.inHand.supplyLimits.above", contains(true, true, true))
                .body("result.made.supplyLimits.above", contains(false, false, false))
                .body("safety.code", hasItems("substance.corrosive", "substance.irritant", "acid.into-water"));
        ask(body("sulfuric", 96, 10, LITRE + ",\"jurisdiction\":\"great-britain\""), 200)
                .body("result.inHand.supplyLimits.region", contains("Great Britain"))
                .body("checks.code", not(hasItem("dilution.supply-european-union")));
        ask(body("hydrochloric", 31, 10, LITRE), 200)
                .body("result.inHand.hazards.find { it.code == 'H290' }.source", equalTo("CLP-SELF"))
                .body("result.made.hazards.find { it.code == 'H335' }.source", equalTo("CLP-1272-2008"));
    }

    @ParameterizedTest
    @CsvSource({"sulfuric,96,302,190", "phosphoric,85,211,133", "lactic,88,99,62.4"})
    void theSpillAmountsAreForWhatIsInHand(String acid, double percent, float bicarbonate, float carbonate) {
        ask(body(acid, percent, 10, LITRE), 200)
                .body("result.spill.per100InHand.sodiumBicarbonate.value", equalTo(bicarbonate))
                .body("result.spill.per100InHand.sodiumCarbonate.value", equalTo(carbonate))
                .body("result.spill.acidToUse.sodiumBicarbonate.value", notNullValue())
                .body("result.spill.made.carbonDioxide.unit", equalTo("L"));
    }

    @Test
    void aPowderIsWeighedAndStirredIn() {
        ask(body("citric", 100, 25, LITRE), 200)
                .body("result.acidToUse.volume", nullValue())
                .body("result.inHand.molPerL", nullValue())
                .body("result.inHand.densityGPerMl", nullValue())
                .body("result.volumeLostMl", nullValue())
                .body("result.made.percent.standardUncertaintyByVolume", nullValue())
                .body("result.advice", startsWith("Stir "))
                .body("result.steps.code", hasItem("dissolve"))
                .body("result.steps.code", not(hasItem("pour")));
        ask(body("citric", 100, 25, ",\"acidVolume\":{\"value\":1,\"unit\":\"L\"}"), 400)
                .body("errors.pointer", contains("/acidVolume"))
                .body("errors.detail", hasItem("a powder is weighed: give acidMass"));
    }

    @Test
    void waterNeverMakesAnAcidStronger() {
        ask(body("phosphoric", 10, 30, LITRE), 422)
                .body("errors.pointer", contains("/wantedStrength"))
                .body("detail", containsString("30 %w/w is wanted and 10 %w/w is in hand"));
        ask(body("phosphoric", 10, 10, LITRE), 422).body("detail", containsString("there is nothing to dilute"));
        ask(body("phosphoric", 10, 9.995, LITRE), 422).body("detail", containsString("there is nothing to dilute"));
        ask(body("phosphoric", 10, 10.02, LITRE), 422).body("detail", containsString("never stronger"));
        ask(body("phosphoric", 10, 9.98, LITRE), 200);
    }

    @Test
    void whatTheTablesDoNotReachIsRefusedAtItsPlace() {
        ask(body("hydrochloric", 45, 10, LITRE), 400)
                .body("errors.pointer", contains("/strength"))
                .body("errors.detail", hasItem(containsString("from 0 to 40.0 %w/w")));
        ask(body("citric", 100, 60, LITRE), 400)
                .body("errors.pointer", contains("/wantedStrength"))
                .body("errors.detail", hasItem(containsString("from 0 to 50.0 %w/w")));
        ask(body("malic", 100, 10, LITRE), 400)
                .body("errors.pointer", contains("/wantedStrength"))
                .body("errors.detail", hasItem(containsString("powder of 100 %w/w only")));
    }

    @Test
    void exactlyOneAmountIsNamed() {
        ask(body("lactic", 80, 10, ""), 400)
                .body(
                        "errors.detail",
                        hasItem(containsString("one of wantedVolume, wantedMass, acidVolume, acidMass but has 0")));
        ask(body("lactic", 80, 10, LITRE + ",\"acidMass\":{\"value\":1,\"unit\":\"kg\"}"), 400)
                .body("errors.detail", hasItem(containsString("but has 2")));
    }

    @ParameterizedTest(name = "{0} {1} {2}")
    @CsvSource({
        "wantedVolume,9.9,mL",
        "wantedVolume,1001,L",
        "wantedMass,9.9,g",
        "wantedMass,1001,kg",
        "acidVolume,0.9,mL",
        "acidVolume,101,L",
        "acidMass,0.9,g",
        "acidMass,101,kg",
        "waterTemperature,-1,degC",
        "waterTemperature,213,degF",
        "acidTemperature,-1,degC",
        "acidTemperature,36,degC",
        "warmLimit,39,degC",
        "warmLimit,61,degC"
    })
    void whatIsOutOfRangeIsToldAtItsPlace(String member, double value, String unit) {
        boolean amount = member.startsWith("wanted") || member.equals("acidVolume") || member.equals("acidMass");
        ask(
                        body(
                                "lactic",
                                80,
                                10,
                                (amount ? "" : LITRE) + ",\"" + member + "\":{\"value\":" + value + ",\"unit\":\""
                                        + unit + "\"}"),
                        400)
                .body("errors.pointer", contains("/" + member))
                .body("errors.detail", hasItem(startsWith("must be from ")));
    }

    @Test
    void faultsOfShapeAreToldToo() {
        ask(body("nitric", 53, 10, LITRE), 400).body("errors.detail", hasItem(containsString("choose one of lactic")));
        ask(body("lactic", 80, 10, LITRE + ",\"labelUncertaintyPercent\":21"), 400)
                .body("errors.pointer", contains("/labelUncertaintyPercent"));
        ask(body("lactic", 80, 10, LITRE + ",\"jurisdiction\":\"atlantis\""), 400)
                .body("errors.pointer", contains("/jurisdiction"))
                .body("errors.detail", hasItem(containsString("great-britain")));
        ask("{\"acid\":\"lactic\"}", 400).body("errors.pointer", hasItems("/strength", "/wantedStrength"));
    }

    @Test
    void anAnswerNoShedCouldHoldIsRefused() {
        ask(body("sulfuric", 96, 0.01, ",\"acidVolume\":{\"value\":100,\"unit\":\"L\"}"), 400)
                .body("errors.pointer", contains("/acidVolume"))
                .body("errors.detail", hasItem(containsString("of what is made")));
    }
}

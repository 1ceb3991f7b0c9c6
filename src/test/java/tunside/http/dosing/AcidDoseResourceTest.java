package tunside.http.dosing;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.lessThanOrEqualTo;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.notNullValue;

import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import org.junit.jupiter.api.Test;

@QuarkusTest
class AcidDoseResourceTest {
    private static final String GRIST = "\"grist\":[{\"malt\":\"pale\",\"mass\":{\"value\":5,\"unit\":\"kg\"}}]";
    private static final String LIQUOR = "\"liquor\":{\"volume\":{\"value\":16,\"unit\":\"L\"}}";

    private static String mash(String acid, double percent, String more) {
        return ("{\"liquid\":\"mash\",\"measuredPh\":5.78,\"phUncertainty\":0.03,\"targetPh\":5.4,\"acid\":\"" + acid
                + "\",\"strength\":{\"value\":" + percent + ",\"unit\":\"%w/w\"}," + GRIST + "," + LIQUOR + more + "}");
    }

    private static ValidatableResponse ask(String body, int status) {
        return given().contentType("application/json")
                .body(body)
                .post("/v1/acid-doses")
                .then()
                .statusCode(status);
    }

    @Test
    void theFirstStageKeepsTheAcceptedRisk() {
        ask(mash("lactic", 80, ""), 200)
                .body("result.outcome", equalTo("dose"))
                .body("result.addNow.overshootProbability", lessThanOrEqualTo(0.05f))
                .body("safety.code", hasItem("substance.corrosive"));
    }

    @Test
    void strongMineralAcidCarriesAStopAndItsDilution() {
        for (String acid : new String[] {"hydrochloric", "sulfuric"}) {
            double limit = acid.equals("sulfuric") ? 15 : 25;
            ask(mash(acid, limit, ""), 200)
                    .body("checks.findAll { it.outcome == 'stop' }.code", hasItem("dose.dilute-first"))
                    .body("result.dosedAcid.strength.value", equalTo(10.0f))
                    .body("result.diluteFirst.water", notNullValue());
            ask(mash(acid, limit - 0.1, ""), 200)
                    .body("result.diluteFirst", equalTo(null))
                    .body("checks.code", hasItem("dose.strength"));
        }
    }

    @Test
    void historyTeachesTheBuffering() {
        String history = ",\"history\":[{\"addedVolume\":{\"value\":4,\"unit\":\"mL\"}},{\"ph\":5.5}]";
        float factor = ask(mash("lactic", 80, history), 200).extract().path("result.learnt.factor");
        assertThat(factor).isLessThan(0.9f);
    }

    @Test
    void aReadingThatRoseIsACaution() {
        String history = ",\"history\":[{\"addedVolume\":{\"value\":4,\"unit\":\"mL\"}},{\"ph\":5.95}]";
        ask(mash("lactic", 80, history), 200)
                .body("checks.find { it.code == 'dose.reading-rose' }.outcome", equalTo("caution"))
                .body("checks.find { it.code == 'dose.reading-rose' }.pointer", equalTo("/history/1"));
    }

    @Test
    void whatTheGristCannotExplainGetsNoStageToAdd() {
        ask(mash("lactic", 80, "").replace("5.78", "6.9"), 200)
                .body("checks.find { it.code == 'dose.measured-against-grist' }.outcome", equalTo("stop"))
                .body("result.addNow", equalTo(null))
                .body("result.total", equalTo(null))
                .body("result.stages.size()", equalTo(0))
                .body("result.advice", containsString("Add nothing now"));
    }

    private static String calibrated(String verdict) {
        return (",'calibration':{'model':'calibration-line-1','signal':'potential','temperature':{'value':20,'unit':'degC'},"
                        + "'slopeMvPerPh':57.5,'offset':{'value':2,'unit':'mV'},'slopeVariance':0.02,'offsetVariance':0.2,"
                        + "'slopeOffsetCovariance':0.01,'isothermalPoint':'offset-kept','meter':{'compensation':'automatic'},"
                        + "'lowestPh':4,'highestPh':7,'verdict':'" + verdict + "'}")
                .replace('\'', '"');
    }

    @Test
    void noReadingOfAnUnfitElectrodeIsGroundForADose() {
        String calibration = "checks.find { it.code == 'dose.calibration' }.";
        ask(mash("lactic", 80, calibrated("unfit")), 200)
                .body(calibration + "outcome", equalTo("stop"))
                .body(calibration + "pointer", equalTo("/calibration/verdict"))
                .body("result.outcome", equalTo("dose"))
                .body("result.addNow", equalTo(null))
                .body("result.total", equalTo(null))
                .body("result.stages.size()", equalTo(0))
                .body("result.advice", containsString("Add nothing now"));
    }

    @Test
    void afterAFitCalibrationTheDoseIsThatWithoutOne() {
        String plain = ask(mash("lactic", 80, ""), 200)
                .body("checks.code", not(hasItem("dose.calibration")))
                .extract()
                .path("result.advice");
        String calibration = "checks.find { it.code == 'dose.calibration' }.outcome";
        ask(mash("lactic", 80, calibrated("fit")), 200)
                .body(calibration, equalTo("pass"))
                .body("result.advice", equalTo(plain));
        ask(mash("lactic", 80, calibrated("fit-with-care")), 200)
                .body(calibration, equalTo("caution"))
                .body("result.advice", equalTo(plain));
    }

    @Test
    void experienceNarrowsWhatIsKnownOfTheBuffering() {
        String learnt =
                ",\"experience\":{\"model\":\"mash-proton-balance\",\"version\":\"2\",\"brews\":5,\"parameters\":[{\"quantity\":"
                        + "\"buffering-scale\",\"mean\":0.2}],\"covariance\":[[0.01]]}";
        String plain = ask(mash("lactic", 80, ""), 200).extract().asString();
        String taught = ask(mash("lactic", 80, learnt), 200).extract().asString();
        var before = new io.restassured.path.json.JsonPath(plain);
        var after = new io.restassured.path.json.JsonPath(taught);
        assertThat(after.getDouble("result.learnt.expected") / before.getDouble("result.learnt.expected"))
                .isCloseTo(Math.exp(0.2), org.assertj.core.api.Assertions.within(0.01));
        assertThat(after.getDouble("result.learnt.high90") / after.getDouble("result.learnt.expected"))
                .isLessThan(before.getDouble("result.learnt.high90") / before.getDouble("result.learnt.expected"));
        assertThat(after.getDouble("result.addNow.volume.value"))
                .isGreaterThan(before.getDouble("result.addNow.volume.value"));
        ask(mash("lactic", 80, learnt.replace("\"version\":\"2\"", "\"version\":\"0\"")), 400)
                .body("errors.pointer", hasItem(containsString("/experience")));
    }

    @Test
    void powdersAreWeighed() {
        ask(mash("citric", 100, ""), 200)
                .body("result.addNow.volume", equalTo(null))
                .body("result.addNow.mass.unit", equalTo("g"));
        ask(mash("citric", 100, ",\"history\":[{\"addedVolume\":{\"value\":4,\"unit\":\"mL\"}}]"), 400)
                .body("errors.detail", hasItem(containsString("a powder is weighed")));
    }

    @Test
    void aHistoryThatNothingExplainsIsRefusedAndNotAFaultOfTheService() {
        ask(mash("hydrochloric", 10, ",\"history\":[{\"addedMass\":{\"value\":100,\"unit\":\"kg\"}}]"), 400)
                .body("errors.pointer", hasItem("/history"));
    }

    @Test
    void aMashNeedsItsGristAndALiquorHasNone() {
        ask(mash("lactic", 80, "").replace(GRIST + ",", ""), 400).body("errors.pointer", hasItem("/grist"));
        ask(mash("lactic", 80, "").replace("\"mash\"", "\"liquor\""), 400).body("errors.pointer", hasItem("/grist"));
    }

    @Test
    void strengthOver100AndUnknownAcidAreRefused() {
        ask(mash("lactic", 101, ""), 400)
                .body("errors.detail", hasItem(containsString("from 0.001 to 100 but is 101")));
        ask(mash("aqua-regia", 10, ""), 400).body("errors.detail", hasItem(containsString("choose one of lactic")));
        ask(mash("lactic", 95, ""), 400).body("errors.detail", hasItem(containsString("from 0 to 90.0 %w/w")));
    }

    @Test
    void anEventIsOneThing() {
        ask(mash("lactic", 80, ",\"history\":[{}]"), 400)
                .body("errors.detail", hasItem(containsString("one of addedVolume, addedMass and ph but has 0")));
    }
}

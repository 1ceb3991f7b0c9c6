package tunside.http.guard;

import static io.restassured.RestAssured.given;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import java.net.URI;
import java.util.List;
import org.junit.jupiter.api.Test;

@QuarkusTest
class SecurityHeadersTest {
    @TestHTTPResource(value = "/", management = true)
    URI management;

    private static void isStrict(Response response) {
        assertThat(response.header("Content-Security-Policy"))
                .startsWith("default-src 'none'")
                .contains("frame-ancestors 'none'")
                .doesNotContain("unsafe")
                .doesNotContain("'self'");
        hasTheRest(response);
    }

    private static void hasTheRest(Response response) {
        assertThat(response.headers().getValues("Content-Security-Policy")).hasSize(1);
        assertThat(response.header("X-Content-Type-Options")).isEqualTo("nosniff");
        assertThat(response.header("Referrer-Policy")).isEqualTo("no-referrer");
        assertThat(response.header("X-Frame-Options")).isEqualTo("DENY");
        assertThat(response.header("Cache-Control")).isNotBlank();
    }

    @Test
    void answersAndProblemsOfEveryLayerAllowABrowserNothing() {
        isStrict(given().get("/v1/sources"));
        isStrict(given().contentType("application/json").body("{}").post("/v1/acid-doses"));
        isStrict(given().contentType("application/x-ndjson")
                .body("{}\n".getBytes(UTF_8))
                .post("/v1/acid-doses"));
        isStrict(given().contentType("text/plain").body("x").post("/v1/acid-doses"));
        isStrict(given().get("/v1/nothing"));
        isStrict(given().get("/nothing"));
        isStrict(given().delete("/v1/sources"));
        isStrict(given().get("/v1/sources?x=" + "y".repeat(3000)));
        isStrict(given().get("/q/openapi"));
    }

    @Test
    void anAnswerIsNotKeptAndATableOnlyWithItsTag() {
        assertThat(given().contentType("application/json")
                        .body("{}")
                        .post("/v1/acid-doses")
                        .header("Cache-Control"))
                .isEqualTo("no-store");
        Response table = given().get("/v1/sources");
        assertThat(table.header("Cache-Control")).isEqualTo("private, no-cache");
        Response again = given().header("If-None-Match", table.header("ETag")).get("/v1/sources");
        assertThat(again.statusCode()).isEqualTo(304);
        assertThat(again.header("Cache-Control")).isEqualTo("private, no-cache");
        assertThat(given().get("/v1/nothing").header("Cache-Control")).isEqualTo("no-store");
    }

    @Test
    void thePageAndTheContractFormRunTheirOwnScriptsOnly() {
        for (String path : List.of("/", "/index.html", "/q/swagger-ui/")) {
            Response page = given().get(path);
            assertThat(page.statusCode()).as(path).isEqualTo(200);
            assertThat(page.header("Content-Security-Policy"))
                    .startsWith("default-src 'none'")
                    .contains("script-src 'self'")
                    .contains("frame-ancestors 'none'")
                    .doesNotContain("*");
            hasTheRest(page);
        }
        assertThat(given().get("/").header("Content-Security-Policy")).doesNotContain("unsafe");
    }

    @Test
    void noOtherOriginMayAsk() {
        Response answer = given().header("Origin", "https://elsewhere.example").get("/v1/sources");
        assertThat(answer.header("Access-Control-Allow-Origin")).isNull();
    }

    @Test
    void healthAndMetricsAreOnTheirOwnPortOnly() {
        for (String path :
                List.of("/q/health", "/q/health/live", "/q/health/ready", "/q/health/started", "/q/metrics")) {
            assertThat(given().get(path).statusCode()).as("service " + path).isEqualTo(404);
            assertThat(given().get(management.resolve(path)).statusCode())
                    .as("management " + path)
                    .isEqualTo(200);
        }
        assertThat(given().get(management.resolve("/v1/sources")).statusCode()).isEqualTo(404);
    }
}

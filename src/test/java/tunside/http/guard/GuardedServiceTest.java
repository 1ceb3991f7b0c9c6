package tunside.http.guard;

import static io.restassured.RestAssured.given;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.QuarkusTestProfile;
import io.quarkus.test.junit.TestProfile;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** The service as an operator guards it: keys from a file, and one page of another origin that may ask. */
@QuarkusTest
@TestProfile(GuardedServiceTest.Guarded.class)
class GuardedServiceTest {
    private static final String BENCH = "https://bench.example";

    /** Key abc; one origin. */
    public static final class Guarded implements QuarkusTestProfile {
        @Override
        public Map<String, String> getConfigOverrides() {
            try {
                Path keys = Files.createTempFile("keys", ".txt");
                keys.toFile().deleteOnExit();
                Files.writeString(keys, "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad the bench\n");
                return Map.of(
                        "tunside.api-keys.file",
                        keys.toString(),
                        "quarkus.http.cors.enabled",
                        "true",
                        "quarkus.http.cors.origins",
                        BENCH);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }

    @Test
    void withTheKeyEverythingIsAnswered() {
        assertThat(given().header("X-Api-Key", "abc").get("/v1/sources").statusCode())
                .isEqualTo(200);
    }

    @Test
    void withoutItEveryAddressUnderV1IsAProblem() {
        for (RequestSpecification request :
                List.of(given(), given().header("X-Api-Key", "abd"), given().header("X-Api-Key", ""))) {
            for (String path : List.of(
                    "/v1/sources",
                    "/v1/nothing",
                    "/v1/../v1/sources",
                    "//v1/sources",
                    "/v1;x/sources",
                    "/%76%31/sources")) {
                Response response =
                        given().spec(request).urlEncodingEnabled(false).get(path);
                assertThat(response.statusCode()).as(path).isIn(401, 404);
                assertThat(response.contentType()).as(path).startsWith("application/problem+json");
                assertThat(response.asString()).contains("\"safety\"").contains("\"checks\"");
            }
            Response response = request.get("/v1/sources");
            assertThat(response.statusCode()).isEqualTo(401);
            assertThat(response.header("WWW-Authenticate")).startsWith("ApiKey");
            assertThat(response.asString()).contains("/problems/unauthorized");
        }
        for (String type : List.of("application/json", "application/x-ndjson")) {
            assertThat(given().contentType(type)
                            .body("{}".getBytes(UTF_8))
                            .post("/v1/acid-doses")
                            .statusCode())
                    .as(type)
                    .isEqualTo(401);
        }
    }

    @Test
    void theContractStaysOpen() {
        assertThat(given().get("/q/openapi").statusCode()).isEqualTo(200);
    }

    @Test
    void theNamedOriginMayAskAndNoOther() {
        Response allowed = preflight(BENCH);
        assertThat(allowed.statusCode()).isEqualTo(200);
        assertThat(allowed.header("Access-Control-Allow-Origin")).isEqualTo(BENCH);
        assertThat(allowed.header("Access-Control-Allow-Headers")).containsIgnoringCase("X-Api-Key");
        assertThat(allowed.header("Access-Control-Allow-Credentials")).isNotEqualTo("true");
        Response other = preflight("https://elsewhere.example");
        assertThat(other.header("Access-Control-Allow-Origin")).isNull();
        Response answer = given().header("Origin", BENCH).get("/v1/sources");
        assertThat(answer.statusCode()).isEqualTo(401);
        assertThat(answer.header("Access-Control-Allow-Origin"))
                .as("the page may read why")
                .isEqualTo(BENCH);
    }

    private static Response preflight(String origin) {
        return given().header("Origin", origin)
                .header("Access-Control-Request-Method", "POST")
                .header("Access-Control-Request-Headers", "content-type,x-api-key")
                .options("/v1/acid-doses");
    }
}

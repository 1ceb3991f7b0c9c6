package tunside.http;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** The committed contract is the one that runs. Record it with {@code -Dcontract.record=true}. */
@QuarkusTest
class ContractTest {
    private static final Path COMMITTED = Path.of("openapi/tunside.yaml");

    @Test
    void theCommittedContractIsTheOneThatRuns() throws IOException {
        String running = given().queryParam("format", "yaml")
                .get("/q/openapi")
                .then()
                .statusCode(200)
                .extract()
                .asString();
        if (Boolean.getBoolean("contract.record")) {
            Files.writeString(COMMITTED, running);
        }
        assertThat(Files.readString(COMMITTED)).isEqualTo(running);
    }
}

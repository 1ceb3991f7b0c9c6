package tunside.http.contract;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.test.junit.QuarkusTest;
import java.io.IOException;
import org.junit.jupiter.api.Test;

@QuarkusTest
class ContractHeadersTest {
    private static JsonNode paths() throws IOException {
        return new ObjectMapper()
                .readTree(given().queryParam("format", "json").get("/q/openapi").asByteArray())
                .get("paths");
    }

    @Test
    void everyOperationSaysWhenToComeBackAfterA503() throws IOException {
        assertThat(paths())
                .hasSize(15)
                .allSatisfy(path -> assertThat(path).allSatisfy(operation -> {
                    JsonNode after = operation.at("/responses/503/headers/Retry-After");
                    assertThat(after.at("/description").asText()).isNotEmpty();
                    assertThat(after.at("/required").asBoolean()).isTrue();
                    assertThat(after.at("/schema/type").asText()).isEqualTo("integer");
                    assertThat(after.at("/schema/minimum").asInt()).isEqualTo(1);
                }));
    }
}

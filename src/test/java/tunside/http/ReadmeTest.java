package tunside.http;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter.Indenter;
import com.fasterxml.jackson.core.util.Separators;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Every curl of the README gets the whole answer that the README prints. Record them with {@code -Dreadme.record=true}. */
@QuarkusTest
class ReadmeTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();
    private static final Pattern CURL = Pattern.compile(
            "```sh\ncurl -s http://localhost:8080(\\S+) -H 'Content-Type: application/json' -d '(.*?)'\n```.*?```json\n(.*?)\n```",
            Pattern.DOTALL);

    private record Call(String path, String body, String answer) {}

    private static List<Call> calls() throws IOException {
        List<Call> calls = new ArrayList<>();
        Matcher matcher = CURL.matcher(Files.readString(Path.of("README.md")));
        while (matcher.find()) {
            calls.add(new Call(matcher.group(1), matcher.group(2), matcher.group(3)));
        }
        return calls;
    }

    @Test
    void theReadmeShowsTheThreeJobs() throws IOException {
        assertThat(calls())
                .extracting(Call::path)
                .containsExactly("/v1/calibration-evaluations", "/v1/mash-predictions", "/v1/acid-doses");
    }

    @TestFactory
    Stream<DynamicTest> everyCurlGetsThePrintedAnswer() throws IOException {
        return calls().stream()
                .map(call -> DynamicTest.dynamicTest(call.path, () -> {
                    Response response = given().contentType("application/json")
                            .body(call.body)
                            .post(call.path);
                    assertThat(response.statusCode()).isEqualTo(200);
                    if (Boolean.getBoolean("readme.record")) {
                        record(call, MAPPER.readTree(response.asByteArray()));
                        return;
                    }
                    assertThat(MAPPER.readTree(response.asByteArray())).isEqualTo(MAPPER.readTree(call.answer));
                }));
    }

    private static void record(Call call, JsonNode answer) throws IOException {
        Indenter indenter = new DefaultIndenter(" ", "\n");
        DefaultPrettyPrinter printer = new DefaultPrettyPrinter(Separators.createDefaultInstance()
                .withObjectFieldValueSpacing(Separators.Spacing.AFTER)
                .withArrayEmptySeparator(""));
        printer.indentArraysWith(indenter);
        printer.indentObjectsWith(indenter);
        Path readme = Path.of("README.md");
        Files.writeString(
                readme,
                Files.readString(readme)
                        .replace(call.answer, MAPPER.writer(printer).writeValueAsString(answer)));
    }
}

package tunside.http.limits;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.QuarkusTestProfile;
import io.quarkus.test.junit.TestProfile;
import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

@QuarkusTest
@TestProfile(AdmissionTest.OneAtATime.class)
class AdmissionTest {
    private static final ObjectMapper JSON = new ObjectMapper();

    @TestHTTPResource("/")
    URI service;

    public static final class OneAtATime implements QuarkusTestProfile {
        @Override
        public Map<String, String> getConfigOverrides() {
            return Map.of("tunside.limits.in-flight", "1");
        }
    }

    @Test
    void a_full_queue_refuses_with_a_whole_problem_and_says_when_to_come_back_and_the_others_are_answered()
            throws IOException {
        HttpClient client = HttpClient.newHttpClient();
        HttpRequest plan = post("v1/mash-plans", question("planMash"));
        List<CompletableFuture<HttpResponse<String>>> sent = Stream.generate(
                        () -> client.sendAsync(plan, HttpResponse.BodyHandlers.ofString()))
                .limit(40)
                .toList();
        HttpResponse<String> elsewhere = client.sendAsync(
                        post("v1/mash-predictions", question("predictMash")), HttpResponse.BodyHandlers.ofString())
                .join();
        List<HttpResponse<String>> answers =
                sent.stream().map(CompletableFuture::join).toList();

        assertThat(elsewhere.statusCode()).isEqualTo(200);
        assertThat(answers)
                .extracting(HttpResponse::statusCode)
                .contains(200, 503)
                .containsOnly(200, 503);
        for (HttpResponse<String> answer : answers) {
            if (answer.statusCode() == 503) {
                JsonNode problem = JSON.readTree(answer.body());
                assertThat(answer.headers().firstValue("Retry-After")).hasValue("1");
                assertThat(problem.at("/type").textValue()).isEqualTo("/problems/overloaded");
                assertThat(problem.at("/checks")).isNotEmpty();
                assertThat(problem.at("/safety")).isNotEmpty();
            }
        }
        HttpResponse<String> later =
                client.sendAsync(plan, HttpResponse.BodyHandlers.ofString()).join();
        assertThat(later.statusCode()).as("once the queue is empty").isEqualTo(200);
    }

    private HttpRequest post(String path, String body) {
        return HttpRequest.newBuilder(service.resolve(path))
                .header("Content-Type", "application/json")
                .version(HttpClient.Version.HTTP_1_1)
                .POST(HttpRequest.BodyPublishers.ofString(body))
                .build();
    }

    private static String question(String operation) throws IOException {
        try (InputStream in = AdmissionTest.class.getResourceAsStream("/examples/" + operation + ".json")) {
            return JSON.readTree(in).elements().next().get("request").toString();
        }
    }
}

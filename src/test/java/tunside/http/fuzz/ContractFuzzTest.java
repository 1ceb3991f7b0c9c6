package tunside.http.fuzz;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.logging.Handler;
import java.util.logging.LogRecord;
import java.util.logging.Logger;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import tunside.http.fuzz.ContractSchemas.Operation;

/**
 * Asks every operation of the contract what it may and may not be asked, by the thousand. {@code -Dfuzz.requests=100000}
 * asks more, {@code -Dfuzz.seed} other questions. A failure prints each kind of fault once with a body that shows it.
 */
@QuarkusTest
class ContractFuzzTest {
    private static final int REQUESTS = Integer.getInteger("fuzz.requests", 5000);
    private static final long SEED = Long.getLong("fuzz.seed", 20_261_125L);

    @TestHTTPResource("/")
    URI service;

    private final HttpClient client = HttpClient.newBuilder()
            .version(HttpClient.Version.HTTP_1_1)
            .connectTimeout(Duration.ofSeconds(10))
            .build();
    private final Map<String, String> faults = new LinkedHashMap<>();
    private final Map<String, Integer> statuses = new TreeMap<>();
    private final LogOfBodies log = new LogOfBodies();

    /** Listens for what the log must never have: faults of the service, and anything of a body. */
    private static final class LogOfBodies extends Handler {
        private final List<String> wrong = new ArrayList<>();

        @Override
        public synchronized void publish(LogRecord record) {
            String line = record.getLoggerName() + " " + record.getMessage() + " " + record.getThrown();
            if (record.getLevel().intValue() >= java.util.logging.Level.SEVERE.intValue()
                    || line.contains("<img")
                    || line.contains("zymurgy")) {
                wrong.add(line);
            }
        }

        @Override
        public void flush() {}

        @Override
        public void close() {}
    }

    @BeforeEach
    void listen() {
        Logger.getLogger("").addHandler(log);
    }

    @AfterEach
    void stopListening() {
        Logger.getLogger("").removeHandler(log);
    }

    @Test
    void whateverIsAskedTheAnswerKeepsTheContract() throws IOException, InterruptedException {
        ContractSchemas schemas = new ContractSchemas(
                ContractSchemas.MAPPER.readTree(send(HttpRequest.newBuilder(service.resolve("/q/openapi?format=json"))
                                .build())
                        .body()));
        AnswerOracle oracle = new AnswerOracle(schemas);
        List<Operation> operations = schemas.operations();
        List<JsonNode> corpus = new ArrayList<>();
        operations.stream()
                .filter(operation -> operation.request() != null)
                .forEach(operation ->
                        operation.request().path("examples").forEach(example -> corpus.add(example.get("value"))));
        long computations = operations.stream()
                .filter(operation -> operation.request() != null)
                .count();
        int tables = REQUESTS / 20 / (int) (operations.size() - computations);
        int each = (REQUESTS - REQUESTS / 20) / (int) computations;
        int asked = 0;
        for (Operation operation : operations) {
            SplittableRandom random = new SplittableRandom(SEED + operation.id().hashCode());
            if (operation.request() == null) {
                for (int i = 0; i < tables; i++) {
                    askTable(operation, oracle, random);
                    asked++;
                }
                continue;
            }
            RequestMaker maker = new RequestMaker(schemas, operation.request(), corpus, random.nextLong());
            for (int i = 0; i < each; i++) {
                if (i % 10 == 9) {
                    askLines(operation, maker);
                } else {
                    ask(operation, oracle, maker.next());
                }
                asked++;
            }
        }
        System.out.println(asked + " requests: " + statuses);
        assertThat(faults.entrySet().stream().map(fault -> "\n" + fault.getKey() + "\n   " + fault.getValue()))
                .as("kinds of fault")
                .isEmpty();
        assertThat(log.wrong).as("the log").isEmpty();
        assertThat(asked).isGreaterThan(REQUESTS * 9 / 10);
        for (Operation operation : operations) {
            assertThat(statuses.keySet()).contains(operation.id() + " 200");
            if (operation.request() != null) {
                assertThat(statuses.keySet()).contains(operation.id() + " 400");
            }
        }
    }

    private HttpResponse<byte[]> send(HttpRequest request) throws IOException, InterruptedException {
        return client.send(request, BodyHandlers.ofByteArray());
    }

    private void ask(Operation operation, AnswerOracle oracle, byte[] body) throws IOException, InterruptedException {
        HttpResponse<byte[]> response = send(HttpRequest.newBuilder(service.resolve(operation.path()))
                .timeout(Duration.ofSeconds(20))
                .header("Content-Type", "application/json")
                .POST(BodyPublishers.ofByteArray(body))
                .build());
        note(operation, body, response.statusCode(), oracle.faults(operation, body, response), response.body());
    }

    private void askTable(Operation operation, AnswerOracle oracle, SplittableRandom random)
            throws IOException, InterruptedException {
        List<String> values =
                List.of("25", "degC", "degF", "-1e9", "NaN", "", RequestMaker.MARK, "\r\nX-Planted: yes", "1e999", "ä");
        StringBuilder query = new StringBuilder("?");
        for (JsonNode parameter : operation.node().path("parameters")) {
            String value = random.nextInt(2) == 0
                    ? parameter.path("example").asText()
                    : values.get(random.nextInt(values.size()));
            query.append(parameter.get("name").asText())
                    .append('=')
                    .append(URLEncoder.encode(value, StandardCharsets.UTF_8))
                    .append('&');
        }
        if (random.nextInt(3) == 0) {
            query.append("x=")
                    .append(URLEncoder.encode(values.get(random.nextInt(values.size())), StandardCharsets.UTF_8));
        }
        HttpResponse<byte[]> response = send(HttpRequest.newBuilder(service.resolve(operation.path() + query))
                .timeout(Duration.ofSeconds(20))
                .build());
        byte[] asked = query.toString().getBytes(StandardCharsets.UTF_8);
        note(operation, asked, response.statusCode(), oracle.faults(operation, asked, response), response.body());
    }

    /** Four bodies at once, one a line; each line of the answer is an answer or a problem. */
    private void askLines(Operation operation, RequestMaker maker) throws IOException, InterruptedException {
        ByteArrayOutputStream lines = new ByteArrayOutputStream();
        for (int i = 0; i < 4; i++) {
            lines.writeBytes(maker.next());
            lines.write('\n');
        }
        HttpResponse<byte[]> response = send(HttpRequest.newBuilder(service.resolve(operation.path()))
                .timeout(Duration.ofSeconds(40))
                .header("Content-Type", "application/x-ndjson")
                .POST(BodyPublishers.ofByteArray(lines.toByteArray()))
                .build());
        List<String> wrong = new ArrayList<>();
        String text = new String(response.body(), StandardCharsets.UTF_8);
        if (response.statusCode() != 200 || text.contains("<")) {
            wrong.add("lines: status " + response.statusCode() + " or an unescaped <");
        }
        for (String line : text.lines().toList()) {
            JsonNode answer = ContractSchemas.MAPPER.readTree(line);
            if (answer.path("checks").isEmpty() || answer.path("safety").isEmpty()) {
                wrong.add("lines: the frame of a line is not whole");
            }
            if (answer.path("status").asInt() >= 500) {
                wrong.add("lines: status " + answer.path("status"));
            }
        }
        note(operation, lines.toByteArray(), response.statusCode(), wrong, response.body());
    }

    private void note(Operation operation, byte[] body, int status, List<String> found, byte[] answer) {
        statuses.merge(operation.id() + " " + status, 1, Integer::sum);
        for (String fault : found) {
            String kind =
                    operation.id() + ": " + fault.replaceAll("[0-9]+", "#").replaceAll("'.*'", "'…'");
            faults.putIfAbsent(kind, shortened(body) + "\n   -> " + shortened(answer));
        }
    }

    private static String shortened(byte[] body) {
        String text = new String(body, StandardCharsets.UTF_8);
        return text.length() < 1500 ? text : text.substring(0, 1500) + "…";
    }
}

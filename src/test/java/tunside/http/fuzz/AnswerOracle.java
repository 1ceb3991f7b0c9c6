package tunside.http.fuzz;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import tunside.http.fuzz.ContractSchemas.Operation;

/** Says what is wrong with an answer, whatever was asked. */
final class AnswerOracle {
    private static final Pattern INNER_WORKINGS = Pattern.compile(
            "(?i)(exception|\\bat [a-z.]+\\(|\\b(java|jakarta|io|com|org|tunside)\\.[a-z]+[.a-z]*\\.[A-Z]"
                    + "|jackson|hibernate|vert\\.?x|quarkus|netty|resteasy|stack ?trace)");

    private final ContractSchemas schemas;

    AnswerOracle(ContractSchemas schemas) {
        this.schemas = schemas;
    }

    /** Everything wrong with the answer to a JSON body or a table's address; empty for a good one. */
    List<String> faults(Operation operation, byte[] body, HttpResponse<byte[]> response) {
        List<String> faults = new ArrayList<>();
        String text = new String(response.body(), StandardCharsets.UTF_8);
        int status = response.statusCode();
        if (response.headers().firstValue("X-Content-Type-Options").isEmpty()) {
            faults.add("no security headers");
        }
        if (response.headers().firstValue("X-Planted").isPresent()) {
            faults.add("a header was planted");
        }
        try {
            JsonNode answer = ContractSchemas.MAPPER.readTree(response.body());
            if (status == 200) {
                checkAnswer(operation, body, answer, type(response), faults);
            } else {
                checkProblem(status, answer, type(response), faults);
                if (INNER_WORKINGS.matcher(withoutQuotes(text)).find()) {
                    faults.add("shows its inner workings");
                }
            }
        } catch (IOException e) {
            faults.add(status + " is no JSON");
        }
        if (text.contains("<")) {
            faults.add("carries an unescaped <");
        }
        return faults;
    }

    /** What the caller sent is given back in quotes; that may say anything. */
    private static String withoutQuotes(String text) {
        return text.replaceAll("\\\\\"(?:[^\"\\\\]|\\\\[^\"]|\\\\\\\\\\\\\")*\\\\\"", "");
    }

    private static String type(HttpResponse<byte[]> response) {
        return response.headers().firstValue("Content-Type").orElse("none");
    }

    private void checkAnswer(Operation operation, byte[] body, JsonNode answer, String type, List<String> faults) {
        if (!type.startsWith("application/json")) {
            faults.add("200 as " + type);
        }
        faults.addAll(schemas.faults(operation.response(), answer));
        checkFrame(answer, faults);
        if (operation.request() != null) {
            try {
                JsonNode asked = ContractSchemas.withoutNulls(ContractSchemas.MAPPER.readTree(body));
                List<String> refused = schemas.faults(operation.request().get("schema"), asked);
                if (!refused.isEmpty()) {
                    faults.add("200 for what the contract refuses: " + refused);
                }
            } catch (JsonProcessingException e) {
                faults.add("200 for what is no JSON");
            } catch (IOException e) {
                throw new IllegalStateException(e);
            }
        }
    }

    private void checkProblem(int status, JsonNode problem, String type, List<String> faults) {
        if (status >= 500 || status < 400) {
            faults.add("status " + status);
        }
        if (!type.startsWith("application/problem+json")) {
            faults.add(status + " as " + type);
        }
        faults.addAll(schemas.faults(schemas.problem(), problem));
        checkFrame(problem, faults);
        if (problem.path("status").asInt() != status) {
            faults.add("the problem has another status than the answer");
        }
        if (problem.path("title").asText().isBlank()
                || problem.path("detail").asText().isBlank()) {
            faults.add("the problem says nothing");
        }
        if ((status == 400 || status == 422) && problem.path("errors").isEmpty()) {
            faults.add(status + " names no fault");
        }
    }

    private static void checkFrame(JsonNode answer, List<String> faults) {
        if (answer.path("checks").isEmpty() || answer.path("safety").isEmpty() || !answer.has("basis")) {
            faults.add("the frame is not whole");
        }
    }
}

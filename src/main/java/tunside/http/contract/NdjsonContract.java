package tunside.http.contract;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.eclipse.microprofile.openapi.OASFactory;
import org.eclipse.microprofile.openapi.models.Operation;
import org.eclipse.microprofile.openapi.models.examples.Example;
import org.eclipse.microprofile.openapi.models.media.Content;
import org.eclipse.microprofile.openapi.models.media.MediaType;
import org.eclipse.microprofile.openapi.models.media.Schema;
import org.jspecify.annotations.Nullable;
import tunside.http.ndjson.LineAnswers;
import tunside.http.ndjson.NdjsonRoutes;

/** Adds to a computation that it takes many questions, one a line. */
final class NdjsonContract {
    private static final String JSON = "application/json";
    private static final String EXAMPLE = "a-question-and-a-faulty-one";

    private NdjsonContract() {}

    /** @param examples of the operation, from which a good and a faulty line are taken */
    static void describe(Operation operation, JsonNode examples) {
        Content questions = operation.getRequestBody().getContent();
        Content answers = operation.getResponses().getAPIResponse("200").getContent();
        String lines = "One %s a line, each at most 256 KiB, at most 16 MiB in all. Blank lines are skipped. Read the"
                + " answers while you send: what is sent while answers wait to be read has to wait too.";
        String answered =
                "One %s a line, in the order of the questions. A faulty line has a Problem with its line number"
                        + " in its place, and the next are answered. A line or a body that is too large ends the answers with its"
                        + " problem.";
        MediaType question =
                OASFactory.createMediaType().schema(text(lines, questions).maxLength((int) LineAnswers.LARGEST_BODY));
        MediaType answer = OASFactory.createMediaType().schema(text(answered, answers));
        JsonNode good = first(examples, "200");
        JsonNode faulty = first(examples, "400");
        if (good != null && faulty != null) {
            question.addExample(EXAMPLE, example(good.get("request"), faulty.get("request")));
            answer.addExample(EXAMPLE, example(good.get("response"), atLine(faulty.get("response"), 2)));
        }
        questions.addMediaType(NdjsonRoutes.MEDIA_TYPE, question);
        answers.addMediaType(NdjsonRoutes.MEDIA_TYPE, answer);
    }

    private static Schema text(String description, Content json) {
        String ref = json.getMediaType(JSON).getSchema().getRef();
        return OASFactory.createSchema()
                .addType(Schema.SchemaType.STRING)
                .description(description.formatted(ref.substring(ref.lastIndexOf('/') + 1)));
    }

    private static @Nullable JsonNode first(JsonNode examples, String status) {
        for (JsonNode example : examples) {
            if (example.get("status").asText().equals(status)) {
                return example;
            }
        }
        return null;
    }

    private static Example example(JsonNode first, JsonNode second) {
        return OASFactory.createExample().summary("A question and a faulty one").value(first + "\n" + second + "\n");
    }

    /** A problem as it is answered in the place of a line. */
    private static JsonNode atLine(JsonNode problem, int line) {
        ObjectNode numbered = JsonNodeFactory.instance.objectNode();
        problem.properties().forEach(member -> {
            numbered.set(member.getKey(), member.getValue());
            if (member.getKey().equals("detail")) {
                numbered.put("line", line);
            }
        });
        return numbered;
    }
}

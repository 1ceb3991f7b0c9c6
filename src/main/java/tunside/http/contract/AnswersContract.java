package tunside.http.contract;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.eclipse.microprofile.openapi.models.OpenAPI;
import org.eclipse.microprofile.openapi.models.Operation;
import org.eclipse.microprofile.openapi.models.PathItem;
import org.eclipse.microprofile.openapi.models.media.Content;
import org.eclipse.microprofile.openapi.models.media.Schema;

/**
 * Says which members an answer always has: all that cannot be null. So generated clients know what they need not ask for.
 * Schemas that a question uses too say it themselves, since there a member may be left out.
 */
final class AnswersContract {
    private final Map<String, Schema> schemas;

    private AnswersContract(Map<String, Schema> schemas) {
        this.schemas = schemas;
    }

    static void describe(OpenAPI contract) {
        AnswersContract answers = new AnswersContract(contract.getComponents().getSchemas());
        Set<String> asked = new TreeSet<>();
        Set<String> answered = new TreeSet<>();
        for (PathItem path : contract.getPaths().getPathItems().values()) {
            for (Operation operation : path.getOperations().values()) {
                if (operation.getRequestBody() != null) {
                    answers.collect(operation.getRequestBody().getContent(), asked);
                }
                operation
                        .getResponses()
                        .getAPIResponses()
                        .values()
                        .forEach(response -> answers.collect(response.getContent(), answered));
            }
        }
        answered.removeAll(asked);
        answered.forEach(name -> require(requireNonNull(answers.schemas.get(name))));
    }

    private static void require(Schema schema) {
        if (schema.getProperties() == null) {
            return;
        }
        Set<String> required = new LinkedHashSet<>();
        schema.getProperties().forEach((name, member) -> {
            if (!nullable(member)) {
                required.add(name);
            }
        });
        if (!required.isEmpty()) {
            schema.setRequired(new ArrayList<>(required));
        }
    }

    private static boolean nullable(Schema member) {
        return isNull(member)
                || (member.getAnyOf() != null && member.getAnyOf().stream().anyMatch(AnswersContract::isNull));
    }

    private static boolean isNull(Schema schema) {
        return schema.getType() != null && schema.getType().contains(Schema.SchemaType.NULL);
    }

    private void collect(Content content, Set<String> names) {
        if (content != null) {
            content.getMediaTypes().values().forEach(mediaType -> collect(mediaType.getSchema(), names));
        }
    }

    private void collect(Schema schema, Set<String> names) {
        if (schema == null) {
            return;
        }
        if (schema.getRef() != null) {
            String name = schema.getRef().substring(schema.getRef().lastIndexOf('/') + 1);
            if (names.add(name)) {
                collect(requireNonNull(schemas.get(name)), names);
            }
        }
        collect(schema.getItems(), names);
        collect(schema.getAdditionalPropertiesSchema(), names);
        if (schema.getProperties() != null) {
            schema.getProperties().values().forEach(member -> collect(member, names));
        }
        Stream.of(schema.getAnyOf(), schema.getOneOf(), schema.getAllOf())
                .filter(Objects::nonNull)
                .flatMap(List::stream)
                .forEach(choice -> collect(choice, names));
    }
}

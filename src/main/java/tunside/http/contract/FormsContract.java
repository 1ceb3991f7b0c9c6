package tunside.http.contract;

import com.fasterxml.jackson.databind.JsonNode;
import org.eclipse.microprofile.openapi.OASFactory;
import org.eclipse.microprofile.openapi.models.Operation;
import org.eclipse.microprofile.openapi.models.media.Content;
import org.eclipse.microprofile.openapi.models.media.Schema;
import tunside.http.picture.Pictures;
import tunside.http.sheet.Sheets;

/** Adds to a computation the forms other than JSON that its answer has. */
final class FormsContract {
    private static final int LONGEST = 1_000_000;

    private FormsContract() {}

    /** @param examples of the operation; {@code forms} has, for a media type, a shortened answer */
    static void describe(Operation operation, JsonNode examples) {
        Content answers = operation.getResponses().getAPIResponse("200").getContent();
        String ref = answers.getMediaType("application/json").getSchema().getRef();
        String answer = ref.substring(ref.lastIndexOf('/') + 1);
        if (Pictures.answers().contains(answer)) {
            add(
                    answers,
                    Pictures.MEDIA_TYPE,
                    "%s as a picture, for light and dark ground and for a phone's width. Its marks carry their numbers as"
                            + " data- attributes; title and desc say it in words.",
                    answer);
        }
        if (Sheets.answers().contains(answer)) {
            add(
                    answers,
                    Sheets.MEDIA_TYPE,
                    "%s as a sheet that prints on one page of A4 or US Letter: grist and liquor, pH, steps with boxes to tick"
                            + " and fields for what is read, the electrode, and safety notes in the margin.",
                    answer);
        }
        examples.properties()
                .forEach(example -> example.getValue()
                        .path("forms")
                        .properties()
                        .forEach(form -> answers.getMediaType(form.getKey())
                                .addExample(
                                        example.getKey(),
                                        OASFactory.createExample()
                                                .summary(example.getValue()
                                                                .get("summary")
                                                                .asText() + " Shortened.")
                                                .value(form.getValue().asText()))));
    }

    private static void add(Content answers, String mediaType, String description, String answer) {
        answers.addMediaType(
                mediaType,
                OASFactory.createMediaType()
                        .schema(OASFactory.createSchema()
                                .addType(Schema.SchemaType.STRING)
                                .maxLength(LONGEST)
                                .description(description.formatted(answer))));
    }
}

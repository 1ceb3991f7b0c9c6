package tunside.http.json;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.SerializableString;
import com.fasterxml.jackson.core.io.SerializedString;
import com.fasterxml.jackson.databind.JsonSerializer;
import com.fasterxml.jackson.databind.SerializerProvider;
import java.io.IOException;
import java.io.StringWriter;
import tunside.http.answer.LastingList;

/** Writes a lasting list as it was written the first time. */
@SuppressWarnings("rawtypes")
final class LastingListWriter extends JsonSerializer<LastingList> {
    @Override
    public void serialize(LastingList list, JsonGenerator generator, SerializerProvider provider) throws IOException {
        if (generator.getOutputTarget() == null) { // a tree takes no ready text
            provider.defaultSerializeValue(list.items(), generator);
            return;
        }
        SerializableString json = list.json();
        if (json == null) {
            StringWriter text = new StringWriter();
            try (JsonGenerator once = generator.getCodec().getFactory().createGenerator(text)) {
                once.writeObject(list.items());
            }
            json = new SerializedString(text.toString());
            list.keep(json);
        }
        generator.writeRawValue(json);
    }
}

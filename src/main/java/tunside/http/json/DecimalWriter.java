package tunside.http.json;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.databind.JsonSerializer;
import com.fasterxml.jackson.databind.SerializerProvider;
import java.io.IOException;
import tunside.http.answer.ShortDecimal;

/** Writes numbers as they would be written anyway, the short ones of an answer without the search for their shortest text. */
final class DecimalWriter extends JsonSerializer<Double> {
    @Override
    public void serialize(Double number, JsonGenerator generator, SerializerProvider provider) throws IOException {
        char[] text = new char[ShortDecimal.LONGEST];
        int start = generator.getOutputTarget() == null ? text.length : ShortDecimal.write(number, text);
        if (start == text.length) { // none, or a tree, which takes no ready text
            generator.writeNumber(number);
        } else {
            generator.writeNumber(text, start, text.length - start);
        }
    }
}

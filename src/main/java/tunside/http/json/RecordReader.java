package tunside.http.json;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.JsonDeserializer;
import com.fasterxml.jackson.databind.deser.std.DelegatingDeserializer;
import java.io.IOException;
import org.jspecify.annotations.Nullable;

/** Reads a record as usual, and notes in the faults of its body where it may not keep its constraints. */
final class RecordReader extends DelegatingDeserializer {
    private static final long serialVersionUID = 1;

    private final transient PlainConstraints constraints;

    RecordReader(JsonDeserializer<?> usual, PlainConstraints constraints) {
        super(usual);
        this.constraints = constraints;
    }

    @Override
    protected JsonDeserializer<?> newDelegatingInstance(JsonDeserializer<?> resolved) {
        return new RecordReader(resolved, constraints);
    }

    @Override
    public @Nullable Object deserialize(JsonParser parser, DeserializationContext context) throws IOException {
        Object read = super.deserialize(parser, context);
        if (read != null && !constraints.areKeptBy(read)) {
            BodyFaults.of(context).doubt();
        }
        return read;
    }
}

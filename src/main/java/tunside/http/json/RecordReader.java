package tunside.http.json;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.deser.BeanDeserializer;
import com.fasterxml.jackson.databind.deser.BeanDeserializerBase;
import com.fasterxml.jackson.databind.deser.SettableBeanProperty;
import java.io.IOException;
import java.lang.reflect.RecordComponent;
import org.jspecify.annotations.Nullable;

/**
 * Reads a record straight into the values of its constructor: a member that is left out is null, and one that is not in the
 * contract is a fault. Notes in the faults of its body where the record may not keep its constraints.
 */
final class RecordReader extends BeanDeserializer {
    private static final long serialVersionUID = 1;

    private final int members;
    private final transient PlainConstraints constraints;

    /**
     * @param usual as the library reads the record
     * @param type of the record; none of its members is primitive, since any may be left out
     */
    RecordReader(BeanDeserializerBase usual, Class<?> type) {
        super(usual);
        RecordComponent[] components = type.getRecordComponents();
        for (RecordComponent component : components) {
            if (component.getType().isPrimitive()) {
                throw new IllegalArgumentException("%s cannot be left out of %s".formatted(component.getName(), type));
            }
        }
        this.members = components.length;
        this.constraints = new PlainConstraints(type);
    }

    @Override
    public @Nullable Object deserialize(JsonParser parser, DeserializationContext context) throws IOException {
        if (!parser.isExpectedStartObjectToken()) {
            return super.deserialize(parser, context);
        }
        @Nullable Object[] values = new Object[members];
        for (String name = parser.nextFieldName(); name != null; name = parser.nextFieldName()) {
            parser.nextToken();
            SettableBeanProperty member = _propertyBasedCreator.findCreatorProperty(name);
            if (member == null) {
                handleUnknownVanilla(parser, context, handledType(), name);
            } else {
                values[member.getCreatorIndex()] = member.deserialize(parser, context);
            }
        }
        if (!constraints.areKeptBy(values)) {
            BodyFaults.of(context).doubt();
        }
        return _valueInstantiator.createFromObjectWith(context, values);
    }
}

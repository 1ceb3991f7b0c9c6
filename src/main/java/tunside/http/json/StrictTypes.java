package tunside.http.json;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.databind.BeanDescription;
import com.fasterxml.jackson.databind.DeserializationConfig;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.JavaType;
import com.fasterxml.jackson.databind.JsonDeserializer;
import com.fasterxml.jackson.databind.JsonSerializer;
import com.fasterxml.jackson.databind.SerializationConfig;
import com.fasterxml.jackson.databind.deser.BeanDeserializerBase;
import com.fasterxml.jackson.databind.deser.BeanDeserializerModifier;
import com.fasterxml.jackson.databind.deser.std.StdScalarDeserializer;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.ser.BeanSerializerModifier;
import java.io.IOException;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tunside.http.answer.LastingList;

/**
 * Reads scalars without any coercion: a number is a JSON number and finite, text is a JSON string, an enum is one of its
 * contract names. What does not fit becomes a fault at its pointer and a null, so that the reading goes on.
 */
final class StrictTypes extends SimpleModule {
    private static final long serialVersionUID = 1;

    StrictTypes() {
        super("tunside-strict-types");
        addDeserializer(Double.class, new DoubleReader());
        addDeserializer(Integer.class, new IntegerReader());
        addDeserializer(String.class, new TextReader());
        addDeserializer(Boolean.class, new BooleanReader());
        addSerializer(LastingList.class, new LastingListWriter());
        addSerializer(Double.class, new DecimalWriter());
        addSerializer(Double.TYPE, new DecimalWriter());
        setDeserializerModifier(new BeanDeserializerModifier() {
            private static final long serialVersionUID = 1;

            @Override
            public JsonDeserializer<?> modifyEnumDeserializer(
                    DeserializationConfig config, JavaType type, BeanDescription bean, JsonDeserializer<?> usual) {
                return new EnumReader(type.getRawClass());
            }

            @Override
            public JsonDeserializer<?> modifyDeserializer(
                    DeserializationConfig config, BeanDescription bean, JsonDeserializer<?> usual) {
                Class<?> type = bean.getBeanClass();
                return type.isRecord() ? new RecordReader((BeanDeserializerBase) usual, type) : usual;
            }
        });
        setSerializerModifier(new BeanSerializerModifier() {
            private static final long serialVersionUID = 1;

            @Override
            public JsonSerializer<?> modifyEnumSerializer(
                    SerializationConfig config, JavaType type, BeanDescription bean, JsonSerializer<?> usual) {
                return new EnumWriter(type.getRawClass());
            }
        });
    }

    private abstract static class Reader<T> extends StdScalarDeserializer<T> {
        private static final long serialVersionUID = 1;

        Reader(Class<T> type) {
            super(type);
        }

        final @Nullable T fault(JsonParser parser, DeserializationContext context, String expected) throws IOException {
            BodyFaults.of(context).add(parser, expected + " but is " + BodyFaults.shown(parser));
            parser.skipChildren();
            return null;
        }
    }

    private static final class DoubleReader extends Reader<Double> {
        private static final long serialVersionUID = 1;

        DoubleReader() {
            super(Double.class);
        }

        @Override
        public @Nullable Double deserialize(JsonParser parser, DeserializationContext context) throws IOException {
            if (parser.currentToken().isNumeric()) {
                double value = parser.getDoubleValue();
                if (Double.isFinite(value)) {
                    return value + 0.0; // a minus zero is a zero: it must not lie below a table that begins there
                }
            }
            return fault(parser, context, "must be a finite number, without quotes,");
        }
    }

    private static final class IntegerReader extends Reader<Integer> {
        private static final long serialVersionUID = 1;

        IntegerReader() {
            super(Integer.class);
        }

        @Override
        public @Nullable Integer deserialize(JsonParser parser, DeserializationContext context) throws IOException {
            if (parser.currentToken() == JsonToken.VALUE_NUMBER_INT
                    && parser.getNumberType() == JsonParser.NumberType.INT) {
                return parser.getIntValue();
            }
            return fault(parser, context, "must be a whole number, without quotes,");
        }
    }

    private static final class TextReader extends Reader<String> {
        private static final long serialVersionUID = 1;

        TextReader() {
            super(String.class);
        }

        @Override
        public @Nullable String deserialize(JsonParser parser, DeserializationContext context) throws IOException {
            if (parser.currentToken() == JsonToken.VALUE_STRING) {
                return parser.getText();
            }
            return fault(parser, context, "must be text in quotes");
        }
    }

    private static final class BooleanReader extends Reader<Boolean> {
        private static final long serialVersionUID = 1;

        BooleanReader() {
            super(Boolean.class);
        }

        @Override
        public @Nullable Boolean deserialize(JsonParser parser, DeserializationContext context) throws IOException {
            if (parser.currentToken().isBoolean()) {
                return parser.getBooleanValue();
            }
            return fault(parser, context, "must be true or false, without quotes,");
        }
    }

    @SuppressWarnings("rawtypes")
    private static final class EnumReader extends Reader<Enum> {
        private static final long serialVersionUID = 1;

        private final transient Map<String, Enum> constants = new LinkedHashMap<>();

        @SuppressWarnings("unchecked")
        EnumReader(Class<?> type) {
            super((Class<Enum>) type);
            Arrays.stream(type.getEnumConstants())
                    .map(Enum.class::cast)
                    .forEach(constant -> constants.put(ContractNames.of(constant), constant));
        }

        @Override
        public @Nullable Enum deserialize(JsonParser parser, DeserializationContext context) throws IOException {
            if (parser.currentToken() == JsonToken.VALUE_STRING) {
                Enum constant = constants.get(parser.getText());
                if (constant != null) {
                    return constant;
                }
            }
            return fault(
                    parser,
                    context,
                    constants.keySet().stream().collect(Collectors.joining(", ", "must be one of ", "")));
        }
    }
}

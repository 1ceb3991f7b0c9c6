package tunside.http.json;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.StreamWriteFeature;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JavaType;
import com.fasterxml.jackson.databind.JsonDeserializer;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.deser.DeserializationProblemHandler;
import com.fasterxml.jackson.databind.deser.ValueInstantiator;
import io.quarkus.jackson.ObjectMapperCustomizer;
import jakarta.inject.Singleton;
import java.io.IOException;
import java.util.Collection;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** The one JSON dialect of the service: strict, bounded, nothing coerced. */
@Singleton
public final class StrictJson implements ObjectMapperCustomizer {
    private static final int DEEPEST = 20;
    private static final int LONGEST_NUMBER = 40;
    private static final int LONGEST_TEXT = 4000;
    private static final int LONGEST_NAME = 100;
    private static final long LONGEST_BODY = 256 * 1024L;
    private static final long MOST_TOKENS = 100_000;

    @Override
    public void customize(ObjectMapper mapper) {
        mapper.getFactory()
                .setStreamReadConstraints(StreamReadConstraints.builder()
                        .maxNestingDepth(DEEPEST)
                        .maxNumberLength(LONGEST_NUMBER)
                        .maxStringLength(LONGEST_TEXT)
                        .maxNameLength(LONGEST_NAME)
                        .maxDocumentLength(LONGEST_BODY)
                        .maxTokenCount(MOST_TOKENS)
                        .build());
        mapper.getFactory()
                .setCharacterEscapes(new MarkupEscapes())
                .enable(StreamReadFeature.USE_FAST_DOUBLE_PARSER.mappedFeature())
                .enable(StreamWriteFeature.USE_FAST_DOUBLE_WRITER.mappedFeature());
        mapper.enable(JsonParser.Feature.STRICT_DUPLICATE_DETECTION)
                .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
                .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
                .enable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES)
                .disable(DeserializationFeature.ACCEPT_FLOAT_AS_INT)
                .setDefaultPropertyInclusion(JsonInclude.Include.NON_NULL)
                .registerModule(new StrictTypes())
                .addHandler(new Collector());
    }

    /** Turns what the object reader cannot place into faults, and lets it go on. */
    private static final class Collector extends DeserializationProblemHandler {
        @Override
        public boolean handleUnknownProperty(
                DeserializationContext context,
                JsonParser parser,
                JsonDeserializer<?> deserializer,
                Object beanOrClass,
                String name)
                throws IOException {
            Collection<Object> known = deserializer.getKnownPropertyNames();
            String names = known == null
                    ? ""
                    : known.stream()
                            .map(Object::toString)
                            .sorted()
                            .collect(Collectors.joining(", ", "; it takes ", ""));
            BodyFaults.of(context).add(parser, "is not a member of this object" + names);
            parser.skipChildren();
            return true;
        }

        @Override
        public @Nullable Object handleUnexpectedToken(
                DeserializationContext context, JavaType type, JsonToken token, JsonParser parser, String message)
                throws IOException {
            String expected = type.isCollectionLikeType() ? "must be an array" : "must be an object";
            BodyFaults.of(context).add(parser, expected + " but is " + BodyFaults.shown(parser));
            parser.skipChildren();
            return null;
        }

        /** A number or text where an object belongs, such as a bare 5 for a quantity. */
        @Override
        public @Nullable Object handleMissingInstantiator(
                DeserializationContext context,
                Class<?> type,
                ValueInstantiator instantiator,
                JsonParser parser,
                String message)
                throws IOException {
            BodyFaults.of(context).add(parser, "must be an object but is " + BodyFaults.shown(parser));
            parser.skipChildren();
            return null;
        }
    }
}

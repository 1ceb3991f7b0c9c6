package tunside.http.json;

import com.fasterxml.jackson.databind.ObjectMapper;
import io.netty.buffer.ByteBuf;
import io.netty.buffer.ByteBufOutputStream;
import io.quarkus.vertx.utils.NoBoundChecksBuffer;
import io.vertx.core.buffer.impl.VertxByteBufAllocator;
import jakarta.inject.Inject;
import jakarta.inject.Singleton;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.ext.Provider;
import java.io.IOException;
import java.io.OutputStream;
import java.lang.annotation.Annotation;
import java.lang.reflect.Type;
import org.jboss.resteasy.reactive.server.spi.ResteasyReactiveResourceInfo;
import org.jboss.resteasy.reactive.server.spi.ServerMessageBodyWriter;
import org.jboss.resteasy.reactive.server.spi.ServerRequestContext;
import org.jboss.resteasy.reactive.server.vertx.VertxResteasyReactiveRequestContext;
import tunside.http.problem.Problems;

/**
 * Writes an answer as JSON in one piece, so that it goes out with its length. The framework's own writer sends it in chunks of 8
 * kB through a stream, which costs as much again as the JSON. It is written where the network takes it from.
 */
@Provider
@Singleton
@Produces({MediaType.APPLICATION_JSON, Problems.MEDIA_TYPE})
public class BodyWriter implements ServerMessageBodyWriter<Record> {
    private static final int USUAL_LENGTH = 16 * 1024;

    private final ObjectMapper mapper;

    @Inject
    public BodyWriter(ObjectMapper mapper) {
        this.mapper = mapper;
    }

    @Override
    public boolean isWriteable(Class<?> type, Type generic, Annotation[] annotations, MediaType mediaType) {
        return type.isRecord();
    }

    @Override
    public boolean isWriteable(Class<?> type, Type generic, ResteasyReactiveResourceInfo method, MediaType mediaType) {
        return type.isRecord();
    }

    @Override
    public void writeResponse(Record answer, Type generic, ServerRequestContext context) throws IOException {
        ByteBuf buffer = VertxByteBufAllocator.POOLED_ALLOCATOR.directBuffer(USUAL_LENGTH);
        try {
            mapper.writeValue((OutputStream) new ByteBufOutputStream(buffer), answer);
        } catch (IOException | RuntimeException e) {
            buffer.release();
            throw e;
        }
        ((VertxResteasyReactiveRequestContext) context).end(new NoBoundChecksBuffer(buffer));
    }

    @Override
    public void writeTo(
            Record answer,
            Class<?> type,
            Type generic,
            Annotation[] annotations,
            MediaType mediaType,
            MultivaluedMap<String, Object> headers,
            OutputStream out)
            throws IOException {
        out.write(mapper.writeValueAsBytes(answer));
    }
}

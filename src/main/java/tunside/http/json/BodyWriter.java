package tunside.http.json;

import com.fasterxml.jackson.databind.ObjectMapper;
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
import tunside.http.problem.Problems;

/**
 * Writes an answer as JSON in one piece, so that it goes out with its length. The framework's own writer sends it in chunks of 8
 * kB through a stream, which costs as much again as the JSON.
 */
@Provider
@Singleton
@Produces({MediaType.APPLICATION_JSON, Problems.MEDIA_TYPE})
public class BodyWriter implements ServerMessageBodyWriter<Record> {
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
        context.serverResponse().end(mapper.writeValueAsBytes(answer));
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

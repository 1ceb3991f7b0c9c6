package tunside.http.picture;

import jakarta.ws.rs.NotAcceptableException;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.ext.MessageBodyWriter;
import jakarta.ws.rs.ext.Provider;
import java.io.IOException;
import java.io.OutputStream;
import java.lang.annotation.Annotation;
import java.lang.reflect.Type;
import java.nio.charset.StandardCharsets;
import tunside.http.answer.Answered;

/** Writes an answer as its picture. */
@Provider
@Produces(Pictures.MEDIA_TYPE)
public final class PictureWriter implements MessageBodyWriter<Answered> {
    @Override
    public boolean isWriteable(Class<?> type, Type generic, Annotation[] annotations, MediaType mediaType) {
        return type == Answered.class;
    }

    @Override
    public void writeTo(
            Answered answered,
            Class<?> type,
            Type generic,
            Annotation[] annotations,
            MediaType mediaType,
            MultivaluedMap<String, Object> headers,
            OutputStream out)
            throws IOException {
        String svg = Pictures.of(answered.answer()).orElseThrow(NotAcceptableException::new);
        out.write(svg.getBytes(StandardCharsets.UTF_8));
    }
}

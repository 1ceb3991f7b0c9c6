package tunside.http.sheet;

import io.quarkus.qute.Location;
import io.quarkus.qute.Template;
import jakarta.inject.Inject;
import jakarta.inject.Singleton;
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

/** Writes a question and its answer as a sheet to print. */
@Provider
@Singleton
@Produces(Sheets.MEDIA_TYPE)
public class SheetWriter implements MessageBodyWriter<Answered> {
    private final Template template;

    @Inject
    public SheetWriter(@Location("brew-day-sheet") Template template) {
        this.template = template;
    }

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
        String html = render(Sheets.of(answered).orElseThrow(NotAcceptableException::new));
        headers.putSingle("Content-Type", Sheets.MEDIA_TYPE + ";charset=UTF-8");
        out.write(html.getBytes(StandardCharsets.UTF_8));
    }

    /** The page; every value is escaped by the template engine. */
    String render(BrewDaySheet sheet) {
        return template.data("sheet", sheet).render();
    }
}

package tunside.http.json;

import com.fasterxml.jackson.core.JacksonException;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParseException;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.core.io.JsonEOFException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.ObjectReader;
import io.vertx.ext.web.RoutingContext;
import jakarta.inject.Inject;
import jakarta.inject.Singleton;
import jakarta.validation.Validator;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.WebApplicationException;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.ext.Provider;
import java.io.IOException;
import java.io.InputStream;
import java.lang.annotation.Annotation;
import java.lang.reflect.Type;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.jboss.resteasy.reactive.server.core.ResteasyReactiveRequestContext;
import org.jboss.resteasy.reactive.server.spi.ResteasyReactiveResourceInfo;
import org.jboss.resteasy.reactive.server.spi.ServerMessageBodyReader;
import org.jboss.resteasy.reactive.server.spi.ServerRequestContext;
import org.jspecify.annotations.Nullable;
import tunside.http.problem.Fault;
import tunside.http.problem.InvalidRequestException;

/**
 * Reads a JSON body into its request record and checks every constraint of the contract, so that one answer names all
 * faults: wrong types and unknown members from the reading, missing members and ranges from the validation. A body whose every
 * record keeps its constraints at a glance is not validated once more, which takes longer than to read it.
 */
@Provider
@Singleton
@Consumes(MediaType.APPLICATION_JSON)
public class BodyReader implements ServerMessageBodyReader<Object> {
    /** Largest JSON body, bytes. */
    public static final int LARGEST_BODY = 256 * 1024;

    private final ObjectMapper mapper;
    private final Validator validator;
    private final Map<Class<?>, ObjectReader> readers = new ConcurrentHashMap<>();

    @Inject
    public BodyReader(ObjectMapper mapper, Validator validator) {
        this.mapper = mapper;
        this.validator = validator;
    }

    @Override
    public boolean isReadable(Class<?> type, Type generic, Annotation[] annotations, MediaType mediaType) {
        return true;
    }

    @Override
    public boolean isReadable(Class<?> type, Type generic, ResteasyReactiveResourceInfo method, MediaType mediaType) {
        return true;
    }

    @Override
    public Object readFrom(Class<Object> type, Type generic, MediaType mediaType, ServerRequestContext context)
            throws IOException {
        RoutingContext request = ((ResteasyReactiveRequestContext) context).unwrap(RoutingContext.class);
        return read(request.body().buffer().getBytes(), type);
    }

    @Override
    public Object readFrom(
            Class<Object> type,
            Type generic,
            Annotation[] annotations,
            MediaType mediaType,
            MultivaluedMap<String, String> headers,
            InputStream in)
            throws IOException {
        byte[] body = in.readNBytes(LARGEST_BODY + 1);
        if (body.length > LARGEST_BODY) {
            throw new WebApplicationException(413);
        }
        return read(body, type);
    }

    /**
     * Reads and checks one JSON document.
     *
     * @throws InvalidRequestException with every fault found
     */
    public <T> T read(byte[] body, Class<T> type) {
        BodyFaults faults = new BodyFaults();
        T request = parse(body, type, faults);
        if (request != null && faults.areNone()) {
            return request;
        }
        if (request != null) {
            add(Violations.of(validator, request), faults);
            if (!faults.all().isEmpty()) {
                add(Violations.of(validator, request, Known.Names.class), faults);
            }
        } else if (faults.all().isEmpty()) {
            faults.add("", "the body must be a JSON object but is " + (body.length == 0 ? "empty" : "null"));
        }
        if (request == null || !faults.all().isEmpty()) {
            throw new InvalidRequestException(faults.all());
        }
        return request;
    }

    private static void add(List<Fault> violations, BodyFaults faults) {
        for (Fault fault : violations) {
            if (!faults.has(fault.pointer())) {
                faults.add(fault.pointer(), fault.detail());
            }
        }
    }

    private <T> @Nullable T parse(byte[] body, Class<T> type, BodyFaults faults) {
        if (body.length == 0) {
            return null;
        }
        try {
            return readers.computeIfAbsent(type, mapper::readerFor)
                    .withAttribute(BodyFaults.ATTRIBUTE, faults)
                    .readValue(body);
        } catch (JacksonException e) {
            throw new InvalidRequestException(List.of(new Fault("", sentence(e))));
        } catch (IOException e) {
            throw new InvalidRequestException(List.of(new Fault("", "the body cannot be read")));
        }
    }

    /** What the parser itself found, which the object reader wraps once for every record around it. */
    private static JacksonException innermost(JacksonException e) {
        return e.getCause() instanceof JacksonException cause ? innermost(cause) : e;
    }

    private static String sentence(JacksonException outer) {
        JacksonException e = innermost(outer);
        JsonLocation location = e.getLocation();
        String where =
                location == null ? "" : " (line %d, column %d)".formatted(location.getLineNr(), location.getColumnNr());
        String what;
        if (e instanceof StreamConstraintsException) {
            what = "the body is nested too deep, or has a number, name or text that is too long";
        } else if (e instanceof JsonEOFException) {
            what = "the JSON ends before it is complete";
        } else if (e instanceof JsonParseException && e.getOriginalMessage().startsWith("Duplicate")) {
            what = "the JSON names a member twice in one object";
        } else if (e instanceof JsonParseException) {
            what = "the body is not JSON; numbers are written like 5.4, NaN and infinity do not exist";
        } else {
            what = "the body holds more than one JSON document, or JSON of another shape than the contract's";
        }
        return what + where;
    }
}

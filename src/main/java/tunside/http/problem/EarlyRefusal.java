package tunside.http.problem;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.vertx.core.buffer.Buffer;
import io.vertx.core.http.HttpServerResponse;
import io.vertx.ext.web.RoutingContext;
import jakarta.inject.Inject;
import jakarta.inject.Singleton;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/** Answers with a problem where no resource has been reached yet; the body is not read. */
@Singleton
public final class EarlyRefusal {
    private static final int OVERLOADED = 503;

    private final ObjectMapper mapper;

    /** Written once each: there are few, and under overload they must cost little. */
    private final Map<Problem, Buffer> written = new ConcurrentHashMap<>();

    @Inject
    public EarlyRefusal(ObjectMapper mapper) {
        this.mapper = mapper;
    }

    /**
     * Ends a request with a problem, and its connection too, unless the request may be sent again: then the rest of its body
     * is dropped.
     */
    public void answer(RoutingContext context, Problem problem) {
        HttpServerResponse response =
                context.response().setStatusCode(problem.status()).putHeader("Content-Type", Problems.MEDIA_TYPE);
        if (problem.status() == OVERLOADED) {
            response.putHeader("Retry-After", Problems.RETRY_AFTER_SECONDS);
            context.request().resume();
        } else {
            response.putHeader("Connection", "close");
        }
        response.end(written.computeIfAbsent(problem, this::json));
    }

    private Buffer json(Problem problem) {
        try {
            return Buffer.buffer(mapper.writeValueAsBytes(problem));
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }
}

package tunside.http.problem;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.vertx.ext.web.RoutingContext;
import jakarta.inject.Inject;
import jakarta.inject.Singleton;

/** Answers with a problem where no resource has been reached yet, and closes: the body is not read. */
@Singleton
public final class EarlyRefusal {
    private final ObjectMapper mapper;

    @Inject
    public EarlyRefusal(ObjectMapper mapper) {
        this.mapper = mapper;
    }

    /** Ends a request with a problem. */
    public void answer(RoutingContext context, Problem problem) {
        context.response()
                .setStatusCode(problem.status())
                .putHeader("Content-Type", Problems.MEDIA_TYPE)
                .putHeader("Connection", "close")
                .end(json(problem));
    }

    private String json(Problem problem) {
        try {
            return mapper.writeValueAsString(problem);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }
}

package tunside.http.limits;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.vertx.http.runtime.filters.Filters;
import io.vertx.core.http.HttpServerRequest;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import jakarta.inject.Singleton;
import java.util.Map;
import tunside.http.json.BodyReader;
import tunside.http.problem.Problems;

/** Refuses what is too large before it is read, with a problem. The server's own, wider limits answer without one. */
@Singleton
public final class RequestLimits {
    /** Longest address, characters. */
    static final int LONGEST_ADDRESS = 2048;

    /** All header names and values together, characters. */
    static final int LARGEST_HEADERS = 8 * 1024;

    private static final int FIRST = 1000;

    private final ObjectMapper mapper;

    @Inject
    public RequestLimits(ObjectMapper mapper) {
        this.mapper = mapper;
    }

    void install(@Observes Filters filters) {
        filters.register(this::check, FIRST);
    }

    private void check(RoutingContext context) {
        int status = broken(context.request());
        if (status == 0) {
            context.next();
            return;
        }
        context.response()
                .setStatusCode(status)
                .putHeader("Content-Type", Problems.MEDIA_TYPE)
                .putHeader("Connection", "close")
                .end(json(status));
    }

    private static int broken(HttpServerRequest request) {
        if (request.uri().length() > LONGEST_ADDRESS) {
            return 414;
        }
        int headers = 0;
        for (Map.Entry<String, String> header : request.headers()) {
            headers += header.getKey().length() + header.getValue().length();
        }
        if (headers > LARGEST_HEADERS) {
            return 431;
        }
        String length = request.getHeader("Content-Length");
        return length != null && length.length() < 19 && Long.parseLong(length) > BodyReader.LARGEST_BODY ? 413 : 0;
    }

    private String json(int status) {
        try {
            return mapper.writeValueAsString(Problems.status(status));
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }
}

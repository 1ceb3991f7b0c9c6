package tunside.http.limits;

import io.quarkus.vertx.http.runtime.filters.Filters;
import io.vertx.core.http.HttpServerRequest;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import jakarta.inject.Singleton;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tunside.http.json.BodyReader;
import tunside.http.ndjson.LineAnswers;
import tunside.http.ndjson.NdjsonRoutes;
import tunside.http.problem.EarlyRefusal;
import tunside.http.problem.Problem;
import tunside.http.problem.Problems;

/** Refuses what is too large before it is read, with a problem. The server's own, wider limits answer without one. */
@Singleton
public final class RequestLimits {
    /** Longest address, characters. */
    static final int LONGEST_ADDRESS = 2048;

    /** All header names and values together, characters. */
    static final int LARGEST_HEADERS = 8 * 1024;

    private static final int FIRST = 1000;

    private final EarlyRefusal refusal;

    @Inject
    public RequestLimits(EarlyRefusal refusal) {
        this.refusal = refusal;
    }

    void install(@Observes Filters filters) {
        filters.register(this::check, FIRST);
    }

    private void check(RoutingContext context) {
        Problem problem = problem(context.request());
        if (problem == null) {
            context.next();
            return;
        }
        refusal.answer(context, problem);
    }

    private static @Nullable Problem problem(HttpServerRequest request) {
        if (request.uri().length() > LONGEST_ADDRESS) {
            return Problems.status(414);
        }
        int headers = 0;
        for (Map.Entry<String, String> header : request.headers()) {
            headers += header.getKey().length() + header.getValue().length();
        }
        if (headers > LARGEST_HEADERS) {
            return Problems.status(431);
        }
        String length = request.getHeader("Content-Length");
        if (length == null || length.length() >= 19) {
            return null;
        }
        boolean lines = NdjsonRoutes.isNdjson(request);
        return Long.parseLong(length) <= (lines ? LineAnswers.LARGEST_BODY : BodyReader.LARGEST_BODY)
                ? null
                : lines ? LineAnswers.BODY_TOO_LARGE : Problems.status(413);
    }
}

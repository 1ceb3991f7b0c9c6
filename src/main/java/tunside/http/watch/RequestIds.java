package tunside.http.watch;

import io.quarkus.vertx.http.runtime.filters.Filters;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Singleton;
import java.util.UUID;
import java.util.concurrent.ThreadLocalRandom;
import java.util.regex.Pattern;
import org.jboss.logging.MDC;

/**
 * Gives every request an id that stands in the answer and in every line of log about it: the caller's own where it is well
 * formed, else a new one.
 */
@Singleton
public final class RequestIds {
    /** Header of request and answer. */
    public static final String HEADER = "X-Request-Id";

    /** Under which name the log shows it. */
    public static final String LOGGED_AS = "requestId";

    private static final int FIRST = 3100;

    /** Nothing that a log or a page could take for more than a name. */
    private static final Pattern WELL_FORMED = Pattern.compile("[A-Za-z0-9._-]{1,64}");

    void install(@Observes Filters filters) {
        filters.register(RequestIds::identify, FIRST);
    }

    /** To tell requests apart it need not be hard to guess, and a secure one is waited for. */
    private static String invented() {
        ThreadLocalRandom random = ThreadLocalRandom.current();
        return new UUID(random.nextLong(), random.nextLong()).toString();
    }

    private static void identify(RoutingContext context) {
        String given = context.request().getHeader(HEADER);
        String id = given != null && WELL_FORMED.matcher(given).matches() ? given : invented();
        context.response().putHeader(HEADER, id);
        MDC.put(LOGGED_AS, id);
        context.next();
    }
}

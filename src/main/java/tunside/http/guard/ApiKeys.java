package tunside.http.guard;

import io.quarkus.runtime.StartupEvent;
import io.quarkus.vertx.http.runtime.filters.Filters;
import io.vertx.core.http.HttpMethod;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import jakarta.inject.Singleton;
import java.nio.file.Path;
import java.util.Optional;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jspecify.annotations.Nullable;
import tunside.http.problem.EarlyRefusal;
import tunside.http.problem.Problems;

/**
 * Asks for a key before every computation and table, where the operator has mounted a list of them; off by default. The
 * contract and the page stay open.
 */
@Singleton
public final class ApiKeys {
    /** Header that a caller sends the key in. */
    public static final String HEADER = "X-Api-Key";

    /** After the answer to a browser's question whether it may ask at all, which carries no key. */
    private static final int AFTER_CORS = 250;

    private final @Nullable KeyList keys;
    private final EarlyRefusal refusal;

    @Inject
    ApiKeys(@ConfigProperty(name = "tunside.api-keys.file") Optional<Path> file, EarlyRefusal refusal) {
        this.keys = file.map(KeyList::read).orElse(null);
        this.refusal = refusal;
    }

    /** Reads the list at the start, so that a broken one is found then. */
    void load(@Observes StartupEvent event) {}

    void install(@Observes Filters filters) {
        if (keys != null) {
            filters.register(context -> check(context, keys), AFTER_CORS);
        }
    }

    private void check(RoutingContext context, KeyList keys) {
        String path = context.normalizedPath();
        boolean open = !path.startsWith("/v1") || context.request().method().equals(HttpMethod.OPTIONS);
        String key = context.request().getHeader(HEADER);
        if (open || (key != null && keys.holds(key))) {
            context.next();
        } else {
            context.response().putHeader("WWW-Authenticate", "ApiKey realm=\"tunside\"");
            refusal.answer(context, Problems.status(401));
        }
    }
}

package tunside.http.limits;

import io.quarkus.runtime.ShutdownDelayInitiatedEvent;
import io.quarkus.vertx.http.runtime.filters.Filters;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Singleton;

/**
 * From SIGTERM on, every answer asks its client to close the connection and to come back on another, which a gateway opens to
 * an instance that stays. So no connection is left on which a request could be lost at the end.
 */
@Singleton
public final class LastRequests {
    private static final int FIRST = 2900;

    private volatile boolean ending;

    void begin(@Observes ShutdownDelayInitiatedEvent event) {
        ending = true;
    }

    void install(@Observes Filters filters) {
        filters.register(this::askToClose, FIRST);
    }

    private void askToClose(RoutingContext context) {
        if (ending) {
            context.response().putHeader("Connection", "close");
        }
        context.next();
    }
}

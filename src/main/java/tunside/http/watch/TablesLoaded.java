package tunside.http.watch;

import io.smallrye.common.annotation.NonBlocking;
import jakarta.inject.Inject;
import jakarta.inject.Singleton;
import org.eclipse.microprofile.health.HealthCheck;
import org.eclipse.microprofile.health.HealthCheckResponse;
import org.eclipse.microprofile.health.Readiness;
import org.eclipse.microprofile.health.Startup;
import tunside.http.config.TablesAtStart;

/** Started and ready as soon as every reference table has been read; there is nothing else to wait for. */
@NonBlocking
@Startup
@Readiness
@Singleton
public final class TablesLoaded implements HealthCheck {
    private final TablesAtStart tables;

    @Inject
    public TablesLoaded(TablesAtStart tables) {
        this.tables = tables;
    }

    @Override
    public HealthCheckResponse call() {
        return HealthCheckResponse.named("reference tables")
                .status(tables.areLoaded())
                .build();
    }
}

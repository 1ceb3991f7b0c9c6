package tunside.http.guard;

import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import jakarta.inject.Singleton;
import java.util.List;
import java.util.Optional;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** Refuses to start with a list of origins that would open the service to more pages than its operator named. */
@Singleton
public final class AllowedOrigins {
    private final boolean enabled;
    private final List<String> origins;
    private final boolean credentials;

    @Inject
    AllowedOrigins(
            @ConfigProperty(name = "quarkus.http.cors.enabled", defaultValue = "false") boolean enabled,
            @ConfigProperty(name = "quarkus.http.cors.origins") Optional<List<String>> origins,
            @ConfigProperty(name = "quarkus.http.cors.access-control-allow-credentials", defaultValue = "false")
                    boolean credentials) {
        this.enabled = enabled;
        this.origins = origins.orElse(List.of());
        this.credentials = credentials;
    }

    void check(@Observes StartupEvent event) {
        refuseIfOpen(enabled, origins, credentials);
    }

    /**
     * Checks a configuration.
     *
     * @throws IllegalStateException that names the property to mend
     */
    static void refuseIfOpen(boolean enabled, List<String> origins, boolean credentials) {
        if (!enabled) {
            return;
        }
        if (origins.isEmpty()) {
            throw new IllegalStateException(
                    "quarkus.http.cors.enabled is true, but quarkus.http.cors.origins names no origin: list every one");
        }
        boolean any = origins.stream().map(String::strip).anyMatch(origin -> origin.equals("*") || isPattern(origin));
        if (any && credentials) {
            throw new IllegalStateException(
                    "quarkus.http.cors.origins is %s together with credentials:".formatted(origins)
                            + " every page that fits could ask in the name of whoever looks at it; list the origins,"
                            + " or leave quarkus.http.cors.access-control-allow-credentials false");
        }
    }

    private static boolean isPattern(String origin) {
        return origin.length() > 1 && origin.startsWith("/") && origin.endsWith("/");
    }
}

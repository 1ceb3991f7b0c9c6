package tunside.http.watch;

import io.micrometer.core.instrument.Meter;
import io.micrometer.core.instrument.Tag;
import io.micrometer.core.instrument.config.MeterFilter;
import jakarta.enterprise.inject.Any;
import jakarta.enterprise.inject.spi.BeanManager;
import jakarta.inject.Inject;
import jakarta.inject.Singleton;
import jakarta.ws.rs.Path;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Keeps invented addresses out of the metrics. A request that is refused before it is routed would else be counted under
 * whatever address it names, and anybody could make series without end.
 */
@Singleton
public final class KnownAddresses implements MeterFilter {
    private static final String LABEL = "uri";
    private static final String OTHER = "OTHER";

    /** The page, the contract, and what the metrics themselves call an address that does not exist. */
    private static final Set<String> BESIDE_THE_RESOURCES =
            Set.of("/", "root", "/q/openapi", "/q/swagger-ui", "NOT_FOUND", "REDIRECTION", "UNKNOWN");

    private final BeanManager beans;
    private volatile Set<String> known = Set.of();

    @Inject
    public KnownAddresses(BeanManager beans) {
        this.beans = beans;
    }

    @Override
    public Meter.Id map(Meter.Id id) {
        String uri = id.getName().startsWith("http.server.") ? id.getTag(LABEL) : null;
        boolean invented = uri != null && !known().contains(uri);
        return invented
                ? id.replaceTags(id.getTags().stream()
                        .map(tag -> tag.getKey().equals(LABEL) ? Tag.of(LABEL, OTHER) : tag)
                        .toList())
                : id;
    }

    private Set<String> known() {
        if (known.isEmpty()) {
            Set<String> addresses = beans.getBeans(Object.class, Any.Literal.INSTANCE).stream()
                    .map(bean -> bean.getBeanClass().getAnnotation(Path.class))
                    .filter(path -> path != null)
                    .map(Path::value)
                    .collect(Collectors.toSet());
            addresses.addAll(BESIDE_THE_RESOURCES);
            known = Set.copyOf(addresses);
        }
        return known;
    }
}

package tunside.http.watch;

import jakarta.inject.Inject;
import jakarta.inject.Singleton;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.container.ContainerResponseContext;
import jakarta.ws.rs.container.ResourceInfo;
import org.jboss.resteasy.reactive.server.ServerResponseFilter;
import tunside.http.answer.Answered;

/** Counts every answer of a resource on its way out. */
@Singleton
public final class AnswerFilter {
    /** Address of each resource, looked up once. */
    private static final ClassValue<String> PATHS = new ClassValue<>() {
        @Override
        protected String computeValue(Class<?> type) {
            Path path = type.getAnnotation(Path.class);
            return path == null ? "" : path.value();
        }
    };

    private final AnswerCounts counts;

    @Inject
    public AnswerFilter(AnswerCounts counts) {
        this.counts = counts;
    }

    @ServerResponseFilter
    public void count(ContainerResponseContext response, ResourceInfo resource) {
        Object answer = response.getEntity();
        if (answer != null) {
            counts.count(path(resource), answer instanceof Answered answered ? answered.answer() : answer);
        }
    }

    private static String path(ResourceInfo resource) {
        Class<?> type = resource == null ? null : resource.getResourceClass();
        return type == null ? "" : PATHS.get(type);
    }
}

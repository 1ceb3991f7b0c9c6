package tunside.http.contract;

import io.quarkus.smallrye.openapi.runtime.OpenApiConstants;
import io.quarkus.smallrye.openapi.runtime.OpenApiDocumentService;
import io.quarkus.vertx.http.runtime.filters.Filters;
import io.smallrye.openapi.runtime.io.Format;
import io.vertx.core.Future;
import io.vertx.core.buffer.Buffer;
import io.vertx.core.http.HttpMethod;
import io.vertx.core.http.HttpServerRequest;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import jakarta.inject.Singleton;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Answers with the contract, written when it is first asked for and kept. To write it at every start, as JSON and as YAML, took
 * a third of the time to the first answer.
 */
@Singleton
public final class ContractAnswers {
    private static final int AFTER_KEYS = 150;
    private static final String ADDRESS = "/q/openapi";

    private final OpenApiDocumentService contract;
    private final Map<Format, Future<Buffer>> written = new ConcurrentHashMap<>();

    @Inject
    public ContractAnswers(OpenApiDocumentService contract) {
        this.contract = contract;
    }

    void install(@Observes Filters filters) {
        filters.register(this::answer, AFTER_KEYS);
    }

    private void answer(RoutingContext context) {
        String path = context.normalizedPath();
        HttpMethod method = context.request().method();
        boolean asked = method.equals(HttpMethod.GET) || method.equals(HttpMethod.HEAD);
        if (!asked || !(path.equals(ADDRESS) || path.equals(ADDRESS + ".json") || path.equals(ADDRESS + ".yaml"))) {
            context.next();
            return;
        }
        Format format = format(context.request(), path);
        written.computeIfAbsent(format, key -> write(context, key))
                .onSuccess(document -> context.response()
                        .putHeader("Content-Type", format.getMimeType() + ";charset=UTF-8")
                        .end(document))
                .onFailure(fault -> {
                    written.remove(format); // the next one who asks finds it written, or learns why not
                    context.fail(fault);
                });
    }

    private Future<Buffer> write(RoutingContext context, Format format) {
        return context.vertx()
                .executeBlocking(
                        () -> Buffer.buffer(contract.getDocument(OpenApiConstants.DEFAULT_DOCUMENT_NAME, format)));
    }

    /** YAML, unless the address or the client says JSON. */
    private static Format format(HttpServerRequest request, String path) {
        String accept = request.getHeader("Accept");
        boolean json = path.endsWith(".json")
                || "json".equalsIgnoreCase(request.getParam("format"))
                || (accept != null && accept.contains(Format.JSON.getMimeType()));
        return json ? Format.JSON : Format.YAML;
    }
}

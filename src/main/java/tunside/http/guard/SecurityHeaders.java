package tunside.http.guard;

import io.quarkus.vertx.http.runtime.filters.Filters;
import io.vertx.core.MultiMap;
import io.vertx.core.http.HttpHeaders;
import io.vertx.core.http.HttpMethod;
import io.vertx.core.http.HttpServerResponse;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Singleton;
import java.util.regex.Pattern;

/**
 * Says of every answer what a browser may do with it: nothing but show it. What an answer has said itself stays.
 */
@Singleton
public final class SecurityHeaders {
    /** Before everything else, so that refusals have them too. */
    private static final int FIRST = 3000;

    // Made once: as plain text each would be measured and checked anew for every answer.
    private static final CharSequence CONTENT_TYPE_OPTIONS = HttpHeaders.createOptimized("X-Content-Type-Options");
    private static final CharSequence REFERRER_POLICY = HttpHeaders.createOptimized("Referrer-Policy");
    private static final CharSequence FRAME_OPTIONS = HttpHeaders.createOptimized("X-Frame-Options");
    private static final CharSequence RESOURCE_POLICY = HttpHeaders.createOptimized("Cross-Origin-Resource-Policy");
    private static final CharSequence SECURITY_POLICY = HttpHeaders.createOptimized("Content-Security-Policy");
    private static final CharSequence NOSNIFF = HttpHeaders.createOptimized("nosniff");
    private static final CharSequence NO_REFERRER = HttpHeaders.createOptimized("no-referrer");
    private static final CharSequence DENY = HttpHeaders.createOptimized("DENY");
    private static final CharSequence SAME_ORIGIN = HttpHeaders.createOptimized("same-origin");

    private static final String NOTHING =
            "default-src 'none'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

    /** A sheet or a picture brings its own looks in itself, and no script. */
    private static final String OWN_LOOKS = NOTHING + "; style-src 'unsafe-inline'; img-src data:";

    /** The page at / runs its own scripts only and talks to this service only. */
    private static final String PAGE =
            NOTHING + "; script-src 'self'; style-src 'self'; img-src blob: data:; connect-src 'self'";

    /** The form to try the contract is another's; it writes styles and a script into its page. */
    private static final String CONTRACT_FORM = NOTHING
            + "; script-src 'self' 'unsafe-inline'; style-src 'self' 'unsafe-inline'; img-src 'self' data:;"
            + " font-src 'self' data:; connect-src 'self'";

    private static final Pattern PAGE_PATH = Pattern.compile("/(index\\.html|bench/.*)?");

    void install(@Observes Filters filters) {
        filters.register(SecurityHeaders::complete, FIRST);
    }

    private static void complete(RoutingContext context) {
        context.addHeadersEndHandler(nothing -> complete(context, context.response()));
        context.next();
    }

    private static void complete(RoutingContext context, HttpServerResponse response) {
        MultiMap headers = response.headers();
        headers.set(CONTENT_TYPE_OPTIONS, NOSNIFF);
        headers.set(REFERRER_POLICY, NO_REFERRER);
        headers.set(FRAME_OPTIONS, DENY);
        headers.set(RESOURCE_POLICY, SAME_ORIGIN);
        if (!headers.contains(SECURITY_POLICY)) {
            headers.set(SECURITY_POLICY, policy(context.request().path(), headers.get(HttpHeaders.CONTENT_TYPE)));
        }
        if (!headers.contains(HttpHeaders.CACHE_CONTROL)) {
            headers.set(HttpHeaders.CACHE_CONTROL, caching(context, response.getStatusCode()));
        }
    }

    private static String policy(String path, String contentType) {
        if (path == null || path.startsWith("/v1/")) {
            return contentType != null && (contentType.startsWith("text/html") || contentType.startsWith("image/svg"))
                    ? OWN_LOOKS
                    : NOTHING;
        }
        if (path.startsWith("/q/swagger-ui")) {
            return CONTRACT_FORM;
        }
        return PAGE_PATH.matcher(path).matches() ? PAGE : NOTHING;
    }

    /** A table stays true until the next release and is asked for again by its entity tag; the rest is nobody's to keep. */
    private static String caching(RoutingContext context, int status) {
        boolean kept = context.request().method().equals(HttpMethod.GET) && (status == 200 || status == 304);
        return kept ? "private, no-cache" : "no-store";
    }
}

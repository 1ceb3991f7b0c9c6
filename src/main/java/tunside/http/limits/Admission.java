package tunside.http.limits;

import io.quarkus.vertx.http.runtime.filters.Filters;
import io.vertx.core.buffer.Buffer;
import io.vertx.core.http.HttpMethod;
import io.vertx.core.http.HttpServerRequest;
import io.vertx.ext.web.RoutingContext;
import io.vertx.ext.web.impl.RoutingContextInternal;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import jakarta.inject.Singleton;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicLong;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import tunside.http.json.BodyReader;
import tunside.http.ndjson.NdjsonRoutes;
import tunside.http.problem.EarlyRefusal;
import tunside.http.problem.Problem;
import tunside.http.problem.Problems;

/**
 * Awaits the whole of a question and then bounds the queue before the workers: an address that has enough questions waiting
 * for their answers refuses more with 503, so that those it took are answered soon and the other addresses are not held up. A
 * slow client takes neither a worker nor a place in the queue, and what all have sent so far is bounded too.
 */
@Singleton
public final class Admission {
    /** After the keys. */
    private static final int AFTER_KEYS = 200;

    /** All bodies together, bytes. */
    private static final long MOST_HELD = 8L * 1024 * 1024;

    private final int mostWaiting;
    private final EarlyRefusal refusal;
    private final Map<String, Integer> waiting = new ConcurrentHashMap<>();
    private final AtomicLong held = new AtomicLong();

    @Inject
    Admission(@ConfigProperty(name = "tunside.limits.in-flight") int mostWaiting, EarlyRefusal refusal) {
        this.mostWaiting = mostWaiting;
        this.refusal = refusal;
    }

    void install(@Observes Filters filters) {
        filters.register(this::await, AFTER_KEYS);
    }

    private void await(RoutingContext context) {
        HttpServerRequest request = context.request();
        boolean question = request.method().equals(HttpMethod.POST)
                && context.normalizedPath().startsWith("/v1/")
                && !NdjsonRoutes.isNdjson(request);
        if (question) {
            new Question(context).await();
        } else {
            context.next();
        }
    }

    /** One question on its way in; everything happens on its connection's event loop. */
    private final class Question {
        private final RoutingContext context;
        private final String address;
        private final Buffer body = Buffer.buffer();
        private boolean waits;
        private boolean over;

        Question(RoutingContext context) {
            this.context = context;
            this.address = context.normalizedPath();
        }

        void await() {
            HttpServerRequest request = context.request();
            if (request.getHeader("Expect") != null) {
                request.response().writeContinue();
            }
            context.addEndHandler(ended -> leave());
            request.handler(this::add);
            request.endHandler(arrived -> enter());
            request.resume();
        }

        private void add(Buffer piece) {
            if (over) {
                return;
            }
            if (body.length() + piece.length() > BodyReader.LARGEST_BODY) {
                refuse(Problems.status(413));
            } else if (held.addAndGet(piece.length()) > MOST_HELD) {
                held.addAndGet(-piece.length());
                refuse(Problems.status(503));
            } else {
                body.appendBuffer(piece);
            }
        }

        private void enter() {
            if (over) {
                return;
            }
            if (waiting.merge(address, 1, Integer::sum) > mostWaiting) {
                free();
                refuse(Problems.status(503));
                return;
            }
            waits = true;
            ((RoutingContextInternal) context).setBody(body);
            context.next();
        }

        private void refuse(Problem problem) {
            leave();
            refusal.answer(context, problem);
        }

        private void leave() {
            if (!over) {
                over = true;
                held.addAndGet(-body.length());
                if (waits) {
                    free();
                }
            }
        }

        private void free() {
            waiting.computeIfPresent(address, (key, number) -> number > 1 ? number - 1 : null);
        }
    }
}

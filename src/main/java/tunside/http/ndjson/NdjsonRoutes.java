package tunside.http.ndjson;

import com.fasterxml.jackson.databind.ObjectMapper;
import io.vertx.core.Vertx;
import io.vertx.core.WorkerExecutor;
import io.vertx.core.http.HttpServerRequest;
import io.vertx.ext.web.MIMEHeader;
import io.vertx.ext.web.Router;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.event.Observes;
import jakarta.enterprise.inject.Any;
import jakarta.enterprise.inject.spi.Bean;
import jakarta.enterprise.inject.spi.BeanManager;
import jakarta.enterprise.inject.spi.CDI;
import jakarta.inject.Inject;
import jakarta.inject.Singleton;
import jakarta.ws.rs.Path;
import java.util.concurrent.atomic.AtomicInteger;
import tunside.http.json.BodyReader;
import tunside.http.problem.EarlyRefusal;
import tunside.http.problem.Problems;
import tunside.http.watch.AnswerCounts;

/** Takes {@code application/x-ndjson} on every address that takes a JSON question. */
@Singleton
public final class NdjsonRoutes {
    /** Media type of a body with one JSON document a line. */
    public static final String MEDIA_TYPE = "application/x-ndjson";

    /** Most bodies answered at the same time; each holds a megabyte at most. */
    static final int MOST_STREAMS = 32;

    private final BodyReader reader;
    private final ObjectMapper mapper;
    private final WorkerExecutor workers;
    private final EarlyRefusal refusal;
    private final AnswerCounts counts;
    private final AtomicInteger streams = new AtomicInteger();

    @Inject
    public NdjsonRoutes(
            BodyReader reader, ObjectMapper mapper, Vertx vertx, EarlyRefusal refusal, AnswerCounts counts) {
        this.refusal = refusal;
        this.counts = counts;
        this.reader = reader;
        this.mapper = mapper;
        this.workers =
                vertx.createSharedWorkerExecutor("ndjson", Runtime.getRuntime().availableProcessors());
    }

    /** Bodies being answered now. */
    int openStreams() {
        return streams.get();
    }

    /** Whether a request has a body of lines. */
    public static boolean isNdjson(HttpServerRequest request) {
        String type = request.getHeader("Content-Type");
        return type != null && type.split(";", 2)[0].strip().equalsIgnoreCase(MEDIA_TYPE);
    }

    void install(@Observes Router router, BeanManager beans) {
        for (Bean<?> bean : beans.getBeans(Object.class, Any.Literal.INSTANCE)) {
            Class<?> resource = bean.getBeanClass();
            if (resource.isAnnotationPresent(Path.class)) {
                Computation.of(resource, () -> CDI.current().select(resource).get())
                        .forEach(computation -> install(router, computation));
            }
        }
    }

    private void install(Router router, Computation computation) {
        router.post(computation.path()).consumes(MEDIA_TYPE).handler(context -> answer(context, computation));
    }

    private void answer(RoutingContext context, Computation computation) {
        HttpServerRequest request = context.request();
        if (!accepts(context)) {
            refusal.answer(context, Problems.status(406));
        } else if (streams.incrementAndGet() > MOST_STREAMS) {
            streams.decrementAndGet();
            refusal.answer(context, Problems.status(503));
        } else {
            if (request.getHeader("Expect") != null) {
                request.response().writeContinue();
            }
            LineAnswers answers = new LineAnswers(computation, reader, mapper, counts);
            new AnswerStream(request, answers, workers, streams::decrementAndGet).start();
        }
    }

    private static boolean accepts(RoutingContext context) {
        var wanted = context.parsedHeaders().accept();
        return wanted.isEmpty()
                || wanted.stream()
                        .map(MIMEHeader::rawValue)
                        .map(value -> value.split(";", 2)[0].strip())
                        .anyMatch(
                                type -> type.equals("*/*") || type.equals("application/*") || type.equals(MEDIA_TYPE));
    }
}

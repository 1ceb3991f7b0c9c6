package tunside.http.limits;

import io.smallrye.mutiny.infrastructure.Infrastructure;
import io.vertx.core.Context;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionStage;
import java.util.function.Supplier;

/** Chooses the thread that computes an answer where that depends on the question. */
public final class Workers {
    private Workers() {}

    /**
     * An answer, computed at once, or by a worker where that would hold up the other connections of an event loop.
     *
     * @param brief whether it takes less than about half a millisecond
     */
    public static <T> CompletionStage<T> answer(boolean brief, Supplier<T> computation) {
        return brief || !Context.isOnEventLoopThread()
                ? CompletableFuture.completedFuture(computation.get())
                : CompletableFuture.supplyAsync(computation, Infrastructure.getDefaultWorkerPool());
    }
}

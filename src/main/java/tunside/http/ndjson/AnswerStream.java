package tunside.http.ndjson;

import io.vertx.core.AsyncResult;
import io.vertx.core.WorkerExecutor;
import io.vertx.core.buffer.Buffer;
import io.vertx.core.http.HttpServerRequest;
import io.vertx.core.http.HttpServerResponse;

/**
 * One body of many lines on its connection. At any time it does one thing: wait for the client to send, compute a few
 * answers on a worker, or wait for the client to read. So it holds one line, one piece of the body and a few answers, and
 * a worker only while it computes. Everything but the computing runs on the connection's event loop.
 */
final class AnswerStream {
    private final HttpServerRequest request;
    private final HttpServerResponse response;
    private final LineAnswers answers;
    private final WorkerExecutor workers;
    private final Runnable afterwards;
    private boolean over;
    private long discarded;

    AnswerStream(HttpServerRequest request, LineAnswers answers, WorkerExecutor workers, Runnable afterwards) {
        this.request = request;
        this.response = request.response();
        this.answers = answers;
        this.workers = workers;
        this.afterwards = afterwards;
    }

    void start() {
        request.pause();
        request.exceptionHandler(e -> finish());
        response.exceptionHandler(e -> finish());
        response.closeHandler(closed -> finish());
        request.handler(piece -> {
            if (over) {
                discard(piece);
            } else {
                answers.add(piece.getBytes());
                compute();
            }
        });
        request.endHandler(ended -> {
            if (!over) {
                answers.end();
                compute();
            }
        });
        response.setChunked(true).putHeader("Content-Type", NdjsonRoutes.MEDIA_TYPE);
        request.fetch(1);
    }

    private void compute() {
        workers.executeBlocking(answers::next, false).onComplete(this::send);
    }

    private void send(AsyncResult<byte[]> computed) {
        if (over) {
            return;
        }
        if (computed.failed()) {
            finish();
            request.connection().close();
            return;
        }
        byte[] lines = computed.result();
        if (lines.length > 0) {
            response.write(Buffer.buffer(lines));
        }
        if (answers.isFinished()) {
            finish();
            response.end();
            request.resume();
        } else if (lines.length == 0) {
            request.fetch(1);
        } else if (response.writeQueueFull()) {
            response.drainHandler(drained -> {
                response.drainHandler(null); // it is called at every draining from now on
                compute();
            });
        } else {
            compute();
        }
    }

    /** A client that is still sending gets to read the last answer: closing at once could take it away again. */
    private void discard(Buffer piece) {
        discarded += piece.length();
        if (discarded > LineAnswers.LARGEST_BODY) {
            request.connection().close();
        }
    }

    private void finish() {
        if (!over) {
            over = true;
            afterwards.run();
        }
    }
}

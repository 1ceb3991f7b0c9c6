package tunside.http.json;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.QuarkusTestProfile;
import io.quarkus.test.junit.TestProfile;
import io.smallrye.mutiny.infrastructure.Infrastructure;
import java.io.IOException;
import java.io.InputStream;
import java.net.Socket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.Test;
import tunside.chemistry.Solver;

/** One worker, so that a question waits while a test holds it; one connection, so that a second is taken once the first is gone. */
@QuarkusTest
@TestProfile(HungUpCallerTest.OneOfEach.class)
class HungUpCallerTest {
    /** Read to its end: hanging up on something unread would make the connection drop what is still on its way. */
    private static final String CONTINUE = "HTTP/1.1 100 Continue\r\n\r\n";

    private static final int MOST_TRIES = 3000;
    private static final String TABLE = "GET /v1/sources HTTP/1.1\r\nHost: localhost\r\n\r\n";

    @TestHTTPResource("/")
    URI service;

    public static final class OneOfEach implements QuarkusTestProfile {
        @Override
        public Map<String, String> getConfigOverrides() {
            return Map.of("quarkus.thread-pool.max-threads", "1", "quarkus.http.limits.max-connections", "1");
        }
    }

    @Test
    void aQuestionWhoseCallerHungUpInTheQueueIsNotComputed() throws Exception {
        long before = Solver.PLAN.solves();
        assertThat(asked(planMash(""))).isTrue();
        long ofOne = Solver.PLAN.solves() - before;
        assertThat(ofOne).isPositive();

        CountDownLatch held = new CountDownLatch(1);
        CountDownLatch release = new CountDownLatch(1);
        Infrastructure.getDefaultWorkerPool().execute(() -> {
            held.countDown();
            try {
                release.await();
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
        });
        held.await();
        hangUp();
        assertThat(asked(TABLE))
                .as("the service has seen that the caller is gone")
                .isTrue();
        assertThat(Solver.PLAN.solves()).as("while the worker is held").isEqualTo(before + ofOne);
        release.countDown();
        assertThat(asked(planMash(""))).as("the next in the queue").isTrue();
        assertThat(Solver.PLAN.solves()).isEqualTo(before + 2 * ofOne);
    }

    /** Sends a whole question and does not wait for its answer. */
    private void hangUp() throws IOException, InterruptedException {
        String[] headAndBody = planMash("Expect: 100-continue\r\n").split("(?<=\r\n\r\n)", 2);
        for (int i = 0; i < MOST_TRIES; i++) {
            try (Socket caller = new Socket("localhost", service.getPort())) {
                caller.getOutputStream().write(headAndBody[0].getBytes(StandardCharsets.UTF_8));
                byte[] answered = caller.getInputStream().readNBytes(CONTINUE.length());
                if (answered.length > 0) {
                    assertThat(answered).asString().isEqualTo(CONTINUE);
                    caller.getOutputStream().write(headAndBody[1].getBytes(StandardCharsets.UTF_8));
                    return;
                }
            } catch (IOException refused) {
                // the connection before is not gone yet
            }
            Thread.sleep(10);
        }
        throw new IOException("the service takes no connection");
    }

    /** Whether there is an answer; asks again as long as the connection is refused. */
    private boolean asked(String request) throws InterruptedException {
        for (int i = 0; i < MOST_TRIES; i++) {
            try (Socket socket = new Socket("localhost", service.getPort())) {
                socket.getOutputStream().write(request.getBytes(StandardCharsets.UTF_8));
                byte[] status = socket.getInputStream().readNBytes(12);
                if (status.length > 0) {
                    return new String(status, StandardCharsets.US_ASCII).equals("HTTP/1.1 200");
                }
            } catch (IOException refused) {
                // the connection before is not gone yet
            }
            Thread.sleep(10);
        }
        return false;
    }

    private static String planMash(String header) throws IOException {
        try (InputStream in = HungUpCallerTest.class.getResourceAsStream("/examples/planMash.json")) {
            String body = new ObjectMapper()
                    .readTree(in)
                    .elements()
                    .next()
                    .get("request")
                    .toString();
            return "POST /v1/mash-plans HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\n" + header
                    + "Content-Length: " + body.getBytes(StandardCharsets.UTF_8).length + "\r\n\r\n" + body;
        }
    }
}

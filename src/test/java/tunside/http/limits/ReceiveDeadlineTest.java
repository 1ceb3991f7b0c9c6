package tunside.http.limits;

import static org.assertj.core.api.Assertions.assertThat;

import io.netty.buffer.Unpooled;
import io.netty.channel.embedded.EmbeddedChannel;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;

class ReceiveDeadlineTest {
    private final AtomicLong now = new AtomicLong();
    private final EmbeddedChannel connection = new EmbeddedChannel(new ReceiveDeadline(now::get));

    private void receiveAfter(int seconds) {
        now.addAndGet(TimeUnit.SECONDS.toNanos(seconds));
        connection.writeInbound(Unpooled.copyInt('x'));
    }

    @Test
    void a_request_that_trickles_in_is_cut_off_when_its_time_is_up() {
        for (int second = 0; second <= ReceiveDeadline.LONGEST_SECONDS; second++) {
            receiveAfter(1);
            assertThat(connection.isOpen()).as("after %d s", second).isTrue();
        }
        receiveAfter(1);
        assertThat(connection.isOpen()).isFalse();
    }

    @Test
    void each_answer_gives_the_connection_new_time() {
        for (int request = 0; request < 5; request++) {
            receiveAfter(ReceiveDeadline.LONGEST_SECONDS - 1);
            connection.writeOutbound(Unpooled.copyInt('y'));
        }
        assertThat(connection.isOpen()).isTrue();
    }

    @Test
    void a_connection_that_rests_between_requests_may_rest() {
        receiveAfter(1);
        connection.writeOutbound(Unpooled.copyInt('y'));
        receiveAfter(10 * ReceiveDeadline.LONGEST_SECONDS);
        assertThat(connection.isOpen()).isTrue();
    }
}

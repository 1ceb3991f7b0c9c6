package tunside.http.limits;

import io.netty.channel.ChannelDuplexHandler;
import io.netty.channel.ChannelHandlerContext;
import io.netty.channel.ChannelPromise;
import io.netty.util.ReferenceCountUtil;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;

/**
 * Cuts off a client that is still sending a request after its time is up. The server's idle timeout does not: each byte winds
 * it up again. Time runs from the first byte after the connection's start or its last answer, so a long stream of questions,
 * which is answered while it is sent, goes on.
 */
final class ReceiveDeadline extends ChannelDuplexHandler {
    /** Longest time for one request, seconds; 256 KiB in it is a line of 140 kbit/s. */
    static final int LONGEST_SECONDS = 15;

    private static final long LONGEST = TimeUnit.SECONDS.toNanos(LONGEST_SECONDS);

    private final LongSupplier nanoTime;
    private long since;
    private boolean receiving;

    ReceiveDeadline(LongSupplier nanoTime) {
        this.nanoTime = nanoTime;
    }

    @Override
    public void channelRead(ChannelHandlerContext context, Object bytes) {
        long now = nanoTime.getAsLong();
        if (!receiving) {
            receiving = true;
            since = now;
        } else if (now - since > LONGEST) {
            ReferenceCountUtil.release(bytes);
            var unused = context.close();
            return;
        }
        context.fireChannelRead(bytes);
    }

    @Override
    public void write(ChannelHandlerContext context, Object bytes, ChannelPromise promise) {
        receiving = false;
        var unused = context.write(bytes, promise); // the promise tells how it ended
    }
}

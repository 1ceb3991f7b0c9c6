package tunside.http.limits;

import io.netty.bootstrap.ServerBootstrap;
import io.netty.channel.Channel;
import io.netty.channel.ChannelFactory;
import io.netty.channel.ChannelHandler.Sharable;
import io.netty.channel.ChannelHandlerContext;
import io.netty.channel.ChannelInboundHandlerAdapter;
import io.netty.channel.EventLoopGroup;
import io.netty.channel.ServerChannel;
import io.netty.channel.socket.DatagramChannel;
import io.netty.channel.socket.InternetProtocolFamily;
import io.vertx.core.datagram.DatagramSocketOptions;
import io.vertx.core.impl.VertxBuilder;
import io.vertx.core.net.ClientOptionsBase;
import io.vertx.core.net.NetServerOptions;
import io.vertx.core.net.SocketAddress;
import io.vertx.core.spi.VertxServiceProvider;
import io.vertx.core.spi.transport.Transport;
import java.util.concurrent.ThreadFactory;

/**
 * Puts a {@link ReceiveDeadline} on every connection as it is accepted. The server below has no other place for it: it shows a
 * connection only once a whole head of a request has arrived. Found by the service loader.
 */
public final class DeadlineTransport implements VertxServiceProvider {
    @Override
    public void init(VertxBuilder builder) {
        builder.findTransport(new Guarded(builder.findTransport()));
    }

    @Sharable
    private static final class OnAccept extends ChannelInboundHandlerAdapter {
        @Override
        public void channelRead(ChannelHandlerContext context, Object accepted) {
            ((Channel) accepted).pipeline().addFirst(new ReceiveDeadline(System::nanoTime));
            context.fireChannelRead(accepted);
        }
    }

    /** The transport as it was, but for the servers that it sets up. */
    private record Guarded(Transport transport) implements Transport {
        @Override
        public void configure(NetServerOptions options, boolean domainSocket, ServerBootstrap bootstrap) {
            transport.configure(options, domainSocket, bootstrap);
            bootstrap.handler(new OnAccept());
        }

        @Override
        public boolean supportsDomainSockets() {
            return transport.supportsDomainSockets();
        }

        @Override
        public boolean supportFileRegion() {
            return transport.supportFileRegion();
        }

        @Override
        public boolean isAvailable() {
            return transport.isAvailable();
        }

        @Override
        public Throwable unavailabilityCause() {
            return transport.unavailabilityCause();
        }

        @Override
        public java.net.SocketAddress convert(SocketAddress address) {
            return transport.convert(address);
        }

        @Override
        public SocketAddress convert(java.net.SocketAddress address) {
            return transport.convert(address);
        }

        @Override
        public EventLoopGroup eventLoopGroup(int type, int threads, ThreadFactory factory, int ioRatio) {
            return transport.eventLoopGroup(type, threads, factory, ioRatio);
        }

        @Override
        public DatagramChannel datagramChannel() {
            return transport.datagramChannel();
        }

        @Override
        public DatagramChannel datagramChannel(InternetProtocolFamily family) {
            return transport.datagramChannel(family);
        }

        @Override
        public ChannelFactory<? extends Channel> channelFactory(boolean domainSocket) {
            return transport.channelFactory(domainSocket);
        }

        @Override
        public ChannelFactory<? extends ServerChannel> serverChannelFactory(boolean domainSocket) {
            return transport.serverChannelFactory(domainSocket);
        }

        @Override
        public void configure(DatagramChannel channel, DatagramSocketOptions options) {
            transport.configure(channel, options);
        }

        @Override
        public void configure(ClientOptionsBase options, boolean domainSocket, io.netty.bootstrap.Bootstrap bootstrap) {
            transport.configure(options, domainSocket, bootstrap);
        }
    }
}

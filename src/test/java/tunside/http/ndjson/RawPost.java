package tunside.http.ndjson;

import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.atomic.AtomicLong;

/** A POST of unstated length on a socket of its own: sends and reads apart, as slowly as a test likes. */
final class RawPost implements AutoCloseable {
    private final Socket socket;
    private final OutputStream out;
    private final InputStream in;
    private final AtomicLong sent = new AtomicLong();
    private int leftInChunk;

    RawPost(int port, String path) throws IOException {
        socket = new Socket();
        socket.setReceiveBufferSize(64 * 1024);
        socket.setSendBufferSize(64 * 1024);
        socket.setSoTimeout(60_000);
        socket.connect(new InetSocketAddress("localhost", port));
        out = socket.getOutputStream();
        in = new BufferedInputStream(socket.getInputStream());
        out.write(("POST " + path + " HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/x-ndjson\r\n"
                        + "Transfer-Encoding: chunked\r\n\r\n")
                .getBytes(StandardCharsets.US_ASCII));
    }

    /** Bytes of the body that the connection has taken. */
    long sent() {
        return sent.get();
    }

    void send(byte[] piece) throws IOException {
        ByteArrayOutputStream chunk = new ByteArrayOutputStream();
        chunk.writeBytes((Integer.toHexString(piece.length) + "\r\n").getBytes(StandardCharsets.US_ASCII));
        chunk.writeBytes(piece);
        chunk.writeBytes("\r\n".getBytes(StandardCharsets.US_ASCII));
        out.write(chunk.toByteArray());
        sent.addAndGet(piece.length);
    }

    /** Sends a piece many times on a thread of its own, then the end of the body. */
    Thread sendAll(byte[] piece, int times) {
        Thread sender = new Thread(() -> {
            try {
                for (int i = 0; i < times; i++) {
                    send(piece);
                }
                end();
            } catch (IOException e) {
                // the test has closed the connection, or the service has
            }
        });
        sender.start();
        return sender;
    }

    void end() throws IOException {
        out.write("0\r\n\r\n".getBytes(StandardCharsets.US_ASCII));
    }

    /** Status line and headers. */
    String head() throws IOException {
        StringBuilder head = new StringBuilder();
        for (String line = headLine(); !line.isEmpty(); line = headLine()) {
            head.append(line).append('\n');
        }
        return head.toString();
    }

    /** The next line of the answer; null at its end. */
    String line() throws IOException {
        ByteArrayOutputStream line = new ByteArrayOutputStream();
        for (int next = next(); next >= 0; next = next()) {
            if (next == '\n') {
                return line.toString(StandardCharsets.UTF_8);
            }
            line.write(next);
        }
        return null;
    }

    private int next() throws IOException {
        if (leftInChunk == 0) {
            leftInChunk = Integer.parseInt(headLine(), 16);
            if (leftInChunk == 0) {
                headLine();
                leftInChunk = -1;
            }
        }
        if (leftInChunk < 0) {
            return -1;
        }
        int next = in.read();
        if (--leftInChunk == 0) {
            headLine();
        }
        return next;
    }

    private String headLine() throws IOException {
        StringBuilder line = new StringBuilder();
        for (int next = in.read(); next != '\n'; next = in.read()) {
            if (next < 0) {
                throw new IOException("the connection ended");
            }
            if (next != '\r') {
                line.append((char) next);
            }
        }
        return line.toString();
    }

    @Override
    public void close() throws IOException {
        socket.close();
    }
}

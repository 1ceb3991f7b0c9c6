package tunside.http.ndjson;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class LineBufferTest {
    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private static String text(byte[] bytes) {
        return bytes == null ? null : new String(bytes, StandardCharsets.UTF_8);
    }

    @Test
    void aLineIsThereOnceItsLineFeedIs() {
        LineBuffer buffer = new LineBuffer();
        buffer.add(bytes("ab"));
        assertThat(buffer.next()).isNull();
        buffer.add(bytes("c\n\nd"));
        assertThat(text(buffer.next())).isEqualTo("abc");
        assertThat(text(buffer.next())).isEmpty();
        assertThat(buffer.next()).isNull();
        assertThat(buffer.length()).isEqualTo(1);
        assertThat(text(buffer.rest())).isEqualTo("d");
        assertThat(buffer.length()).isZero();
        assertThat(buffer.next()).isNull();
    }

    @Test
    void linesAreTheSameHoweverTheBodyIsCut() {
        for (long seed = 0; seed < 200; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            List<String> lines = new ArrayList<>();
            for (int i = 0; i < 50; i++) {
                lines.add("x".repeat(random.nextInt(0, 200)) + i);
            }
            byte[] body = bytes(String.join("\n", lines));
            LineBuffer buffer = new LineBuffer();
            List<String> read = new ArrayList<>();
            int at = 0;
            while (at < body.length) {
                int piece = Math.min(body.length - at, random.nextInt(1, 300));
                buffer.add(java.util.Arrays.copyOfRange(body, at, at + piece));
                at += piece;
                for (byte[] line = buffer.next(); line != null; line = buffer.next()) {
                    read.add(text(line));
                }
            }
            read.add(text(buffer.rest()));
            assertThat(read).isEqualTo(lines);
        }
    }
}

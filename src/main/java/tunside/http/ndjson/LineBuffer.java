package tunside.http.ndjson;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/** Bytes that have arrived and were not read as lines yet. */
final class LineBuffer {
    private static final byte NEW_LINE = '\n';

    private byte[] bytes = new byte[1024];
    private int start;
    private int searched;
    private int end;

    /** More of the body. Room is doubled, so that a line in many small pieces costs no more than in a few large ones. */
    void add(byte[] more) {
        if (end + more.length > bytes.length) {
            int needed = length() + more.length;
            byte[] room = 2 * needed > bytes.length ? new byte[2 * needed] : bytes;
            System.arraycopy(bytes, start, room, 0, length());
            searched -= start;
            end -= start;
            start = 0;
            bytes = room;
        }
        System.arraycopy(more, 0, bytes, end, more.length);
        end += more.length;
    }

    /** Bytes held. */
    int length() {
        return end - start;
    }

    /** The next line that ended with a line feed, without it; null where there is none yet. */
    byte @Nullable [] next() {
        while (searched < end) {
            if (bytes[searched++] == NEW_LINE) {
                byte[] line = Arrays.copyOfRange(bytes, start, searched - 1);
                start = searched;
                return line;
            }
        }
        return null;
    }

    /** What is left when the body has ended: its last line where that has no line feed. */
    byte[] rest() {
        byte[] rest = Arrays.copyOfRange(bytes, start, end);
        start = end;
        searched = end;
        return rest;
    }
}

package tunside.http.json;

import com.fasterxml.jackson.core.SerializableString;
import com.fasterxml.jackson.core.io.CharacterEscapes;
import org.jspecify.annotations.Nullable;

/**
 * Writes the characters that open and close markup by their number. A text that the caller sent and a fault quotes can then
 * not become markup, even where somebody pastes an answer into a page unread.
 */
final class MarkupEscapes extends CharacterEscapes {
    private static final long serialVersionUID = 1;

    private static final int[] ESCAPES = standardAsciiEscapesForJSON();

    static {
        ESCAPES['<'] = ESCAPE_STANDARD;
        ESCAPES['>'] = ESCAPE_STANDARD;
    }

    @Override
    public int[] getEscapeCodesForAscii() {
        return ESCAPES;
    }

    @Override
    public @Nullable SerializableString getEscapeSequence(int character) {
        return null;
    }
}

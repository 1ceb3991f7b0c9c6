package tunside.http.json;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.databind.DeserializationContext;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import tunside.http.problem.Fault;

/** The faults found while one body is read. It travels as an attribute of the reading. */
final class BodyFaults {
    static final Object ATTRIBUTE = BodyFaults.class;
    private static final int LONGEST_SHOWN = 60;
    private static final int MOST = 200;

    private final List<Fault> faults = new ArrayList<>();
    private boolean doubted;

    static BodyFaults of(DeserializationContext context) {
        return (BodyFaults) context.getAttribute(ATTRIBUTE);
    }

    void add(JsonParser parser, String detail) {
        add(parser.getParsingContext().pathAsPointer().toString(), detail);
    }

    void add(String pointer, String detail) {
        if (faults.size() < MOST) {
            faults.add(new Fault(pointer, detail));
        }
    }

    /** Notes that something read may break a constraint. */
    void doubt() {
        doubted = true;
    }

    /** Whether nothing was found, and nothing can break a constraint. */
    boolean areNone() {
        return faults.isEmpty() && !doubted;
    }

    boolean has(String pointer) {
        return faults.stream().anyMatch(fault -> fault.pointer().equals(pointer));
    }

    List<Fault> all() {
        return faults;
    }

    /** The value at the parser as a sentence quotes it. */
    static String shown(JsonParser parser) throws IOException {
        JsonToken token = parser.currentToken();
        return switch (token) {
            case START_OBJECT -> "an object";
            case START_ARRAY -> "an array";
            case VALUE_STRING -> "the text \"" + shortened(parser.getText()) + "\"";
            default -> shortened(parser.getText());
        };
    }

    static String shortened(String text) {
        return text.length() <= LONGEST_SHOWN ? text : text.substring(0, LONGEST_SHOWN) + "...";
    }
}

package tunside.http.answer;

import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * The words of a check, taken apart once.
 *
 * @param pieces of the message, between which the placeholders stand
 * @param placeholders one less than pieces
 * @param source of what is checked
 */
record Wording(List<String> pieces, List<String> placeholders, String source) {
    private static final Pattern PLACEHOLDER = Pattern.compile("\\{(observed|expected|subject)\\}");

    static Wording of(String message, String source) {
        return new Wording(
                List.of(PLACEHOLDER.split(message, -1)),
                PLACEHOLDER.matcher(message).results().map(MatchResult::group).toList(),
                source);
    }

    /** The message with its numbers and its subject. */
    String message(@Nullable Double observed, @Nullable Double expected, String subject) {
        if (placeholders.isEmpty()) {
            return pieces.get(0);
        }
        String[] parts = new String[pieces.size() + placeholders.size()];
        parts[0] = pieces.get(0);
        for (int place = 0; place < placeholders.size(); place++) {
            parts[2 * place + 1] = switch (placeholders.get(place)) {
                case "{observed}" -> text(observed);
                case "{expected}" -> text(expected);
                default -> subject;
            };
            parts[2 * place + 2] = pieces.get(place + 1);
        }
        return String.join("", parts);
    }

    private static String text(@Nullable Double number) {
        return number == null ? "" : Rounded.text(number);
    }
}

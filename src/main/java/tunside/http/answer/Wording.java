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
 * @param length of a usual message, characters
 * @param source of what is checked
 */
record Wording(List<String> pieces, List<String> placeholders, int length, String source) {
    private static final int USUAL_WORD = 12;

    private static final Pattern PLACEHOLDER = Pattern.compile("\\{(observed|expected|subject)\\}");

    static Wording of(String message, String source) {
        List<String> pieces = List.of(PLACEHOLDER.split(message, -1));
        int words = pieces.stream().mapToInt(String::length).sum() + USUAL_WORD * (pieces.size() - 1);
        return new Wording(
                pieces,
                PLACEHOLDER.matcher(message).results().map(MatchResult::group).toList(),
                words,
                source);
    }

    /** The message with its numbers and its subject. */
    String message(@Nullable Double observed, @Nullable Double expected, String subject) {
        if (placeholders.isEmpty()) {
            return pieces.get(0);
        }
        StringBuilder message = new StringBuilder(length).append(pieces.get(0));
        for (int place = 0; place < placeholders.size(); place++) {
            String words = switch (placeholders.get(place)) {
                case "{observed}" -> text(observed);
                case "{expected}" -> text(expected);
                default -> subject;
            };
            message.append(words).append(pieces.get(place + 1));
        }
        return message.toString();
    }

    private static String text(@Nullable Double number) {
        return number == null ? "" : Rounded.text(number);
    }
}

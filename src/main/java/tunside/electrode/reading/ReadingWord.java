package tunside.electrode.reading;

import java.util.LinkedHashMap;
import java.util.Map;
import tunside.reference.Row;
import tunside.reference.Table;

/**
 * A sentence about a reading, from {@code reading-words.csv}.
 *
 * @param topic assumption or compensation
 * @param key within the topic
 * @param message the sentence
 * @param source id of its source
 */
public record ReadingWord(String topic, String key, String message, String source) {
    private static final Map<String, ReadingWord> ALL = load();

    static ReadingWord of(String topic, String key) {
        ReadingWord word = ALL.get(topic + " " + key);
        if (word == null) {
            throw new IllegalStateException("reading-words.csv has no %s %s".formatted(topic, key));
        }
        return word;
    }

    private static Map<String, ReadingWord> load() {
        Map<String, ReadingWord> words = new LinkedHashMap<>();
        for (Row row : Table.read("reading-words.csv").rows()) {
            ReadingWord word = new ReadingWord(row.text("topic"), row.text("key"), row.text("message"), row.source());
            if (words.put(word.topic + " " + word.key, word) != null) {
                throw row.fault("%s '%s' stands twice".formatted(word.topic, word.key));
            }
        }
        return words;
    }
}

package tunside.http.mash;

import java.util.LinkedHashMap;
import java.util.Map;
import tunside.reference.Row;
import tunside.reference.Table;

/** Words for the inputs of a prediction, from {@code mash-inputs.csv}. */
record InputWords(String meaning, String advice) {
    private static final Map<String, InputWords> ALL = load();

    static InputWords of(String input) {
        InputWords words = ALL.get(input);
        if (words == null) {
            throw new IllegalStateException("mash-inputs.csv has no words for '%s'".formatted(input));
        }
        return words;
    }

    private static Map<String, InputWords> load() {
        Map<String, InputWords> words = new LinkedHashMap<>();
        for (Row row : Table.read("mash-inputs.csv").rows()) {
            words.put(row.text("input"), new InputWords(row.text("meaning"), row.text("advice")));
        }
        return words;
    }
}

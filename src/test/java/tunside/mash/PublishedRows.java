package tunside.mash;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/** Rows of a file of published values, for figures over a whole data set. */
final class PublishedRows {
    private PublishedRows() {}

    static List<Map<String, String>> of(String file) {
        List<Map<String, String>> rows = new ArrayList<>();
        try (CsvReader<NamedCsvRecord> reader = CsvReader.builder()
                .ofNamedCsvRecord(new InputStreamReader(
                        Objects.requireNonNull(PublishedRows.class.getResourceAsStream("/published/" + file)),
                        StandardCharsets.UTF_8))) {
            reader.forEach(row -> rows.add(row.getFieldsAsMap()));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return rows;
    }
}

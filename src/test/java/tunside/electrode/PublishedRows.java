package tunside.electrode;

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

/** The rows of a file of published values. */
final class PublishedRows {
    private PublishedRows() {}

    static List<Map<String, String>> of(String file) {
        List<Map<String, String>> rows = new ArrayList<>();
        try (CsvReader<NamedCsvRecord> reader = CsvReader.builder()
                .ofNamedCsvRecord(new InputStreamReader(
                        Objects.requireNonNull(PublishedRows.class.getResourceAsStream("/published/electrode/" + file)),
                        StandardCharsets.UTF_8))) {
            reader.forEach(row -> rows.add(row.getFieldsAsMap()));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return rows;
    }

    static double[] column(String file, String column) {
        return of(file).stream()
                .mapToDouble(row -> Double.parseDouble(row.get(column)))
                .toArray();
    }
}

package tunside.reference;

import static java.util.Objects.requireNonNull;

import de.siegmar.fastcsv.reader.CommentStrategy;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A reference table.
 *
 * @param file its file name
 * @param header the {@code # key: value} lines above the columns, in order
 * @param rows at least one
 */
public record Table(String file, Map<String, String> header, List<Row> rows) {
    private static final List<String> REQUIRED_HEADER = List.of("what", "quantity", "uncertainty", "valid", "read");

    public Table {
        header = Map.copyOf(header);
        rows = List.copyOf(rows);
    }

    /**
     * Reads {@code /reference/<file>} from the class path and checks its shape: the header keys {@code what, quantity,
     * uncertainty, valid, read}, one width, a {@code source} in every row that {@link Sources} knows.
     *
     * @throws BrokenTableException with file and line
     */
    public static Table read(String file) {
        return checked(readUnsourced(file));
    }

    /** The table, if every row names a source that is known; package-private for the tests. */
    static Table checked(Table table) {
        for (Row row : table.rows) {
            if (!Sources.all().containsKey(row.source())) {
                throw row.fault("source '%s' is not in sources.csv".formatted(row.source()));
            }
        }
        return table;
    }

    /** Whether the header's {@code read} line says that values were typed from memory. */
    public boolean fromMemory() {
        return requireNonNull(header.get("read")).startsWith("from memory");
    }

    /**
     * Reads a table of one named value a row.
     *
     * @param nameColumn column of the names, each once
     * @param valueColumn column of the values
     * @param low lowest value that may stand there
     * @param high highest
     * @throws BrokenTableException with file and line
     */
    public static NamedValues readNamed(String file, String nameColumn, String valueColumn, double low, double high) {
        Map<String, Double> values = new LinkedHashMap<>();
        for (Row row : read(file).rows()) {
            if (values.put(row.text(nameColumn), row.number(valueColumn, low, high)) != null) {
                throw row.fault("'%s' stands twice".formatted(row.text(nameColumn)));
            }
        }
        return new NamedValues(file, values);
    }

    static Table readUnsourced(String file) {
        try (InputStream in = Table.class.getResourceAsStream("/reference/" + file)) {
            if (in == null) {
                throw new BrokenTableException(file, 0, "there is no such file under /reference");
            }
            return parse(file, new String(in.readAllBytes(), StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException("reading " + file, e);
        }
    }

    /** Parses a table's text; package-private for the tests. */
    static Table parse(String file, String text) {
        Map<String, String> header = new LinkedHashMap<>();
        List<Row> rows = new ArrayList<>();
        List<String> columns = null;
        long lastLine = 1;
        try (CsvReader<CsvRecord> reader =
                CsvReader.builder().commentStrategy(CommentStrategy.READ).ofCsvRecord(text)) {
            for (CsvRecord csvRecord : reader) {
                lastLine = csvRecord.getStartingLineNumber();
                List<String> fields = csvRecord.getFields();
                if (csvRecord.isComment()) {
                    String[] parts = fields.get(0).strip().split(":", 2);
                    header.put(parts[0].strip(), parts.length > 1 ? parts[1].strip() : "");
                } else if (columns == null) {
                    columns = fields;
                } else {
                    rows.add(row(file, lastLine, columns, fields));
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException("reading " + file, e);
        }
        for (String key : REQUIRED_HEADER) {
            if (header.getOrDefault(key, "").isEmpty()) {
                throw new BrokenTableException(file, 1, "the header has no line '# %s: ...'".formatted(key));
            }
        }
        if (rows.isEmpty()) {
            throw new BrokenTableException(file, lastLine, "the table has no rows");
        }
        return new Table(file, header, rows);
    }

    private static Row row(String file, long line, List<String> columns, List<String> fields) {
        if (fields.size() != columns.size()) {
            throw new BrokenTableException(
                    file, line, "has %d cells, the columns are %d".formatted(fields.size(), columns.size()));
        }
        Map<String, String> cells = new LinkedHashMap<>();
        for (int i = 0; i < columns.size(); i++) {
            cells.put(columns.get(i), fields.get(i));
        }
        return new Row(file, line, cells);
    }
}

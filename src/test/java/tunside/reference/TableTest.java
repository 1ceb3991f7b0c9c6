package tunside.reference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class TableTest {
    private static final Path REFERENCE = Path.of("src/main/resources/reference");
    private static final String HEADER = "# what: a\n# quantity: b\n# uncertainty: c\n# valid: d\n# read: e\n";

    static List<String> files() throws IOException {
        try (Stream<Path> files = Files.list(REFERENCE)) {
            return files.map(path -> path.getFileName().toString())
                    .filter(name -> name.endsWith(".csv") && !name.equals("sources.csv"))
                    .sorted()
                    .toList();
        }
    }

    @ParameterizedTest
    @MethodSource("files")
    void everyTableHasItsHeaderAndKnowsItsSources(String file) {
        assertThat(Table.read(file).rows()).isNotEmpty();
    }

    /** Values typed from memory. This list may only shrink. */
    @Test
    void tablesFromMemoryAreKnown() throws IOException {
        assertThat(files().stream().filter(file -> Table.read(file).fromMemory()))
                .containsExactlyInAnyOrder(
                        "acid-constants.csv",
                        "acid-densities.csv",
                        "acid-dilution-heats.csv",
                        "acid-dilution-warmth.csv",
                        "acid-heat-capacities.csv",
                        "acid-solids.csv",
                        "buffer-preparation.csv",
                        "buffer-shelf-life.csv",
                        "buffers-iupac.csv",
                        "buffers.csv",
                        "electrode-cause-model.csv",
                        "food-status.csv",
                        "hazard-bands.csv",
                        "hazard-statements.csv",
                        "ion-pairs.csv",
                        "drinking-water-limits.csv",
                        "salts.csv");
    }

    @Test
    void aBrokenTableNamesItsFileAndLine() {
        assertThatThrownBy(() -> Table.parse("x.csv", HEADER + "a,source\n1,DERIVED,2\n"))
                .isInstanceOf(BrokenTableException.class)
                .hasMessage("x.csv, line 7: has 3 cells, the columns are 2");
        assertThatThrownBy(() -> Table.checked(Table.parse("x.csv", HEADER + "a,source\n1,DERIVED\n2,HEARSAY\n")))
                .isInstanceOf(BrokenTableException.class)
                .hasMessage("x.csv, line 8: source 'HEARSAY' is not in sources.csv");
        assertThatThrownBy(() -> Table.checked(Table.parse("x.csv", HEADER + "a,source\n1,\n")))
                .hasMessage("x.csv, line 7: column 'source' is blank");
        assertThatThrownBy(() -> Table.checked(Table.parse("x.csv", HEADER + "a\n1\n")))
                .hasMessage("x.csv, line 7: there is no column 'source'");
        assertThatThrownBy(() -> Table.parse("x.csv", "# what: a\na,source\n1,DERIVED\n"))
                .hasMessageContaining("the header has no line '# quantity: ...'");
        assertThatThrownBy(() -> Table.parse("x.csv", HEADER + "a,source\n")).hasMessageContaining("has no rows");
        assertThatThrownBy(() -> Table.read("no-such.csv")).hasMessageContaining("there is no such file");
    }

    @Test
    void aBrokenCellNamesItsColumnAndLine() {
        Row row = Table.parse("x.csv", HEADER + "a,b,source\nNaN,,DERIVED\n")
                .rows()
                .get(0);
        assertThatThrownBy(() -> row.number("a"))
                .hasMessage("x.csv, line 7: column 'a' must be a finite number but is 'NaN'");
        assertThatThrownBy(() -> row.text("b")).hasMessage("x.csv, line 7: column 'b' is blank");
        assertThatThrownBy(() -> row.text("c")).hasMessage("x.csv, line 7: there is no column 'c'");
        assertThat(row.optionalNumber("b")).isEmpty();
        Row other =
                Table.parse("x.csv", HEADER + "a,source\n7,DERIVED\n").rows().get(0);
        assertThatThrownBy(() -> other.number("a", 0, 5)).hasMessageContaining("must be from 0.0 to 5.0 but is 7.0");
        assertThat(other.number("a", 0, 7)).isEqualTo(7);
        assertThat(other.number("a", 7, 9)).isEqualTo(7);
        assertThatThrownBy(() -> other.number("a", 8, 9)).hasMessageContaining("must be from 8.0 to 9.0 but is 7.0");
        assertThat(other.optionalNumber("a")).hasValue(7);
        assertThat(other.source()).isEqualTo("DERIVED");
        Row word = Table.parse("x.csv", HEADER + "a,source\nseven,DERIVED\n")
                .rows()
                .get(0);
        assertThatThrownBy(() -> word.number("a"))
                .hasMessage("x.csv, line 7: column 'a' must be a finite number but is 'seven'");
    }

    @Test
    void aTableOfNamesIsReadByThem() {
        NamedValues values = Table.readNamed("water-model.csv", "parameter", "value", 0, 100);
        assertThat(values.of("calcium-divisor")).as("KOLBACH-1953").isEqualTo(3.5);
        assertThatThrownBy(() -> values.of("taste")).hasMessage("water-model.csv has no 'taste'");
        assertThatThrownBy(() -> Table.readNamed("water-model.csv", "unit", "value", 0, 100))
                .isInstanceOf(BrokenTableException.class)
                .hasMessageContaining("'1' stands twice");
        assertThatThrownBy(() -> Table.readNamed("water-model.csv", "parameter", "value", 0, 3))
                .hasMessageContaining("must be from 0.0 to 3.0 but is 3.5");
    }

    @Test
    void commentsBeforeTheColumnsAreTheHeader() {
        Table table = Table.parse("x.csv", HEADER + "# a remark\na,source\n 7 ,DERIVED\n");
        assertThat(table.header()).containsEntry("quantity", "b").containsEntry("a remark", "");
        assertThat(table.rows()).singleElement().satisfies(row -> {
            assertThat(row.text("a")).isEqualTo("7");
            assertThat(row.line()).isEqualTo(8);
        });
        assertThat(table.fromMemory()).isFalse();
    }

    @Test
    void everySourceIsToldOnceWithHowItWasRead() {
        assertThat(Sources.all()).isNotEmpty().allSatisfy((id, source) -> {
            assertThat(source.id()).isEqualTo(id);
            assertThat(source.citation()).isNotBlank();
            assertThat(source.read()).isNotBlank();
        });
    }
}

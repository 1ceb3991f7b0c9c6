package tunside.http.guard;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class KeyListTest {
    /** SHA-256 of the three letters abc, as FIPS 180-4 prints it. */
    private static final String OF_ABC = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";

    /** SHA-256 of the empty text. */
    private static final String OF_NOTHING = "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855";

    @TempDir
    Path folder;

    private KeyList list(String text) throws IOException {
        return KeyList.read(Files.writeString(folder.resolve("keys"), text));
    }

    @Test
    void aKeyIsKnownByItsHash() throws IOException {
        KeyList keys =
                list("# bench\n\n" + OF_NOTHING + "\n" + OF_ABC.toUpperCase(java.util.Locale.ROOT) + "  cellar\n");
        assertThat(keys.holds("abc")).isTrue();
        assertThat(keys.holds("")).isTrue();
        assertThat(keys.holds("abd")).isFalse();
        assertThat(keys.holds(OF_ABC)).as("the hash is no key").isFalse();
    }

    @Test
    void aBrokenLineIsNamed() {
        assertThatThrownBy(() -> list("# one\nabc cellar\n")).hasMessageContaining("keys, line 2");
        assertThatThrownBy(() -> list(OF_ABC + "0 cellar\n")).hasMessageContaining("line 1");
    }

    @Test
    void aListWithoutKeysIsRefused() {
        assertThatThrownBy(() -> list("# nobody\n")).hasMessageContaining("holds no API key");
        assertThatThrownBy(() -> KeyList.read(folder.resolve("none"))).hasMessageContaining("none");
    }
}

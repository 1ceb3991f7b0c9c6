package tunside.http.guard;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;

/**
 * The keys that may ask, each as the SHA-256 of its text. The keys are long and random, so a plain hash cannot be turned
 * round; the list itself is no secret worth stealing.
 */
final class KeyList {
    private final List<byte[]> hashes;

    private KeyList(List<byte[]> hashes) {
        this.hashes = hashes;
    }

    /**
     * Reads a file with one key a line: 64 hexadecimal digits, then, after a space, whose it is. Empty lines and lines
     * that start with # say nothing.
     *
     * @throws IllegalStateException for a line that is none, or a list without keys, with the file's name
     */
    static KeyList read(Path file) {
        List<byte[]> hashes = new ArrayList<>();
        try {
            List<String> lines = Files.readAllLines(file, StandardCharsets.UTF_8);
            for (int i = 0; i < lines.size(); i++) {
                String line = lines.get(i).strip();
                if (!line.isEmpty() && !line.startsWith("#")) {
                    hashes.add(hash(line.split("\\s+", 2)[0], file, i + 1));
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException("the API keys cannot be read from " + file, e);
        }
        if (hashes.isEmpty()) {
            throw new IllegalStateException(file + " holds no API key: nobody could ask");
        }
        return new KeyList(hashes);
    }

    private static byte[] hash(String hex, Path file, int line) {
        if (!hex.matches("[0-9a-fA-F]{64}")) {
            throw new IllegalStateException(
                    "%s, line %d: a line is the SHA-256 of a key, 64 hexadecimal digits, and a name"
                            .formatted(file, line));
        }
        return HexFormat.of().parseHex(hex);
    }

    /** Whether a key is on the list; takes the same time for every key of the same length. */
    boolean holds(String key) {
        byte[] hash = sha256(key);
        boolean found = false;
        for (byte[] known : hashes) {
            found |= MessageDigest.isEqual(known, hash);
        }
        return found;
    }

    private static byte[] sha256(String key) {
        try {
            return MessageDigest.getInstance("SHA-256").digest(key.getBytes(StandardCharsets.UTF_8));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}

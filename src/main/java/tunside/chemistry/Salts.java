package tunside.chemistry;

import java.util.Map;
import java.util.Optional;

/** The salts and bases of {@code salts.csv}. */
public final class Salts {
    private Salts() {}

    /** By id, in the table's order. */
    public static Map<String, Salt> all() {
        throw new UnsupportedOperationException();
    }

    /** The salt with this id, if the service knows it. */
    public static Optional<Salt> find(String id) {
        return Optional.ofNullable(all().get(id));
    }
}

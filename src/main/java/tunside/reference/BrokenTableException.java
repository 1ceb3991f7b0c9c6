package tunside.reference;

/** A reference table cannot be used: names the file and the line. The service does not start with one. */
public final class BrokenTableException extends RuntimeException {
    private static final long serialVersionUID = 1;

    BrokenTableException(String file, long line, String fault) {
        super("%s, line %d: %s".formatted(file, line, fault));
    }
}

package tunside.quantity;

/** Something that requests and answers write with a sign of its own, such as {@code US-gal} or {@code %w/w}. */
public interface Symbol {
    /** As written in a request or an answer. */
    String symbol();
}

package tunside.electrode;

/** What a buffer's age counts from. */
public enum BufferState {
    /** A bottle or sachet of solution was opened. */
    OPENED,
    /** A powder was dissolved, without preservative. */
    MADE_UP
}

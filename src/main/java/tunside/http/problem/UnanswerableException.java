package tunside.http.problem;

/** The request is valid and the model has no answer to it. Answered with status 422. */
public final class UnanswerableException extends RuntimeException {
    private static final long serialVersionUID = 1;

    private final String pointer;

    /**
     * @param pointer to the member that stands in the way, or empty
     * @param detail what stands in the way and what to change
     */
    public UnanswerableException(String pointer, String detail) {
        super(detail, null, false, false);
        this.pointer = pointer;
    }

    public String pointer() {
        return pointer;
    }
}

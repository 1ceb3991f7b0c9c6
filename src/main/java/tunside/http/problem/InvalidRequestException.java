package tunside.http.problem;

import java.util.List;

/** The request cannot be used: carries every fault found, the first 500 of more. Answered with status 400. */
public final class InvalidRequestException extends RuntimeException {
    private static final long serialVersionUID = 1;

    private final transient List<Fault> faults;

    public InvalidRequestException(List<Fault> faults) {
        super("%d faults in the request".formatted(faults.size()), null, false, false);
        this.faults = List.copyOf(faults.subList(0, Math.min(Problem.MOST_ERRORS, faults.size())));
    }

    public List<Fault> faults() {
        return faults;
    }
}

package tunside.http.problem;

import java.util.List;
import tunside.finding.Finding;
import tunside.finding.Outcome;
import tunside.http.answer.Basis;
import tunside.http.answer.Checks;
import tunside.http.answer.Safety;

/** Makes the problems that the service answers with. */
public final class Problems {
    /** Media type of a problem. */
    public static final String MEDIA_TYPE = "application/problem+json";

    /** When to come back after a 503, seconds: what waits by then has been answered. */
    static final String RETRY_AFTER_SECONDS = "1";

    private Problems() {}

    /** A request with faults. */
    public static Problem invalid(List<Fault> faults) {
        return problem(
                400,
                "invalid-request",
                "A value in the request is missing or out of range",
                "Mend every place in 'errors' and send the request again. Nothing was computed.",
                faults);
    }

    /** A valid request that the model cannot answer. */
    public static Problem unanswerable(String pointer, String detail) {
        return problem(
                422,
                "unanswerable",
                "The request is valid but has no answer",
                detail,
                List.of(new Fault(pointer, detail)));
    }

    /** A status without faults in the body. */
    public static Problem status(int status) {
        return switch (status) {
            case 401 -> bare(401, "unauthorized", "The request has no valid API key", "Send your key.");
            case 403 -> bare(403, "forbidden", "The request is not allowed", "Ask whoever runs the service.");
            case 404 -> bare(404, "not-found", "There is nothing at this address", "GET / lists what there is.");
            case 405 ->
                bare(
                        405,
                        "method-not-allowed",
                        "The address does not take this method",
                        "Computations take POST, tables take GET.");
            case 406 ->
                bare(406, "not-acceptable", "The answer does not exist in this form", "Ask for application/json.");
            case 408 -> bare(408, "timeout", "The request took too long to arrive", "Send it again, in one go.");
            case 411 -> bare(411, "length-required", "The request does not say how long it is", "Send Content-Length.");
            case 413 -> tooLarge("The body is larger than 256 KiB");
            case 414 ->
                bare(
                        414,
                        "address-too-long",
                        "The address is longer than 2048 characters",
                        "Put the question in the body.");
            case 415 ->
                bare(
                        415,
                        "unsupported-media-type",
                        "The body is not in a form the service reads",
                        "Send application/json, or one JSON question a line as application/x-ndjson.");
            case 431 -> bare(431, "headers-too-large", "The headers are larger than 8 KiB", "Send fewer.");
            case 503 -> bare(503, "overloaded", "The service has more work than it can do", "Wait and try again.");
            default ->
                status >= 500
                        ? bare(
                                500,
                                "internal-error",
                                "The service has a fault",
                                "It has been logged. Trying again will not help.")
                        : bare(status, "refused", "The request was refused", "Look at the contract at /q/openapi.");
        };
    }

    /** A body or line beyond its limit, which the title names. */
    public static Problem tooLarge(String title) {
        return bare(413, "too-large", title, "Send less.");
    }

    private static Problem bare(int status, String type, String title, String detail) {
        return problem(status, type, title, detail, List.of());
    }

    private static Problem problem(int status, String type, String title, String detail, List<Fault> faults) {
        return new Problem(
                "/problems/" + type,
                title,
                status,
                detail,
                null,
                List.copyOf(faults),
                List.of(Checks.of(Finding.of("request.valid", Outcome.STOP, "", faults.size(), 0))),
                Safety.general(),
                Basis.of("none", List.of(), List.of()));
    }
}

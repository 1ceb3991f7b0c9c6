package tunside.review;

/**
 * Errors of predicting the first reading of each brew.
 *
 * @param before from published values alone
 * @param after from all counted brews but this one
 */
public record LeaveOneOut(ErrorSummary before, ErrorSummary after) {}

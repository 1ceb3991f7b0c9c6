package tunside.http.answer;

/**
 * A question with its answer, for those who write both in another form than JSON.
 *
 * @param question as it was read
 * @param answer to it
 */
public record Answered(Object question, Object answer) {}

/**
 * Many questions in one body: {@code Content-Type: application/x-ndjson}, one question a line, one answer a line in the
 * same order, on every address that takes a JSON question.
 *
 * <p>{@link tunside.http.ndjson.NdjsonRoutes} finds the computations by themselves: every resource method that takes a
 * POST of one JSON request. {@link tunside.http.ndjson.AnswerStream} reads no more of the body while answers wait to be
 * sent, so a stream holds one line and a few answers, however long it is and however slowly its client reads.
 */
package tunside.http.ndjson;

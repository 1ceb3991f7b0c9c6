package tunside.http.vary;

import org.jspecify.annotations.Nullable;

/**
 * One step of a varied request.
 *
 * @param value of the varied member, in the unit of the range
 * @param answer to the request with that value; null where the model has none
 */
public record Varied<A>(double value, @Nullable A answer) {}

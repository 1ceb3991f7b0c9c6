package tunside.review;

import tunside.mash.Estimate;

/**
 * A value before and after learning, in the same unit.
 *
 * @param published before
 * @param learnt after
 */
public record LearntEstimate(Estimate published, Estimate learnt) {}

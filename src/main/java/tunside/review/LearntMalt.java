package tunside.review;

import tunside.mash.MaltClass;

/**
 * What the record says about a household's lots of one malt class.
 *
 * @param maltClass which
 * @param brews counted brews with it
 * @param offset of its own pH from the class, beside the household's bias
 * @param together offset and the household's bias: what a mash of this malt shows
 */
public record LearntMalt(MaltClass maltClass, int brews, LearntEstimate offset, LearntEstimate together) {}

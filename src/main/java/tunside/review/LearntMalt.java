package tunside.review;

import java.util.Optional;
import tunside.mash.MaltClass;

/**
 * What the record says about a product of a malt class, or about what all products of the class have in common.
 *
 * @param maltClass which
 * @param product which of the class, where the record names them
 * @param brews counted brews with it
 * @param offset of its own pH from the class, beside the household's bias
 * @param together offset and the household's bias: what a mash of this malt shows
 */
public record LearntMalt(
        MaltClass maltClass, Optional<String> product, int brews, LearntEstimate offset, LearntEstimate together) {}

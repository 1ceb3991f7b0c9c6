package tunside.mash;

import java.util.OptionalDouble;

/**
 * A pH range that brewers work to.
 *
 * @param id as requests name it
 * @param liquid mash, wort, liquor or beer
 * @param meaning in words
 * @param lowPh lower end, absent where open
 * @param highPh upper end, absent where open
 * @param source id of the publication
 */
public record PhRange(
        String id, String liquid, String meaning, OptionalDouble lowPh, OptionalDouble highPh, String source) {

    /** Whether a pH lies inside, both ends included. */
    public boolean contains(double ph) {
        return ph >= lowPh.orElse(Double.NEGATIVE_INFINITY) && ph <= highPh.orElse(Double.POSITIVE_INFINITY);
    }
}

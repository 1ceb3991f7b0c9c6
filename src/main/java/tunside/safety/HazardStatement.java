package tunside.safety;

/**
 * What a code on a label means.
 *
 * @param code such as {@code H314}
 * @param precaution whether it says what to do, and not what the substance does
 * @param meaning in our own words, as the end of a sentence
 * @param source id of the publication
 */
public record HazardStatement(String code, boolean precaution, String meaning, String source) {}

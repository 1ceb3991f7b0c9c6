package tunside.safety;

/**
 * What a code on a label means.
 *
 * @param code such as {@code H314}
 * @param precaution whether it says what to do, and not what the substance does
 * @param signal the word that a label with it carries
 * @param meaning in our own words, as the end of a sentence
 * @param source id of the publication
 */
public record HazardStatement(String code, boolean precaution, SignalWord signal, String meaning, String source) {}

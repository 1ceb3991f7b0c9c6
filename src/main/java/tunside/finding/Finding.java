package tunside.finding;

import java.util.OptionalDouble;

/**
 * The result of one check of the input or of the answer.
 *
 * @param code as {@code checks-*.csv} lists it, such as {@code water.ion-balance}
 * @param outcome how it came out
 * @param pointer JSON Pointer relative to the object that the domain class was given, such as {@code /readings/1}; empty
 *     for the whole
 * @param subject a name that the message quotes, such as a malt class; may be empty
 * @param observed the value found
 * @param expected the value or limit that it was held against
 */
public record Finding(
        String code,
        Outcome outcome,
        String pointer,
        String subject,
        OptionalDouble observed,
        OptionalDouble expected) {

    /** A finding with both numbers. */
    public static Finding of(String code, Outcome outcome, String pointer, double observed, double expected) {
        return new Finding(code, outcome, pointer, "", OptionalDouble.of(observed), OptionalDouble.of(expected));
    }

    /** A finding without numbers. */
    public static Finding of(String code, Outcome outcome, String pointer) {
        return new Finding(code, outcome, pointer, "", OptionalDouble.empty(), OptionalDouble.empty());
    }

    /** The same about a named subject. */
    public Finding about(String name) {
        return new Finding(code, outcome, pointer, name, observed, expected);
    }

    /** The same at another place: for a caller that knows where in the request its object stood. */
    public Finding under(String prefix) {
        return new Finding(code, outcome, prefix + pointer, subject, observed, expected);
    }
}

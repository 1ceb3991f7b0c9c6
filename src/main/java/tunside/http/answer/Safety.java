package tunside.http.answer;

import java.util.List;

/** The domain's safety notes as answers carry them. */
public final class Safety {
    private static final List<SafetyAdvice> GENERAL = List.of(new SafetyAdvice(
            "defer.label-and-codes",
            "The label, the supplier's safety data sheet, local codes and licensed practice come before anything said here.",
            "all work",
            List.of(),
            "COMMON-PRACTICE"));

    private Safety() {}

    /** What applies whatever the caller does. */
    public static List<SafetyAdvice> general() {
        return GENERAL;
    }
}

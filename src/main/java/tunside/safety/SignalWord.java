package tunside.safety;

import java.util.Locale;

/** The word that a label carries beside its pictograms, the weakest first. */
public enum SignalWord {
    NONE,
    WARNING,
    DANGER;

    static SignalWord named(String name) {
        return name.isEmpty() ? NONE : valueOf(name.toUpperCase(Locale.ROOT));
    }
}

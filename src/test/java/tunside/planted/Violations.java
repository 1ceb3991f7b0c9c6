package tunside.planted;

import jakarta.ws.rs.core.MediaType;
import java.util.Locale;
import java.util.Random;
import tunside.chemistry.Solver;

/** Breaks every house rule once, so that {@code ArchitectureTest} can show that each rule catches it. */
public final class Violations {
    private Violations() {}

    /** A field that is not final. */
    public static final class Mutable {
        int changes;
    }

    /** An answer that nobody counts. */
    public record UntoldResponse(String result) {}

    @SuppressWarnings("StringCaseLocaleUsage")
    static String everyRule(Mutable mutable, MediaType framework) {
        mutable.changes++;
        return framework.toString()
                + System.currentTimeMillis()
                + "I".toLowerCase(Locale.getDefault())
                + "I".toLowerCase()
                + new Random().nextInt()
                + Solver.MASH.solves();
    }
}

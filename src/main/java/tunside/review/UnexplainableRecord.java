package tunside.review;

import java.util.OptionalInt;
import org.jspecify.annotations.Nullable;

/** A record that no household can have: to explain it, the model would have to leave what a mash can be. */
public final class UnexplainableRecord extends RuntimeException {
    private static final long serialVersionUID = 1;

    private final @Nullable Integer brew;

    /** The record as a whole asks for a shift of more than 2 pH, or of more than a factor e² of the buffering. */
    UnexplainableRecord(String quantity, double shift) {
        super("%s would have to be %s".formatted(quantity, shift), null, false, false);
        this.brew = null;
    }

    /** The other brews let expect a pH of this one that is none. */
    UnexplainableRecord(int brew, double expectedPh) {
        super("brew %s is expected at pH %s".formatted(brew, expectedPh), null, false, false);
        this.brew = brew;
    }

    /** Index of the brew that stands apart; empty where it is the record as a whole. */
    public OptionalInt brew() {
        return brew == null ? OptionalInt.empty() : OptionalInt.of(brew);
    }
}

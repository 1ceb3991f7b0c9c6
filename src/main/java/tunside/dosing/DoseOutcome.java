package tunside.dosing;

import java.util.List;

/** What a search for a dose can end in. Every caller handles all four. */
public sealed interface DoseOutcome {
    /**
     * Acid is needed.
     *
     * @param millimoles in all from now on: the median, mmol of acid that acts
     * @param lowMillimoles 5 % quantile of what it may take
     * @param highMillimoles 95 % quantile
     * @param stages the first is to be added now; the others hold if every reading comes as expected
     */
    record Dose(double millimoles, double lowMillimoles, double highMillimoles, List<DoseStage> stages)
            implements DoseOutcome {
        public Dose {
            stages = List.copyOf(stages);
        }
    }

    /** The pH is in the range. @param ph now */
    record NoneNeeded(double ph) implements DoseOutcome {}

    /** No dose that may be given reaches the target. @param largestMillimoles given @param phAtLargest reached with it */
    record OutOfReach(double largestMillimoles, double phAtLargest) implements DoseOutcome {}

    /** The pH is below the range: it must be raised. @param ph now */
    record RaiseInstead(double ph) implements DoseOutcome {}
}

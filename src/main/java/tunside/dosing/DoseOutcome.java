package tunside.dosing;

/** What the search for a dose can end in. Every caller handles all four. */
public sealed interface DoseOutcome {

    /**
     * Acid is needed.
     *
     * @param staged how much and in which stages
     */
    record Dose(StagedDose staged) implements DoseOutcome {}

    /** The pH is in its range, or the reading and what was expected do not agree that it is outside: add nothing. */
    record NoneNeeded() implements DoseOutcome {}

    /**
     * The target cannot be reached.
     *
     * @param reagent what would have to be added
     * @param largestGrams most that may be added
     * @param phAtLargest median of the pH then
     */
    record OutOfReach(Reagent reagent, double largestGrams, double phAtLargest) implements DoseOutcome {}

    /**
     * The pH is too low: a base is needed.
     *
     * @param staged how much and in which stages
     */
    record RaiseInstead(StagedDose staged) implements DoseOutcome {}
}

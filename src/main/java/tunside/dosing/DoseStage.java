package tunside.dosing;

/**
 * One addition, and what to expect of it.
 *
 * @param millimoles of acid that acts, a whole number of steps
 * @param expectedPh afterwards
 * @param lowPh 5 % quantile of the pH afterwards
 * @param highPh 95 % quantile
 * @param overshootProbability of ending below the range
 */
public record DoseStage(
        double millimoles, double expectedPh, double lowPh, double highPh, double overshootProbability) {}

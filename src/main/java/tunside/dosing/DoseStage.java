package tunside.dosing;

/**
 * One addition, to be followed by a reading.
 *
 * @param grams to add
 * @param expectedPh median of the true pH after it
 * @param low90Ph lower end of its 90 % interval
 * @param high90Ph upper end
 * @param overshootProbability probability of having passed the far limit
 */
public record DoseStage(
        double grams, double expectedPh, double low90Ph, double high90Ph, double overshootProbability) {}

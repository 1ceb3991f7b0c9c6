package tunside.dosing;

/**
 * One pour of acid into water or into what has been made so far, no heat lost.
 *
 * @param acidGrams strong acid that goes in
 * @param percentAfter strength afterwards, %w/w
 * @param startCelsius before
 * @param endCelsius expected afterwards
 * @param hottestCelsius highest on the way; above the end where much acid meets little water
 * @param mostHalfWidthKelvin how far a temperature may be off at most, either way
 */
public record AcidDilutionStage(
        double acidGrams,
        double percentAfter,
        double startCelsius,
        double endCelsius,
        double hottestCelsius,
        double mostHalfWidthKelvin) {

    /** How far the hottest temperature may be off, either way, K. */
    public double halfWidthKelvin() {
        return halfWidth(hottestCelsius - startCelsius, mostHalfWidthKelvin);
    }

    /** What the mixture may reach if the estimate is low, degC. */
    public double surelyBelowCelsius() {
        return hottestCelsius + halfWidthKelvin();
    }

    /** Half of a small rise, and never more than what the heats are good for. */
    static double halfWidth(double riseKelvin, double mostKelvin) {
        return Math.min(mostKelvin, Math.max(0, riseKelvin) / 2);
    }
}

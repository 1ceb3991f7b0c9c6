package tunside.dosing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What additions and readings teach about a liquid's buffering, by Bayes on its non-linear balance.
 *
 * <p>The logarithm of the buffering is laid out on an even grid ({@link BufferGrid}). At each of its nodes the true starting pH
 * and the error that all readings share are normal and are summed over exactly ({@link Hypothesis}), with the balance linear in
 * the starting pH over its uncertainty. Cost: grows evenly with the readings.
 *
 * @param before what was known before the first addition, the first reading included
 * @param now what is known after the last
 * @param comparisons every reading of the history held against what was expected before it
 */
public record BufferLearning(Knowledge before, Knowledge now, List<Comparison> comparisons) {
    private static final double SURPRISE_IN_DEVIATIONS = 3;
    private static final double CONTRADICTING_FACTOR = 3;
    private static final double ONE_DEVIATION_ABOVE = 0.8413447460685429;

    /** How a reading compares with what was expected before it. */
    public enum Fit {
        AS_EXPECTED,
        WRONG_WAY,
        TOO_FAR,
        TOO_LITTLE
    }

    /**
     * A reading after something was added, held against what was expected before it.
     *
     * @param index of the entry in the history
     * @param falling whether the pH was to fall
     * @param readPh what was read
     * @param expectedPh median of the true pH before the reading
     * @param fit how the two compare
     */
    public record Comparison(int index, boolean falling, double readPh, double expectedPh, Fit fit) {}

    public BufferLearning {
        comparisons = List.copyOf(comparisons);
    }

    /**
     * Learns from a history.
     *
     * @param sharedUncertainty standard uncertainty of the error that all readings have in common, such as the
     *     calibration's, not negative
     */
    public static BufferLearning of(
            TitrationCurve curve,
            BufferingPrior prior,
            PhReading start,
            double sharedUncertainty,
            List<PastAddition> history) {
        Knowledge before = new BufferGrid(curve, prior, start, sharedUncertainty).knowledge(Given.NOTHING);
        List<Comparison> comparisons = new ArrayList<>();
        Knowledge now = before;
        Knowledge atReading = before;
        PhReading last = start;
        double addedSince = 0;
        for (int i = 0; i < history.size(); i++) {
            PastAddition entry = history.get(i);
            addedSince += entry.grams() * (entry.reagent().acid() ? 1 : -1);
            now = now.after(new PastAddition(entry.reagent(), entry.grams(), Optional.empty()));
            if (entry.after().isPresent()) {
                PhReading reading = entry.after().get();
                Quantiles ph = now.ph();
                double expected = ph.at(0.5);
                double spread = (ph.at(ONE_DEVIATION_ABOVE) - ph.at(1 - ONE_DEVIATION_ABOVE)) / 2;
                if (addedSince != 0) {
                    boolean falling = addedSince > 0;
                    Fit fit = fit(falling, atReading.quantile(0.5), expected, spread, last, reading);
                    comparisons.add(new Comparison(i, falling, reading.ph(), expected, fit));
                }
                now = now.after(PastAddition.read(tempered(reading, expected, spread)));
                atReading = now;
                last = reading;
                addedSince = 0;
            }
        }
        return new BufferLearning(before, now, comparisons);
    }

    /**
     * A contradiction: the wrong way by two deviations of the readings; or three times too far or less than a third as far,
     * and by more than two deviations of reading and forecast; or out by more than four, whatever the proportion.
     */
    private static Fit fit(
            boolean falling, double medianBefore, double median, double spread, PhReading last, PhReading reading) {
        double direction = falling ? 1 : -1;
        double moved = direction * (last.ph() - reading.ph());
        double expected = Math.max(0, direction * (medianBefore - median));
        double beyond = direction * (median - reading.ph());
        double deviation = Math.hypot(spread, reading.standardUncertainty());
        if (moved < -2 * Math.hypot(last.standardUncertainty(), reading.standardUncertainty())) {
            return Fit.WRONG_WAY;
        }
        if (beyond > 4 * deviation || (moved > CONTRADICTING_FACTOR * expected && beyond > 2 * deviation)) {
            return Fit.TOO_FAR;
        }
        return -beyond > 4 * deviation || (moved < expected / CONTRADICTING_FACTOR && -beyond > 2 * deviation)
                ? Fit.TOO_LITTLE
                : Fit.AS_EXPECTED;
    }

    /**
     * A reading more than three deviations from its forecast is taken with an uncertainty that makes it two: something is
     * wrong with it or with the model, so it neither rules nor is ignored.
     */
    private static PhReading tempered(PhReading reading, double expected, double spread) {
        double surprise = Math.abs(reading.ph() - expected);
        if (surprise <= SURPRISE_IN_DEVIATIONS * Math.hypot(spread, reading.standardUncertainty())) {
            return reading;
        }
        double wider = Math.sqrt(Math.max(0, surprise * surprise / 4 - spread * spread));
        return new PhReading(reading.ph(), Math.min(1, Math.max(reading.standardUncertainty(), wider)));
    }
}

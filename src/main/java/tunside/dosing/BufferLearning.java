package tunside.dosing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;

/**
 * What additions and readings teach about a liquid's buffering, by Bayes on its non-linear balance.
 *
 * <p>The logarithm of the buffering is laid out on an even grid that is narrowed to where the probability is. At each of its
 * nodes the true starting pH and the error that all readings share are normal and are summed over exactly, with the balance
 * linear in the starting pH over its uncertainty. Deterministic: no random numbers. Cost: one bracketed solution of the
 * balance a node and reading.
 *
 * @param before what was known before the first addition, the first reading included
 * @param now what is known after the last
 * @param comparisons every reading of the history held against what was expected before it
 */
public record BufferLearning(Knowledge before, Knowledge now, List<Comparison> comparisons) {
    private static final int NODES = 81;
    private static final double REACH_IN_DEVIATIONS = 6;
    private static final int PASSES = 4;
    private static final double NEGLIGIBLE_LOG = 18;
    private static final double NARROW_BELOW = 0.6;
    private static final int MOST_EVALUATIONS = 200;
    private static final double SURPRISE_IN_DEVIATIONS = 3;
    private static final double CONTRADICTING_FACTOR = 3;
    private static final double ONE_DEVIATION_ABOVE = 0.8413447460685429;
    private static final double NO_SHARED_ERROR_PRECISION = 1e12;

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
        Knowledge before = posterior(curve, prior, start, sharedUncertainty, List.of());
        List<Comparison> comparisons = new ArrayList<>();
        List<PastAddition> taken = new ArrayList<>();
        Knowledge now = before;
        Knowledge atReading = before;
        PhReading last = start;
        double addedSince = 0;
        for (int i = 0; i < history.size(); i++) {
            PastAddition entry = history.get(i);
            addedSince += entry.grams() * (entry.reagent().acid() ? 1 : -1);
            taken.add(new PastAddition(entry.reagent(), entry.grams(), Optional.empty()));
            if (entry.after().isPresent()) {
                PhReading reading = entry.after().get();
                Knowledge forecast = posterior(curve, prior, start, sharedUncertainty, taken);
                double expected = forecast.quantile(0.5);
                double spread =
                        (forecast.quantile(ONE_DEVIATION_ABOVE) - forecast.quantile(1 - ONE_DEVIATION_ABOVE)) / 2;
                if (addedSince != 0) {
                    boolean falling = addedSince > 0;
                    Fit fit = fit(falling, atReading.quantile(0.5), expected, spread, last, reading);
                    comparisons.add(new Comparison(i, falling, reading.ph(), expected, fit));
                }
                PhReading tempered = tempered(reading, expected, spread);
                taken.set(taken.size() - 1, new PastAddition(entry.reagent(), entry.grams(), Optional.of(tempered)));
                last = reading;
                addedSince = 0;
            }
            now = posterior(curve, prior, start, sharedUncertainty, taken);
            atReading = entry.after().isPresent() ? now : atReading;
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

    private static Knowledge posterior(
            TitrationCurve curve, BufferingPrior prior, PhReading start, double shared, List<PastAddition> history) {
        double reach = REACH_IN_DEVIATIONS * prior.logStandardDeviation();
        double low = -reach;
        double high = reach;
        for (int pass = 1; ; pass++) {
            List<Conditional> conditionals = new ArrayList<>();
            double step = (high - low) / (NODES - 1);
            double best = Double.NEGATIVE_INFINITY;
            for (int i = 0; i < NODES; i++) {
                Conditional conditional =
                        Conditional.of(curve, prior, start, shared, history, Math.exp(low + i * step));
                best = Math.max(best, conditional.logDensity());
                conditionals.add(conditional);
            }
            int first = 0;
            int last = NODES - 1;
            while (conditionals.get(first).logDensity() < best - NEGLIGIBLE_LOG) {
                first++;
            }
            while (conditionals.get(last).logDensity() < best - NEGLIGIBLE_LOG) {
                last--;
            }
            double narrowLow = low + Math.max(0, first - 1) * step;
            double narrowHigh = low + Math.min(NODES - 1, last + 1) * step;
            if (pass == PASSES || narrowHigh - narrowLow > NARROW_BELOW * (high - low)) {
                return knowledge(curve, history, conditionals, step / Math.sqrt(12));
            }
            low = narrowLow;
            high = narrowHigh;
        }
    }

    private static Knowledge knowledge(
            TitrationCurve curve, List<PastAddition> history, List<Conditional> conditionals, double relativeWidth) {
        double best =
                conditionals.stream().mapToDouble(Conditional::logDensity).max().orElseThrow();
        double sum = 0;
        for (Conditional conditional : conditionals) {
            sum += Math.exp(conditional.logDensity() - best);
        }
        List<Knowledge.Node> nodes = new ArrayList<>();
        for (Conditional conditional : conditionals) {
            double scale = conditional.scale();
            double ph = conditional.startPh();
            nodes.add(new Knowledge.Node(
                    scale,
                    Math.exp(conditional.logDensity() - best) / sum,
                    curve.meq(ph, scale),
                    curve.scaledMeq().applyAsDouble(ph),
                    curve.bufferingMeqPerPh(ph, scale) * conditional.startUncertaintyPh(),
                    relativeWidth));
        }
        return new Knowledge(curve, history, nodes);
    }

    /**
     * What the readings say of the starting pH if the buffering were this.
     *
     * @param scale factor on the buffering
     * @param logDensity logarithm of the probability density of the buffering's logarithm, less a constant
     * @param startPh mean of the true starting pH
     * @param startUncertaintyPh its standard deviation
     */
    private record Conditional(double scale, double logDensity, double startPh, double startUncertaintyPh) {

        static Conditional of(
                TitrationCurve curve,
                BufferingPrior prior,
                PhReading start,
                double shared,
                List<PastAddition> history,
                double scale) {
            Normal normal = new Normal(shared);
            normal.add(0, 1, start.standardUncertainty());
            double startMeq = curve.meq(start.ph(), scale);
            double startBuffering = curve.bufferingMeqPerPh(start.ph(), scale);
            for (int i = 0; i < history.size(); i++) {
                if (history.get(i).after().isPresent()) {
                    PhReading reading = history.get(i).after().get();
                    List<PastAddition> given = history.subList(0, i + 1);
                    double ph = solve(curve, given, scale, startMeq);
                    double half = 0.001;
                    double slope = (missing(curve, given, scale, startMeq, ph - half)
                                    - missing(curve, given, scale, startMeq, ph + half))
                            / (2 * half);
                    normal.add(reading.ph() - ph, startBuffering / slope, reading.standardUncertainty());
                }
            }
            double x = Math.log(scale) / prior.logStandardDeviation();
            return new Conditional(
                    scale, normal.logEvidence() - x * x / 2, start.ph() + normal.mean(), normal.deviation());
        }

        private static double missing(
                TitrationCurve curve, List<PastAddition> given, double scale, double startMeq, double ph) {
            double sum = curve.meq(ph, scale) - startMeq;
            for (PastAddition addition : given) {
                sum -= addition.grams() * addition.reagent().meqPerGram(ph);
            }
            return sum;
        }

        /** The pH after some additions, if the starting reading were exact; the end of the curve where they go beyond. */
        private static double solve(TitrationCurve curve, List<PastAddition> given, double scale, double startMeq) {
            double low = TitrationCurve.LOWEST_PH;
            double high = TitrationCurve.HIGHEST_PH;
            if (missing(curve, given, scale, startMeq, low) <= 0) {
                return low;
            }
            if (missing(curve, given, scale, startMeq, high) >= 0) {
                return high;
            }
            return new BracketingNthOrderBrentSolver(1e-10, 1e-8, 1e-9, 5)
                    .solve(MOST_EVALUATIONS, ph -> missing(curve, given, scale, startMeq, ph), low, high);
        }
    }

    /** A normal distribution of the error of the first reading and of the error that all share, built reading by reading. */
    private static final class Normal {
        private final double[] precision = new double[3];
        private final double[] weighted = new double[2];
        private final double[] squares = new double[1];

        Normal(double shared) {
            precision[2] =
                    shared > 0 ? Math.min(NO_SHARED_ERROR_PRECISION, 1 / (shared * shared)) : NO_SHARED_ERROR_PRECISION;
        }

        /** A reading {@code difference = perStart x start + shared + own error}. */
        void add(double difference, double perStart, double uncertainty) {
            double weight = 1 / (uncertainty * uncertainty);
            precision[0] += weight * perStart * perStart;
            precision[1] += weight * perStart;
            precision[2] += weight;
            weighted[0] += weight * perStart * difference;
            weighted[1] += weight * difference;
            squares[0] += weight * difference * difference;
        }

        private double determinant() {
            return precision[0] * precision[2] - precision[1] * precision[1];
        }

        double mean() {
            return (precision[2] * weighted[0] - precision[1] * weighted[1]) / determinant();
        }

        double deviation() {
            return Math.sqrt(precision[2] / determinant());
        }

        double logEvidence() {
            double shared = (precision[0] * weighted[1] - precision[1] * weighted[0]) / determinant();
            return -(squares[0] - weighted[0] * mean() - weighted[1] * shared) / 2 - Math.log(determinant()) / 2;
        }
    }
}

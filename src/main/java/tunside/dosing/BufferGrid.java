package tunside.dosing;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Possible bufferings of a liquid on an even grid of their logarithm, each with what the readings say if it were the true one.
 * Grows addition by addition and reading by reading, and is narrowed to where the probability is. Immutable.
 *
 * <p>Cost of a reading: the pH at each node, found from its neighbour's in a few evaluations of the curve; and where the grid
 * is narrowed, those of the earlier readings again. Deterministic: no random numbers.
 */
final class BufferGrid {
    private static final int NODES = 81;
    private static final double REACH_IN_DEVIATIONS = 6;
    private static final int MOST_NARROWINGS = 3;
    private static final double NEGLIGIBLE_LOG = 18;
    private static final double NARROW_BELOW = 0.6;
    private static final int MOST_EVALUATIONS = 200;
    private static final double PH_ACCURACY = 1e-9;
    private static final double HALF_STEP_PH = 0.001;

    private final TitrationCurve curve;
    private final BufferingPrior prior;
    private final PhReading start;
    private final double sharedUncertainty;
    private final Given given;
    private final List<Taken> taken;
    private final double low;
    private final double step;
    private final List<Hypothesis> nodes;

    /** A reading, and what had gone in before it. */
    private record Taken(Given given, PhReading reading) {}

    /**
     * Before anything went in.
     *
     * @param sharedUncertainty of the error that all readings have in common
     */
    BufferGrid(TitrationCurve curve, BufferingPrior prior, PhReading start, double sharedUncertainty) {
        this.curve = curve;
        this.prior = prior;
        this.start = start;
        this.sharedUncertainty = sharedUncertainty;
        this.given = Given.NOTHING;
        this.taken = List.of();
        this.low = -REACH_IN_DEVIATIONS * prior.logStandardDeviation();
        this.step = widestStep(prior);
        this.nodes = fresh();
    }

    /** The same with more taken; on the same nodes, or on new ones where none are given. */
    private BufferGrid(
            BufferGrid from, Given given, List<Taken> taken, double low, double step, List<Hypothesis> nodes) {
        this.curve = from.curve;
        this.prior = from.prior;
        this.start = from.start;
        this.sharedUncertainty = from.sharedUncertainty;
        this.given = given;
        this.taken = taken;
        this.low = low;
        this.step = step;
        List<Hypothesis> read = nodes;
        if (nodes.isEmpty()) {
            read = fresh();
            for (Taken each : taken) {
                read = read(read, each);
            }
        }
        this.nodes = read;
    }

    private static double widestStep(BufferingPrior prior) {
        return 2 * REACH_IN_DEVIATIONS * prior.logStandardDeviation() / (NODES - 1);
    }

    private List<Hypothesis> fresh() {
        List<Hypothesis> fresh = new ArrayList<>(NODES);
        for (int i = 0; i < NODES; i++) {
            fresh.add(Hypothesis.of(low + i * step, start, sharedUncertainty));
        }
        return fresh;
    }

    /** After one more addition, and its reading if one was taken. */
    BufferGrid after(PastAddition addition) {
        Given more = given.plus(addition);
        if (addition.after().isEmpty()) {
            return new BufferGrid(this, more, taken, low, step, nodes);
        }
        Taken last = new Taken(more, addition.after().get());
        List<Taken> all = new ArrayList<>(taken);
        all.add(last);
        BufferGrid grid = new BufferGrid(this, more, all, low, step, read(nodes, last));
        if (grid.cutsOff()) {
            double widest = widestStep(prior);
            grid = new BufferGrid(this, more, all, -widest * (NODES - 1) / 2, widest, List.of());
        }
        BufferGrid narrowed = grid.narrowed();
        for (int i = 1; i < MOST_NARROWINGS && narrowed != grid; i++) {
            grid = narrowed;
            narrowed = grid.narrowed();
        }
        return narrowed;
    }

    /** Whether a reading has led to an end that an earlier one had narrowed the grid to. */
    private boolean cutsOff() {
        int[] holding = holding();
        return step < widestStep(prior) && (holding[0] == 0 || holding[1] == NODES - 1);
    }

    /** On the part that holds all probability but a negligible rest; the same where that is most of it. */
    private BufferGrid narrowed() {
        int[] holding = holding();
        int first = Math.max(0, holding[0] - 1);
        int last = Math.min(NODES - 1, holding[1] + 1);
        if (last - first > NARROW_BELOW * (NODES - 1)) {
            return this;
        }
        return new BufferGrid(this, given, taken, low + first * step, (last - first) * step / (NODES - 1), List.of());
    }

    /** First and last node whose probability is not negligible beside the best. */
    private int[] holding() {
        double[] logDensities = logDensities();
        double least = Arrays.stream(logDensities).max().orElseThrow() - NEGLIGIBLE_LOG;
        int first = 0;
        int last = NODES - 1;
        while (logDensities[first] < least) {
            first++;
        }
        while (logDensities[last] < least) {
            last--;
        }
        return new int[] {first, last};
    }

    private double[] logDensities() {
        double[] logDensities = new double[NODES];
        for (int i = 0; i < NODES; i++) {
            double deviations = nodes.get(i).logScale() / prior.logStandardDeviation();
            logDensities[i] = nodes.get(i).logEvidence() - deviations * deviations / 2;
        }
        return logDensities;
    }

    private List<Hypothesis> read(List<Hypothesis> before, Taken last) {
        double startScaled = curve.scaledMeq().applyAsDouble(start.ph());
        double startFixed = curve.fixedMeq().applyAsDouble(start.ph());
        List<Hypothesis> after = new ArrayList<>(NODES);
        double ph = start.ph();
        double change = 0; // from node to node
        double slope = curve.bufferingMeqPerPh(ph, before.get(0).scale());
        for (Hypothesis node : before) {
            double scale = node.scale();
            double startMeq = scale * startScaled + startFixed;
            double found = solve(last.given, scale, startMeq, ph + change, slope);
            change = after.isEmpty() ? 0 : found - ph;
            ph = found;
            slope = (missing(last.given, scale, startMeq, ph - HALF_STEP_PH)
                            - missing(last.given, scale, startMeq, ph + HALF_STEP_PH))
                    / (2 * HALF_STEP_PH);
            after.add(node.with(
                    last.reading.ph() - ph,
                    curve.bufferingMeqPerPh(start.ph(), scale) / slope,
                    last.reading.standardUncertainty()));
        }
        return after;
    }

    /** Protons that the liquid at a pH would have taken up beyond those that were given, mEq; falls as the pH rises. */
    private double missing(Given from, double scale, double startMeq, double ph) {
        return curve.meq(ph, scale) - startMeq - from.meq(ph);
    }

    /**
     * The pH after what was given, if the starting reading were exact; the end of the curve where it goes beyond. Newton's method
     * with the last slope, halving what encloses the pH where that leads outside.
     */
    private double solve(Given from, double scale, double startMeq, double nearPh, double nearSlope) {
        double lowest = TitrationCurve.LOWEST_PH;
        double highest = TitrationCurve.HIGHEST_PH;
        double ph = nearPh;
        double slope = nearSlope;
        double lastPh = Double.NaN;
        double lastMissing = Double.NaN;
        for (int i = 0; i < MOST_EVALUATIONS; i++) {
            double missing = missing(from, scale, startMeq, ph);
            if (missing > 0) {
                lowest = ph;
            } else {
                highest = ph;
            }
            double secant = (lastMissing - missing) / (ph - lastPh);
            slope = secant > 0 ? secant : slope;
            double next = ph + missing / slope;
            if (!(next >= lowest && next <= highest)) {
                next = (lowest + highest) / 2;
            }
            lastPh = ph;
            lastMissing = missing;
            ph = next;
            if (Math.abs(ph - lastPh) <= PH_ACCURACY) {
                break;
            }
        }
        return ph;
    }

    /** What is known of the liquid. */
    Knowledge knowledge() {
        double[] logDensities = logDensities();
        double best = Arrays.stream(logDensities).max().orElseThrow();
        double sum = 0;
        for (double logDensity : logDensities) {
            sum += Math.exp(logDensity - best);
        }
        double relativeWidth = step / Math.sqrt(12);
        List<Knowledge.Node> known = new ArrayList<>(NODES);
        for (int i = 0; i < NODES; i++) {
            Hypothesis node = nodes.get(i);
            double scale = node.scale();
            double ph = node.startPh();
            known.add(new Knowledge.Node(
                    scale,
                    Math.exp(logDensities[i] - best) / sum,
                    curve.meq(ph, scale),
                    curve.scaledMeq().applyAsDouble(ph),
                    curve.bufferingMeqPerPh(ph, scale) * node.startUncertaintyPh(),
                    relativeWidth));
        }
        return new Knowledge(this, curve, given, known);
    }
}

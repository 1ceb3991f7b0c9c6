package tunside.dosing;

import java.util.ArrayList;
import java.util.List;

/**
 * Possible bufferings of a liquid on an even grid of their logarithm, each with what the readings say if it were the true one.
 * Grows reading by reading, and is narrowed to where the probability is. Immutable.
 *
 * <p>Cost of a reading: the pH at each node, found from its neighbours' in an evaluation or two of the curve; and where the grid
 * is narrowed, those of the earlier readings again. What few nodes cannot resolve, {@link Bells} fill in. Deterministic: no
 * random numbers.
 */
final class BufferGrid {
    private static final int NODES = 27;
    private static final double REACH_IN_DEVIATIONS = 6;
    private static final int MOST_NARROWINGS = 3;
    private static final double NEGLIGIBLE_LOG = 15;
    private static final double NARROW_BELOW = 0.9;

    private final TitrationCurve curve;
    private final BufferingPrior prior;
    private final PhReading start;
    private final double sharedUncertainty;
    private final List<Taken> taken;
    private final double low;
    private final double step;
    private final Hypothesis[] nodes;
    private final double[] logDensities;

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
        this.taken = List.of();
        this.low = -REACH_IN_DEVIATIONS * prior.logStandardDeviation();
        this.step = widestStep(prior);
        this.nodes = fresh();
        this.logDensities = logDensities();
    }

    /** The same with more taken, on the same nodes. */
    private BufferGrid(BufferGrid from, List<Taken> taken, Hypothesis[] nodes) {
        this.curve = from.curve;
        this.prior = from.prior;
        this.start = from.start;
        this.sharedUncertainty = from.sharedUncertainty;
        this.taken = taken;
        this.low = from.low;
        this.step = from.step;
        this.nodes = nodes;
        this.logDensities = logDensities();
    }

    /** The same on other nodes. */
    private BufferGrid(BufferGrid from, double low, double step) {
        this.curve = from.curve;
        this.prior = from.prior;
        this.start = from.start;
        this.sharedUncertainty = from.sharedUncertainty;
        this.taken = from.taken;
        this.low = low;
        this.step = step;
        Hypothesis[] read = fresh();
        for (Taken each : taken) {
            read = read(read, each);
        }
        this.nodes = read;
        this.logDensities = logDensities();
    }

    private static double widestStep(BufferingPrior prior) {
        return 2 * REACH_IN_DEVIATIONS * prior.logStandardDeviation() / (NODES - 1);
    }

    private Hypothesis[] fresh() {
        Hypothesis[] fresh = new Hypothesis[NODES];
        for (int i = 0; i < NODES; i++) {
            fresh[i] = Hypothesis.of(low + i * step, start, sharedUncertainty);
        }
        return fresh;
    }

    private double[] logDensities() {
        double[] logs = new double[NODES];
        for (int i = 0; i < NODES; i++) {
            double deviations = nodes[i].logScale() / prior.logStandardDeviation();
            double evidence = taken.isEmpty() ? 0 : nodes[i].logEvidence(); // the first reading says the same to all
            logs[i] = evidence - deviations * deviations / 2;
        }
        return logs;
    }

    /** The first reading's pH. */
    double startPh() {
        return start.ph();
    }

    /** Of the true starting pH by readings before which nothing went in: they say the same at every node. */
    Distribution.Point atStart(double ph) {
        double perDeviation = 1 / nodes[0].startUncertaintyPh();
        double z = (ph - nodes[0].startPh()) * perDeviation;
        return new Distribution.Point(NormalIntegral.below(z), NormalIntegral.density(z) * perDeviation);
    }

    /** Standard deviation of the logarithm within the bell that a node stands for. */
    double bell() {
        return Bells.WIDTH * step;
    }

    /**
     * After one more reading.
     *
     * @param given all that went in before it
     */
    BufferGrid after(Given given, PhReading reading) {
        Taken last = new Taken(given, reading);
        List<Taken> all = new ArrayList<>(taken);
        all.add(last);
        BufferGrid grid = new BufferGrid(this, all, read(nodes, last));
        if (grid.cutsOff()) {
            double widest = widestStep(prior);
            grid = new BufferGrid(grid, -widest * (NODES - 1) / 2, widest);
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
        return new BufferGrid(this, low + first * step, (last - first) * step / (NODES - 1));
    }

    /** First and last node whose probability is not negligible beside the best. */
    private int[] holding() {
        double least = highestLogDensity() - NEGLIGIBLE_LOG;
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

    private double highestLogDensity() {
        double highest = logDensities[0];
        for (double log : logDensities) {
            highest = Math.max(highest, log);
        }
        return highest;
    }

    private Hypothesis[] read(Hypothesis[] before, Taken last) {
        TitrationCurve.Point atStart = curve.at(start.ph());
        Hypothesis[] after = new Hypothesis[NODES];
        double[] ph = new double[NODES];
        for (int i = 0; i < NODES; i++) {
            double scale = before[i].scale();
            ph[i] = curve.ph(scale, atStart.meq(scale), last.given, i == 0 ? start.ph() : next(ph, i));
            double slope = curve.at(ph[i]).bufferingMeqPerPh(scale) + last.given.slope(ph[i]);
            after[i] = before[i].with(
                    last.reading.ph() - ph[i],
                    atStart.bufferingMeqPerPh(scale) / slope,
                    last.reading.standardUncertainty());
        }
        return after;
    }

    /** What a parabola through the last three leads to; a line or a level where there are fewer. */
    private static double next(double[] values, int i) {
        return i == 1
                ? values[0]
                : i == 2 ? 2 * values[1] - values[0] : 3 * (values[i - 1] - values[i - 2]) + values[i - 3];
    }

    /**
     * What is known of the liquid.
     *
     * @param given all that went in
     */
    Knowledge knowledge(Given given) {
        double best = highestLogDensity();
        double[] densities = new double[NODES];
        Knowledge.Node[] known = new Knowledge.Node[NODES];
        TitrationCurve.Point start = curve.at(nodes[0].startPh());
        for (int i = 0; i < NODES; i++) {
            densities[i] = Math.exp(logDensities[i] - best);
            double scale = nodes[i].scale();
            double ph = nodes[i].startPh();
            if (ph != start.ph()) { // before anything went in it is the same at all nodes
                start = curve.at(ph);
            }
            double uncertainty = start.bufferingMeqPerPh(scale) * nodes[i].startUncertaintyPh();
            known[i] = new Knowledge.Node(nodes[i].logScale(), scale, start.meq(scale), uncertainty);
        }
        return new Knowledge(this, curve, given, known, new Bells(densities));
    }
}

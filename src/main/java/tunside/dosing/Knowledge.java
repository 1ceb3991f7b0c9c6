package tunside.dosing;

import java.util.Optional;

/**
 * What is known of a liquid after its additions and readings: a set of possible bufferings, each with its weight and with
 * a normal distribution of the true starting pH. Answers with the distribution of the true pH, now or after one more
 * addition.
 *
 * <p>The probability of ending below a pH is exact in the buffering and the balance, and to first order in the error of
 * the starting pH: the pH ends below {@code t} exactly where more protons were given than the liquid takes up on its way
 * to {@code t}. No random numbers; cost of a probability: one normal integral a node.
 */
public final class Knowledge {
    private static final double WIDEST_LOG_SCALE = 20;

    private final BufferGrid grid;
    private final TitrationCurve curve;
    private final Given given;
    private final Node[] nodes;
    private final Bells bells;

    /**
     * One possible buffering.
     *
     * @param logScale logarithm of the factor on the uncertain part of the curve
     * @param scale the factor
     * @param startMeq the curve at the mean of the starting pH, mEq
     * @param startVariance its variance, mEq^2
     */
    record Node(double logScale, double scale, double startMeq, double startVariance) {}

    Knowledge(BufferGrid grid, TitrationCurve curve, Given given, Node[] nodes, Bells bells) {
        this.grid = grid;
        this.curve = curve;
        this.given = given;
        this.nodes = nodes;
        this.bells = bells;
    }

    /** After one more addition, and what its reading teaches if one was taken. */
    Knowledge after(PastAddition addition) {
        Given more = given.plus(addition.reagent(), addition.grams());
        Optional<PhReading> reading = addition.after();
        return reading.isPresent()
                ? grid.after(more, reading.get()).knowledge(more)
                : new Knowledge(grid, curve, more, nodes, bells);
    }

    /** Protons that all additions so far have given at a pH, mEq. */
    double givenMeq(double ph) {
        return given.meq(ph);
    }

    /** Probability that the true pH now lies below a pH. */
    public double probabilityBelow(double ph) {
        return probabilityBelow(ph, Reagent.NOTHING, 0);
    }

    /** Probability that the true pH lies below a pH after one more addition. */
    public double probabilityBelow(double ph, Reagent next, double grams) {
        return at(ph, next, grams).below();
    }

    private Distribution.Point at(double ph, Reagent next, double grams) {
        double scaled = curve.scaledMeq().at(ph);
        double scaledSlope = curve.scaledMeq().slope(ph);
        double nextMeq = grams * next.meqPerGram(ph);
        double nextSlope = grams * next.protonsMeqPerGram().slope(ph);
        double known = given.meq(ph) + nextMeq - curve.fixedMeq().at(ph);
        double knownSlope = given.slope(ph) + nextSlope - curve.fixedMeq().slope(ph);
        double square = next.relativeUncertainty() * next.relativeUncertainty();
        double nextVariance = square * nextMeq * nextMeq;
        double nextVarianceSlope = square * nextMeq * nextSlope; // half of it
        double[] deviations = new double[nodes.length];
        double[] slopes = new double[nodes.length];
        for (int i = 0; i < nodes.length; i++) {
            Node node = nodes[i];
            double perDeviation = 1 / Math.sqrt(node.startVariance + nextVariance);
            deviations[i] = (known - node.scale * scaled + node.startMeq) * perDeviation;
            slopes[i] = (knownSlope - node.scale * scaledSlope - deviations[i] * perDeviation * nextVarianceSlope)
                    * perDeviation;
        }
        return bells.below(deviations, slopes);
    }

    /** Quantiles of the true pH now. */
    Quantiles ph() {
        return ph(Reagent.NOTHING, 0);
    }

    /** Quantiles of the true pH after one more addition. */
    Quantiles ph(Reagent next, double grams) {
        double scale = 0;
        double startMeq = 0;
        for (int i = 0; i < nodes.length; i++) {
            scale += bells.weight(i) * nodes[i].scale;
            startMeq += bells.weight(i) * nodes[i].startMeq;
        }
        return new Quantiles(
                ph -> at(ph, next, grams),
                TitrationCurve.LOWEST_PH,
                TitrationCurve.HIGHEST_PH,
                curve.ph(scale, startMeq, given.plus(next, grams), grid.startPh()));
    }

    /** The true pH now is below this with a probability, 0 to 1 exclusive. */
    public double quantile(double probability) {
        return ph().at(probability);
    }

    /** The same after one more addition. */
    public double quantile(double probability, Reagent next, double grams) {
        return ph(next, grams).at(probability);
    }

    /**
     * How much of a reagent makes the probability of having passed a pH this large: of ending below it for an acid,
     * above it for a base.
     *
     * @return g, 0 where it is that large already; infinite where no amount does it
     */
    public double gramsFor(Reagent next, double ph, double probability) {
        double perGram = next.meqPerGram(ph);
        if (next.acid() ? perGram > 0 : perGram < 0) {
            return needed(next, ph).grams(probability);
        }
        double below = probabilityBelow(ph);
        return (next.acid() ? below : 1 - below) >= probability ? 0 : Double.POSITIVE_INFINITY;
    }

    /** How much of a reagent that can bring the liquid to a pH does so. */
    GramsNeeded needed(Reagent next, double ph) {
        double perGram = next.meqPerGram(ph);
        double scaled = curve.scaledMeq().at(ph);
        double known = given.meq(ph) - curve.fixedMeq().at(ph);
        double[] means = new double[nodes.length];
        double[] variances = new double[nodes.length];
        for (int i = 0; i < nodes.length; i++) {
            means[i] = (nodes[i].scale * scaled - nodes[i].startMeq - known) / perGram;
            variances[i] = nodes[i].startVariance / (perGram * perGram);
        }
        return new GramsNeeded(bells, means, variances, next.relativeUncertainty());
    }

    /** The factor on the buffering is below this with a probability, 0 to 1 exclusive. */
    public double scaleQuantile(double probability) {
        return Math.exp(scale().at(probability));
    }

    private Quantiles scale() {
        double perDeviation = 1 / grid.bell();
        return new Quantiles(
                logScale -> {
                    double below = 0;
                    double density = 0;
                    for (int i = 0; i < nodes.length; i++) {
                        double z = (logScale - nodes[i].logScale) * perDeviation;
                        below += bells.weight(i) * NormalIntegral.below(z);
                        density += bells.weight(i) * NormalIntegral.density(z) * perDeviation;
                    }
                    return new Distribution.Point(below, density);
                },
                -WIDEST_LOG_SCALE,
                WIDEST_LOG_SCALE,
                logScaleMoments()[0]);
    }

    /** Mean and standard deviation of the logarithm of the factor. */
    double[] logScaleMoments() {
        double mean = 0;
        double square = 0;
        for (int i = 0; i < nodes.length; i++) {
            mean += bells.weight(i) * nodes[i].logScale;
            square += bells.weight(i) * nodes[i].logScale * nodes[i].logScale;
        }
        square += grid.bell() * grid.bell();
        return new double[] {mean, Math.sqrt(Math.max(0, square - mean * mean))};
    }
}

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
 *
 * <p>For one thread at a time.
 */
public final class Knowledge {
    private static final double WIDEST_LOG_SCALE = 20;
    private static final double BEYOND_ALL_REASON = 1e6;

    private final BufferGrid grid;
    private final TitrationCurve curve;
    private final Given given;
    private final Node[] nodes;
    private final Bells bells;
    private final double[] deviations; // of the last probability
    private final double[] slopes;

    /**
     * One possible buffering.
     *
     * @param logScale logarithm of the factor on the uncertain part of the curve
     * @param scale the factor
     * @param startMeq the curve at the mean of the starting pH, mEq
     * @param startDeviation its standard deviation, mEq
     * @param perDeviation the same the other way up
     */
    record Node(double logScale, double scale, double startMeq, double startDeviation, double perDeviation) {
        Node(double logScale, double scale, double startMeq, double startDeviation) {
            this(logScale, scale, startMeq, startDeviation, 1 / startDeviation);
        }

        /** The same with a further variance. */
        double perDeviation(double further) {
            return further == 0 ? perDeviation : 1 / Math.sqrt(startDeviation * startDeviation + further);
        }
    }

    Knowledge(BufferGrid grid, TitrationCurve curve, Given given, Node[] nodes, Bells bells) {
        this.grid = grid;
        this.curve = curve;
        this.given = given;
        this.nodes = nodes;
        this.bells = bells;
        this.deviations = new double[nodes.length];
        this.slopes = new double[nodes.length];
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

    /** Of the true pH after one more addition; where nothing went in, whatever the buffering is. */
    private Distribution.Point at(double ph, Reagent next, double grams) {
        if (grams == 0 && given.isNothing()) {
            return grid.atStart(ph);
        }
        double nextMeq = grams * next.meqPerGram(ph);
        double nextSlope = grams * next.protonsMeqPerGram().slope(ph);
        TitrationCurve.Point at = curve.at(ph);
        return passed(
                given.meq(ph) - at.fixedMeq(),
                given.slope(ph) - at.fixedSlope(),
                at.scaledMeq(),
                at.scaledSlope(),
                nextMeq,
                nextSlope,
                next.relativeUncertainty());
    }

    /**
     * Probability that more protons were given than the liquid takes up on its way to a pH, and what it changes by where what
     * follows changes by its slope.
     *
     * @param known protons that were given less those that the known part takes up, mEq
     * @param scaled uncertain part at factor 1, mEq
     * @param next protons of the next addition, mEq
     * @param relativeUncertainty of these
     */
    private Distribution.Point passed(
            double known,
            double knownSlope,
            double scaled,
            double scaledSlope,
            double next,
            double nextSlope,
            double relativeUncertainty) {
        double square = relativeUncertainty * relativeUncertainty;
        double all = known + next;
        double allSlope = knownSlope + nextSlope;
        double nextVariance = square * next * next;
        double halfVarianceSlope = square * next * nextSlope;
        for (int i = 0; i < nodes.length; i++) {
            Node node = nodes[i];
            double perDeviation = node.perDeviation(nextVariance);
            double deviation = (all - node.scale * scaled + node.startMeq) * perDeviation;
            deviations[i] = deviation;
            slopes[i] =
                    (allSlope - node.scale * scaledSlope - deviation * perDeviation * halfVarianceSlope) * perDeviation;
        }
        return bells.below(deviations, slopes);
    }

    /** Quantiles of the true pH now. */
    Quantiles ph() {
        return ph(Reagent.NOTHING, 0);
    }

    /** Quantiles of the true pH after one more addition. */
    Quantiles ph(Reagent next, double grams) {
        return new Quantiles(
                ph -> at(ph, next, grams),
                TitrationCurve.LOWEST_PH,
                TitrationCurve.HIGHEST_PH,
                curve.ph(
                        bells.mean(i -> nodes[i].scale),
                        bells.mean(i -> nodes[i].startMeq),
                        given.plus(next, grams),
                        grid.startPh()));
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
        return needed(next, ph).grams(probability);
    }

    /** How much of a reagent brings the liquid to a pH: less is needed where an acid ends below it, a base above it. */
    GramsNeeded needed(Reagent next, double ph) {
        double perGram = next.meqPerGram(ph);
        if (!(next.acid() ? perGram > 0 : perGram < 0)) {
            double below = probabilityBelow(ph);
            double passed = next.acid() ? below : 1 - below;
            return probability -> passed >= probability ? 0 : Double.POSITIVE_INFINITY;
        }
        double scaled = curve.scaledMeq().at(ph);
        double known = given.meq(ph) - curve.fixedMeq().at(ph);
        double largest = 0;
        for (Node node : nodes) {
            double meq = node.scale * scaled - node.startMeq - known;
            largest = Math.max(largest, Math.abs(meq) + node.startDeviation);
        }
        double most = BEYOND_ALL_REASON * largest / Math.abs(perGram);
        double mean = bells.mean(i -> nodes[i].scale * scaled - nodes[i].startMeq - known) / perGram;
        Quantiles quantiles = new Quantiles(
                grams -> {
                    Distribution.Point ended =
                            passed(known, 0, scaled, 0, grams * perGram, perGram, next.relativeUncertainty());
                    return next.acid() ? ended : new Distribution.Point(1 - ended.below(), -ended.density());
                },
                0,
                most,
                mean);
        return probability -> {
            double grams = quantiles.at(probability);
            return grams < most ? grams : Double.POSITIVE_INFINITY;
        };
    }

    /** The factor on the buffering is below each with its probability, 0 to 1 exclusive. */
    public double[] scaleQuantiles(double... probabilities) {
        Quantiles logScale = logScale();
        double[] quantiles = new double[probabilities.length];
        for (int i = 0; i < quantiles.length; i++) {
            quantiles[i] = Math.exp(logScale.at(probabilities[i]));
        }
        return quantiles;
    }

    private Quantiles logScale() {
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

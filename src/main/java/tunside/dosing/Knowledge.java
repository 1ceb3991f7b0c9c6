package tunside.dosing;

import java.util.List;
import org.hipparchus.analysis.UnivariateFunction;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;
import tunside.chemistry.Solver;

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
    private static final int MOST_EVALUATIONS = 200;
    private static final double PH_ACCURACY = 1e-7;
    private static final double TINY_MEQ = 1e-9;
    private static final int MOST_DOUBLINGS = 60;

    private final BufferGrid grid;
    private final TitrationCurve curve;
    private final Given given;
    private final Node[] nodes;

    /**
     * One possible buffering.
     *
     * @param scale factor on the uncertain part of the curve
     * @param weight probability
     * @param startMeq the curve at the mean of the starting pH, mEq
     * @param startScaledMeq its uncertain part there
     * @param startUncertaintyMeq standard uncertainty of {@code startMeq}
     * @param relativeWidth standard deviation of the factor within the cell that this node stands for
     */
    record Node(
            double scale,
            double weight,
            double startMeq,
            double startScaledMeq,
            double startUncertaintyMeq,
            double relativeWidth) {}

    Knowledge(BufferGrid grid, TitrationCurve curve, Given given, List<Node> nodes) {
        this.grid = grid;
        this.curve = curve;
        this.given = given;
        this.nodes = nodes.toArray(Node[]::new);
    }

    /** After one more addition, and what its reading teaches if one was taken. */
    Knowledge after(PastAddition addition) {
        return grid.after(addition).knowledge();
    }

    /** Protons that all additions so far have given at a pH, mEq. */
    double givenMeq(double ph) {
        return given.meq(ph);
    }

    /** Probability that the true pH now lies below a pH. */
    public double probabilityBelow(double ph) {
        return probability(ph, 0, 0);
    }

    /** Probability that the true pH lies below a pH after one more addition. */
    public double probabilityBelow(double ph, Reagent next, double grams) {
        double meq = grams * next.meqPerGram(ph);
        return probability(ph, meq, meq * next.relativeUncertainty());
    }

    private double probability(double ph, double nextMeq, double nextUncertaintyMeq) {
        double scaled = curve.scaledMeq().applyAsDouble(ph);
        double fixed = curve.fixedMeq().applyAsDouble(ph);
        double givenMeq = givenMeq(ph) + nextMeq;
        double sum = 0;
        for (Node node : nodes) {
            double needed = node.scale * scaled + fixed - node.startMeq;
            double cell = node.scale * node.relativeWidth * (scaled - node.startScaledMeq);
            double spread = Math.sqrt(node.startUncertaintyMeq * node.startUncertaintyMeq
                    + cell * cell
                    + nextUncertaintyMeq * nextUncertaintyMeq
                    + TINY_MEQ * TINY_MEQ);
            sum += node.weight * NormalIntegral.below((givenMeq - needed) / spread);
        }
        return sum;
    }

    /** The true pH now is below this with a probability, 0 to 1 exclusive. */
    public double quantile(double probability) {
        return quantile(probability, ph -> probabilityBelow(ph));
    }

    /** The same after one more addition. */
    public double quantile(double probability, Reagent next, double grams) {
        return quantile(probability, ph -> probabilityBelow(ph, next, grams));
    }

    private static double quantile(double probability, UnivariateFunction below) {
        double low = TitrationCurve.LOWEST_PH;
        double high = TitrationCurve.HIGHEST_PH;
        if (below.value(low) >= probability) {
            return low;
        }
        if (below.value(high) <= probability) {
            return high;
        }
        return root(PH_ACCURACY, ph -> below.value(ph) - probability, low, high);
    }

    private static double root(double accuracy, UnivariateFunction function, double low, double high) {
        BracketingNthOrderBrentSolver solver = new BracketingNthOrderBrentSolver(1e-12, accuracy, 1e-12, 5);
        double root = solver.solve(MOST_EVALUATIONS, function, low, high);
        Solver.DOSE.solved(solver.getEvaluations());
        return root;
    }

    /**
     * How much of a reagent makes the probability of having passed a pH this large: of ending below it for an acid,
     * above it for a base.
     *
     * @return g, 0 where it is that large already; infinite where no amount does it
     */
    public double gramsFor(Reagent next, double ph, double probability) {
        UnivariateFunction missing = grams -> {
            double below = probabilityBelow(ph, next, grams);
            return (next.acid() ? below : 1 - below) - probability;
        };
        if (missing.value(0) >= 0) {
            return 0;
        }
        double perGram = next.meqPerGram(ph);
        if (next.acid() ? perGram <= 0 : perGram >= 0) {
            return Double.POSITIVE_INFINITY;
        }
        double largest = Math.max(1e-6, Math.abs(curve.bufferingMeqPerPh(ph, 1) / perGram) / 16);
        for (int i = 0; missing.value(largest) < 0; i++) {
            if (i == MOST_DOUBLINGS) {
                return Double.POSITIVE_INFINITY;
            }
            largest *= 2;
        }
        return root(1e-12, missing, 0, largest);
    }

    /** The factor on the buffering is below this with a probability, 0 to 1 exclusive. */
    public double scaleQuantile(double probability) {
        UnivariateFunction below = logScale -> {
            double sum = 0;
            for (Node node : nodes) {
                sum += node.weight * NormalIntegral.below((logScale - Math.log(node.scale)) / node.relativeWidth);
            }
            return sum - probability;
        };
        double low = Math.log(nodes[0].scale) - 10 * nodes[0].relativeWidth;
        double high = Math.log(nodes[nodes.length - 1].scale) + 10 * nodes[0].relativeWidth;
        return Math.exp(root(1e-9, below, low, high));
    }

    /** Mean and standard deviation of the logarithm of the factor. */
    double[] logScaleMoments() {
        double mean = 0;
        double square = 0;
        for (Node node : nodes) {
            double x = Math.log(node.scale);
            mean += node.weight * x;
            square += node.weight * (x * x + node.relativeWidth * node.relativeWidth);
        }
        return new double[] {mean, Math.sqrt(Math.max(0, square - mean * mean))};
    }
}

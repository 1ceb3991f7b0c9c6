package tunside.dosing;

import java.util.function.DoubleUnaryOperator;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;
import org.hipparchus.distribution.continuous.NormalDistribution;

/**
 * What is known of a liquid: a grid over the factor on its buffering, and on each grid point a normal belief about the
 * true pH now. Additions move the pH by the non-linear balance; readings re-weigh the grid by Bayes and correct the pH as
 * a Kalman filter does. Deterministic: no random numbers. Immutable.
 *
 * <p>The grid has {@value #POINTS} points over four standard deviations of the logarithm to each side.
 */
public final class Belief {
    private static final int POINTS = 41;
    private static final double REACH = 4;
    private static final NormalDistribution NORMAL = new NormalDistribution();
    private static final int MOST_EVALUATIONS = 200;

    private final Titratable liquid;
    private final double relativeAcidUncertainty;
    private final double millimoles;
    private final double[] scales;
    private final double[] weights;
    private final double[] means;
    private final double[] variances;

    private Belief(
            Titratable liquid,
            double relativeAcidUncertainty,
            double millimoles,
            double[] scales,
            double[] weights,
            double[] means,
            double[] variances) {
        this.liquid = liquid;
        this.relativeAcidUncertainty = relativeAcidUncertainty;
        this.millimoles = millimoles;
        this.scales = scales;
        this.weights = weights;
        this.means = means;
        this.variances = variances;
    }

    /**
     * What is known after the first reading.
     *
     * @param liquid how it answers acid
     * @param first reading; nothing is known of the pH before it
     * @param relativeAcidUncertainty standard uncertainty of the acting acid in each addition, relative, 0 to 0.5
     */
    public static Belief first(Titratable liquid, DoseEvent.Reading first, double relativeAcidUncertainty) {
        double[] scales = new double[POINTS];
        double[] weights = new double[POINTS];
        double[] means = new double[POINTS];
        double[] variances = new double[POINTS];
        double sum = 0;
        for (int i = 0; i < POINTS; i++) {
            double sds = REACH * (2.0 * i / (POINTS - 1) - 1);
            scales[i] = Math.exp(liquid.logSd() * sds);
            weights[i] = NORMAL.density(sds);
            sum += weights[i];
            means[i] = first.ph();
            variances[i] = first.standardUncertainty() * first.standardUncertainty();
        }
        for (int i = 0; i < POINTS; i++) {
            weights[i] /= sum;
        }
        return new Belief(liquid, relativeAcidUncertainty, 0, scales, weights, means, variances);
    }

    /** What is known after an event. */
    public Belief after(DoseEvent event) {
        if (event instanceof DoseEvent.Added added) {
            return afterAcid(added.millimoles());
        }
        return afterReading((DoseEvent.Reading) event);
    }

    /** What is known after more acid, before any reading. */
    public Belief afterAcid(double added) {
        double[] newMeans = new double[POINTS];
        double[] newVariances = new double[POINTS];
        for (int i = 0; i < POINTS; i++) {
            double step = Math.sqrt(variances[i]);
            newMeans[i] = liquid.after(scales[i], means[i], millimoles, added);
            double above = liquid.after(scales[i], means[i] + step, millimoles, added);
            double gain = step == 0 ? 1 : (above - newMeans[i]) / step;
            double more = liquid.after(scales[i], means[i], millimoles, added * (1 + relativeAcidUncertainty));
            double byAcid = more - newMeans[i];
            newVariances[i] = gain * gain * variances[i] + byAcid * byAcid;
        }
        return new Belief(liquid, relativeAcidUncertainty, millimoles + added, scales, weights, newMeans, newVariances);
    }

    private Belief afterReading(DoseEvent.Reading reading) {
        double noise = reading.standardUncertainty() * reading.standardUncertainty();
        double[] logs = new double[POINTS];
        double[] newMeans = new double[POINTS];
        double[] newVariances = new double[POINTS];
        double largest = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < POINTS; i++) {
            double spread = variances[i] + noise;
            double surprise = reading.ph() - means[i];
            logs[i] = Math.log(weights[i]) - 0.5 * Math.log(spread) - 0.5 * surprise * surprise / spread;
            largest = Math.max(largest, logs[i]);
            double gain = variances[i] / spread;
            newMeans[i] = means[i] + gain * surprise;
            newVariances[i] = (1 - gain) * variances[i];
        }
        double[] newWeights = new double[POINTS];
        double sum = 0;
        for (int i = 0; i < POINTS; i++) {
            newWeights[i] = Math.exp(logs[i] - largest);
            sum += newWeights[i];
        }
        for (int i = 0; i < POINTS; i++) {
            newWeights[i] /= sum;
        }
        return new Belief(liquid, relativeAcidUncertainty, millimoles, scales, newWeights, newMeans, newVariances);
    }

    /** Mean of the true pH now. */
    public double ph() {
        double sum = 0;
        for (int i = 0; i < POINTS; i++) {
            sum += weights[i] * means[i];
        }
        return sum;
    }

    /** Standard deviation of the true pH now. */
    public double standardUncertainty() {
        double mean = ph();
        double sum = 0;
        for (int i = 0; i < POINTS; i++) {
            sum += weights[i] * (variances[i] + (means[i] - mean) * (means[i] - mean));
        }
        return Math.sqrt(sum);
    }

    /** Probability that the true pH now lies below a value. */
    public double probabilityBelow(double ph) {
        double sum = 0;
        for (int i = 0; i < POINTS; i++) {
            double sd = Math.sqrt(variances[i]);
            sum += weights[i]
                    * (sd == 0 ? (means[i] < ph ? 1 : 0) : NORMAL.cumulativeProbability((ph - means[i]) / sd));
        }
        return sum;
    }

    /** The pH below which the true one lies with a probability, 0 to 1 exclusive. */
    public double quantile(double probability) {
        return root(ph -> probabilityBelow(ph) - probability, -1, 15);
    }

    /** Mean factor on the buffering (of its logarithm, so a median). */
    public double scale() {
        return Math.exp(logMean());
    }

    /** Standard deviation of the logarithm of the factor. */
    public double logScaleSd() {
        double mean = logMean();
        double sum = 0;
        for (int i = 0; i < POINTS; i++) {
            double off = Math.log(scales[i]) - mean;
            sum += weights[i] * off * off;
        }
        return Math.sqrt(sum);
    }

    private double logMean() {
        double sum = 0;
        for (int i = 0; i < POINTS; i++) {
            sum += weights[i] * Math.log(scales[i]);
        }
        return sum;
    }

    /** Acid added since the first reading, mmol. */
    public double millimoles() {
        return millimoles;
    }

    /**
     * Most acid that may be added now so that the pH ends below a limit with no more than a probability.
     *
     * @param limitPh the limit
     * @param probability 0 to 1 exclusive
     * @param most the search ends there, mmol
     * @return mmol, from 0 to {@code most}
     */
    public double acidFor(double limitPh, double probability, double most) {
        DoubleUnaryOperator excess = acid -> afterAcid(acid).probabilityBelow(limitPh) - probability;
        if (excess.applyAsDouble(0) >= 0) {
            return 0;
        }
        return excess.applyAsDouble(most) <= 0 ? most : root(excess, 0, most);
    }

    private static double root(DoubleUnaryOperator function, double low, double high) {
        return new BracketingNthOrderBrentSolver(1e-9, 1e-9, 1e-9, 5)
                .solve(MOST_EVALUATIONS, function::applyAsDouble, low, high);
    }
}

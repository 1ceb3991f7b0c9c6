package tunside.dosing;

/** How much of a reagent brings a liquid to a pH: normal at each possible buffering. */
final class GramsNeeded implements Distribution {
    private static final double BEYOND_ALL_REASON = 1e6;

    private final Bells bells;
    private final double[] means;
    private final double[] variances;
    private final double relativeVariance;
    private final double most;
    private final Quantiles quantiles;

    /**
     * @param bells probabilities of the bufferings
     * @param means amount that each buffering needs, g
     * @param variances of each, g^2
     * @param relativeUncertainty of what a gram does
     */
    GramsNeeded(Bells bells, double[] means, double[] variances, double relativeUncertainty) {
        this.bells = bells;
        this.means = means;
        this.variances = variances;
        this.relativeVariance = relativeUncertainty * relativeUncertainty;
        double largest = 0;
        for (int i = 0; i < means.length; i++) {
            largest = Math.max(largest, Math.abs(means[i]) + Math.sqrt(variances[i]));
        }
        this.most = BEYOND_ALL_REASON * largest;
        this.quantiles = new Quantiles(this, 0, most, bells.mean(means));
    }

    /** Probability that less than this is needed. */
    @Override
    public Point at(double grams) {
        double[] deviations = new double[means.length];
        double[] slopes = new double[means.length];
        for (int i = 0; i < means.length; i++) {
            double perDeviation = 1 / Math.sqrt(variances[i] + relativeVariance * grams * grams);
            deviations[i] = (grams - means[i]) * perDeviation;
            slopes[i] = (1 - deviations[i] * perDeviation * relativeVariance * grams) * perDeviation;
        }
        return bells.below(deviations, slopes);
    }

    /** This or less is needed with a probability: g, 0 where nothing is, infinite where no amount does it. */
    double grams(double probability) {
        double grams = quantiles.at(probability);
        return grams < most ? grams : Double.POSITIVE_INFINITY;
    }
}

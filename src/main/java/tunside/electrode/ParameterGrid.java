package tunside.electrode;

/**
 * The values at which the parameter of a cause is tried, with what each weighs before any reading: a normal distribution
 * about 0, cut off at the ends, by the trapezoid rule.
 */
final class ParameterGrid {
    /** For a cause without a parameter. */
    static final ParameterGrid NONE = new ParameterGrid(new double[1], new double[] {1});

    /** Of the largest grid. */
    static final int POINTS = 121;

    private final double[] values;
    private final double[] priors;

    private ParameterGrid(double[] values, double[] priors) {
        this.values = values;
        this.priors = priors;
    }

    /** Evenly from {@code low} to {@code high}; the priors sum to 1. */
    static ParameterGrid of(double low, double high, double standardDeviation) {
        double[] values = new double[POINTS];
        double[] priors = new double[POINTS];
        double total = 0;
        for (int i = 0; i < POINTS; i++) {
            values[i] = low + (high - low) * i / (POINTS - 1);
            double z = values[i] / standardDeviation;
            priors[i] = Math.exp(-0.5 * z * z) * (i == 0 || i == POINTS - 1 ? 0.5 : 1);
            total += priors[i];
        }
        for (int i = 0; i < POINTS; i++) {
            priors[i] /= total;
        }
        return new ParameterGrid(values, priors);
    }

    int size() {
        return values.length;
    }

    double value(int point) {
        return values[point];
    }

    double prior(int point) {
        return priors[point];
    }

    /** Logarithm of the sum of exponentials, without overflow. */
    static double logSum(double[] logs) {
        double largest = Double.NEGATIVE_INFINITY;
        for (double log : logs) {
            largest = Math.max(largest, log);
        }
        if (largest == Double.NEGATIVE_INFINITY) {
            return largest;
        }
        double sum = 0;
        for (double log : logs) {
            sum += Math.exp(log - largest);
        }
        return largest + Math.log(sum);
    }
}

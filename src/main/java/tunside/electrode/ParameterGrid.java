package tunside.electrode;

/**
 * The values at which the parameter of a cause is tried, with what each weighs before any reading: a normal distribution
 * about 0, cut off at the ends, by a trapezoid rule (Gregory's).
 */
final class ParameterGrid {
    /** For a cause without a parameter. */
    static final ParameterGrid NONE = new ParameterGrid(new double[1], new double[] {1});

    /** Weights of the first and the last points of a trapezoid, so that also what ends abruptly is summed to the fourth order. */
    private static final double[] ENDS = {3.0 / 8, 7.0 / 6, 23.0 / 24};

    private final double[] values;
    private final double[] priors;

    private ParameterGrid(double[] values, double[] priors) {
        this.values = values;
        this.priors = priors;
    }

    /**
     * Evenly from {@code low} to {@code high}; the priors sum to 1.
     *
     * @param points at least six
     */
    static ParameterGrid even(double low, double high, double standardDeviation, int points) {
        double[] values = new double[points];
        double[] widths = new double[points];
        for (int i = 0; i < points; i++) {
            values[i] = low + (high - low) * i / (points - 1);
            widths[i] = 1;
        }
        return new ParameterGrid(values, priors(values, widths, standardDeviation));
    }

    /** From 0 to {@code high}, ever closer towards 0, where a parameter that cannot be negative mostly lies: by squares. */
    static ParameterGrid fromZero(double high, double standardDeviation, int points) {
        double[] values = new double[points];
        double[] widths = new double[points];
        for (int i = 0; i < points; i++) {
            widths[i] = (double) i / (points - 1);
            values[i] = high * widths[i] * widths[i];
        }
        return new ParameterGrid(values, priors(values, widths, standardDeviation));
    }

    private static double[] priors(double[] values, double[] widths, double standardDeviation) {
        double[] priors = new double[values.length];
        double total = 0;
        for (int i = 0; i < priors.length; i++) {
            double z = values[i] / standardDeviation;
            priors[i] = Math.exp(-0.5 * z * z) * widths[i] * weight(Math.min(i, priors.length - 1 - i));
            total += priors[i];
        }
        for (int i = 0; i < priors.length; i++) {
            priors[i] /= total;
        }
        return priors;
    }

    private static double weight(int fromEnd) {
        return fromEnd < ENDS.length ? ENDS[fromEnd] : 1;
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

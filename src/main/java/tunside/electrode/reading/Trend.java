package tunside.electrode.reading;

import java.util.List;

/**
 * A straight line through a series that shows no curve.
 *
 * @param perS change of pH per s
 * @param perSUncertainty its standard uncertainty
 * @param mean of the readings that count
 * @param meanUncertainty its standard uncertainty
 * @param noisePh standard deviation of one reading about the line; for a short series mostly what one reading is said to have
 */
record Trend(double perS, double perSUncertainty, double mean, double meanUncertainty, double noisePh) {
    /** Weight of the stated scatter against that of the series, in readings. */
    private static final double PRIOR_FREEDOM = 2;

    private static final int PARAMETERS = 2;

    /**
     * Least squares over the readings that are not left out.
     *
     * @param since rising, s, at least two
     * @param ph as many
     * @param outliers left out, by rising index; two readings at least are left
     * @param readingPh standard uncertainty of one reading, above 0
     */
    static Trend of(double[] since, double[] ph, List<Settling.Outlier> outliers, double readingPh) {
        boolean[] out = new boolean[ph.length];
        outliers.forEach(outlier -> out[outlier.index()] = true);
        int counted = ph.length - outliers.size();
        double middle = mean(since, out, counted);
        double mean = mean(ph, out, counted);
        double spread = 0;
        double together = 0;
        for (int i = 0; i < ph.length; i++) {
            if (!out[i]) {
                spread += (since[i] - middle) * (since[i] - middle);
                together += (since[i] - middle) * (ph[i] - mean);
            }
        }
        double perS = together / spread;
        double squares = 0;
        for (int i = 0; i < ph.length; i++) {
            if (!out[i]) {
                double residual = ph[i] - mean - perS * (since[i] - middle);
                squares += residual * residual;
            }
        }
        double noise =
                Math.sqrt((PRIOR_FREEDOM * readingPh * readingPh + squares) / (PRIOR_FREEDOM + counted - PARAMETERS));
        return new Trend(perS, noise / Math.sqrt(spread), mean, noise / Math.sqrt(counted), noise);
    }

    private static double mean(double[] values, boolean[] out, int counted) {
        double sum = 0;
        for (int i = 0; i < values.length; i++) {
            sum += out[i] ? 0 : values[i];
        }
        return sum / counted;
    }
}

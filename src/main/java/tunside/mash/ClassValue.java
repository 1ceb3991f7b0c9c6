package tunside.mash;

/**
 * A value of a malt class from published measurements.
 *
 * @param value mean, or constant of a fit
 * @param standardDeviation of single lots
 * @param n lots measured; 0 where there is no published data
 * @param source id of the publication
 */
@SuppressWarnings("JavaLangClash") // of a malt class
public record ClassValue(double value, double standardDeviation, int n, String source) {

    /** Standard uncertainty of one more lot: its own scatter and that of the mean of {@code n}. */
    public double lotUncertainty() {
        return n == 0 ? standardDeviation : standardDeviation * Math.sqrt(1 + 1.0 / n);
    }
}

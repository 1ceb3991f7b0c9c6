package tunside.electrode;

import java.util.List;
import java.util.stream.IntStream;
import org.hipparchus.distribution.continuous.ChiSquaredDistribution;
import tunside.quantity.Temperature;

/**
 * The line through the readings of a session, at their mean temperature.
 *
 * <p>A buffer at another temperature counts with {@code x = (pH - 7) k(T) / k(mean)}: its potential is that of an
 * electrode whose slope follows the Nernst slope and whose lines cross at pH 7.
 *
 * @param temperature mean of the readings
 * @param x of each reading
 * @param potentialsMv of each reading
 * @param bufferUncertainties in x, of each reading
 * @param line potential against x; variances widened where the readings scatter more than they should
 * @param consistent whether the scatter is within what the uncertainties allow (chi-squared, 95 %)
 * @param largestChiSquared the 95 % quantile; zero for two points
 */
public record CalibrationLine(
        Temperature temperature,
        List<Double> x,
        List<Double> potentialsMv,
        List<Double> bufferUncertainties,
        StraightLine line,
        boolean consistent,
        double largestChiSquared) {
    /** By degrees of freedom, from none on. */
    private static final double[] LARGEST_CHI_SQUARED = IntStream.range(0, CalibrationSession.MOST - 1)
            .mapToDouble(freedom -> freedom == 0
                    ? 0
                    : new ChiSquaredDistribution(freedom)
                            .inverseCumulativeProbability(ElectrodeLimits.of("residual-confidence")))
            .toArray();

    /**
     * Fits the line (ISO-28037-2010; the buffer's uncertainty is carried to the potential by the slope).
     *
     * @throws IllegalArgumentException if all buffers are the same
     */
    public static CalibrationLine of(CalibrationSession session) {
        List<BufferReading> readings = session.readings();
        int n = readings.size();
        double degrees = 0;
        for (BufferReading reading : readings) {
            degrees += reading.temperature().celsius();
        }
        Temperature mean = new Temperature(degrees / n);
        double[] x = new double[n];
        double[] uX = new double[n];
        double[] y = new double[n];
        double[] uY = new double[n];
        for (int i = 0; i < n; i++) {
            BufferReading reading = readings.get(i);
            BufferValue buffer = reading.buffer();
            double ratio = reading.temperature().kelvin() / mean.kelvin();
            x[i] = (buffer.ph() - Calibration.OFFSET_PH) * ratio;
            uX[i] = buffer.standardUncertainty() * ratio;
            y[i] = reading.potential().millivolts();
            uY[i] = Math.max(session.uncertainty().potentialMv(), 1e-6);
        }
        StraightLine line = StraightLineFit.effectivelyWeighted(x, uX, y, uY);
        int freedom = line.degreesOfFreedom();
        double largest = LARGEST_CHI_SQUARED[freedom];
        boolean consistent = freedom == 0 || line.chiSquared() <= largest;
        return new CalibrationLine(
                mean,
                list(x),
                list(y),
                list(uX),
                consistent ? line : line.widened(line.chiSquared() / freedom),
                consistent,
                largest);
    }

    private static List<Double> list(double[] values) {
        return java.util.Arrays.stream(values).boxed().toList();
    }

    /** Loss of potential per pH unit, mV; negative if the potential rises with pH. */
    public double slopeMvPerPh() {
        return -line.slope();
    }

    /** As a percentage of the ideal slope. */
    public double slopePercent() {
        return 100 * slopeMvPerPh() / idealMvPerPh();
    }

    /** Standard uncertainty of {@link #slopePercent}. */
    public double slopePercentUncertainty() {
        return 100 * Math.sqrt(line.slopeVariance()) / idealMvPerPh();
    }

    /** The ideal slope at the line's temperature. */
    public double idealMvPerPh() {
        return NernstSlope.millivoltsPerPh(temperature);
    }

    /** Potential at pH 7, mV. */
    public double offsetMv() {
        return line.intercept();
    }

    /** Standard uncertainty of {@link #offsetMv}. */
    public double offsetUncertaintyMv() {
        return Math.sqrt(line.interceptVariance());
    }

    /** pH at 0 mV with its standard uncertainty. */
    public StraightLine.ReadBack zeroPoint() {
        StraightLine.ReadBack x = line.readBack(0, 0);
        return new StraightLine.ReadBack(Calibration.OFFSET_PH + x.value(), x.standardUncertainty());
    }

    /** Potential of a reading less that of the line, mV. */
    public double residualMv(int reading) {
        return potentialsMv.get(reading) - line.at(x.get(reading));
    }

    /** What the line reads in the cup of a reading less what the buffer is, pH. */
    public double errorPh(int reading) {
        return -residualMv(reading) / slopeMvPerPh();
    }

    /** The largest absolute error in pH. */
    public double largestErrorPh() {
        double largest = 0;
        for (int i = 0; i < x.size(); i++) {
            largest = Math.max(largest, Math.abs(errorPh(i)));
        }
        return largest;
    }

    /** Whether a calibration can be made of it: the potential falls with pH at a believable rate. */
    public boolean usable() {
        return slopeMvPerPh() >= 1 && slopeMvPerPh() <= 120 && Math.abs(offsetMv()) <= 1000;
    }

    /** The calibration that this line is. */
    public Calibration calibration(CalibrationSession session, Verdict verdict) {
        return new Calibration(
                session.readout().signal(),
                temperature,
                slopeMvPerPh(),
                offsetMv(),
                line.slopeVariance(),
                line.interceptVariance(),
                -line.covariance(),
                IsothermalPoint.OFFSET_KEPT,
                session.compensation(),
                session.lowestPh(),
                session.highestPh(),
                verdict,
                Calibration.MODEL);
    }
}

package tunside.electrode.reading;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.hipparchus.distribution.continuous.NormalDistribution;
import tunside.electrode.CalibratedPh;
import tunside.electrode.Calibration;
import tunside.electrode.Verdict;
import tunside.finding.Finding;
import tunside.quantity.Temperature;

/**
 * What a series of readings means.
 *
 * @param reading that was judged
 * @param settling of the series
 * @param temperature of the sample at the last reading
 * @param ph of the sample at that temperature, drift taken off
 * @param phAt20 the same brought to 20 degC
 * @param drift at the reading; empty where no buffer was re-checked
 * @param shares standard uncertainty that each cause brings to {@code phAt20}, pH; all but the last make that of {@code ph}
 * @param probabilityBelow that the true pH at 20 degC lies below the range
 * @param probabilityAbove that it lies above
 * @param verdict on which side it is, with enough certainty
 * @param findings checks; pointers are relative to the request
 * @param advice what to do
 */
public record ReadingJudgement(
        SampleReading reading,
        Settling settling,
        Temperature temperature,
        double ph,
        double phAt20,
        Optional<Drift> drift,
        Map<DoubtCause, Double> shares,
        double probabilityBelow,
        double probabilityAbove,
        ReadingVerdict verdict,
        List<Finding> findings,
        List<ReadingAdvice> advice) {
    private static final NormalDistribution NORMAL = new NormalDistribution(0, 1);
    private static final double SMALLEST = 1e-9;

    public ReadingJudgement {
        shares = new EnumMap<>(shares);
        findings = List.copyOf(findings);
        advice = List.copyOf(advice);
    }

    /** Judges a series. */
    public static ReadingJudgement of(SampleReading reading) {
        Calibration calibration = reading.calibration().orElseGet(() -> Calibration.ideal(reading.compensation()));
        TemperatureEffect effect = TemperatureEffect.of(reading.liquid());
        Temperature temperature = reading.last().temperature();
        Settling settling = settling(reading, calibration, effect);
        Optional<Drift> drift = reading.rechecks().isEmpty()
                ? Optional.empty()
                : Optional.of(Drift.at(
                        reading.sinceCalibrationS().orElseThrow(),
                        reading.rechecks(),
                        calibration,
                        reading.uncertainty()));
        double ph = settling.ph() - drift.map(Drift::ph).orElse(0.0);
        Temperature reference = new Temperature(ReadingLimits.of("reference-temperature"));
        double phAt20 = effect.brought(ph, temperature, reference);
        Map<DoubtCause, Double> shares = shares(reading, calibration, settling, drift);
        shares.put(DoubtCause.TEMPERATURE_EFFECT, effect.uncertainty(temperature, reference));
        double uncertainty = Math.max(SMALLEST, root(shares));
        double below = reading.range().low().isPresent()
                ? NORMAL.cumulativeProbability((reading.range().low().getAsDouble() - phAt20) / uncertainty)
                : 0;
        double above = reading.range().high().isPresent()
                ? NORMAL.cumulativeProbability((phAt20 - reading.range().high().getAsDouble()) / uncertainty)
                : 0;
        ReadingVerdict verdict = verdict(reading, below, above);
        List<Finding> findings = ReadingChecks.of(reading, calibration, settling, drift, ph);
        return new ReadingJudgement(
                reading,
                settling,
                temperature,
                ph,
                phAt20,
                drift,
                shares,
                below,
                above,
                verdict,
                findings,
                ReadingAdvice.of(reading, settling, temperature, drift, verdict, findings));
    }

    /** Standard uncertainty at the sample's own temperature. */
    public double standardUncertainty() {
        Map<DoubtCause, Double> own = new EnumMap<>(shares);
        own.remove(DoubtCause.TEMPERATURE_EFFECT);
        return root(own);
    }

    /** Standard uncertainty of the pH brought to 20 degC. */
    public double standardUncertaintyAt20() {
        return root(shares);
    }

    /** Whether the reading can be relied on as far as the electrode goes. */
    static boolean trusted(SampleReading reading) {
        return reading.calibration()
                .filter(calibration -> calibration.verdict() != Verdict.UNFIT)
                .isPresent();
    }

    /** The series, read through the calibration and brought to the temperature of its last reading. */
    private static Settling settling(SampleReading reading, Calibration calibration, TemperatureEffect effect) {
        int n = reading.points().size();
        double[] seconds = new double[n];
        double[] ph = new double[n];
        for (int i = 0; i < n; i++) {
            SamplePoint point = reading.points().get(i);
            seconds[i] = point.seconds();
            ph[i] = effect.brought(
                    calibration.ph(point.potential(), point.temperature()),
                    point.temperature(),
                    reading.last().temperature());
        }
        double readingPh = reading.uncertainty().potentialMv()
                / calibration.slopeMvPerPh(reading.last().temperature());
        return Settling.of(seconds, ph, reading.stepPh(), readingPh, reading.criterion());
    }

    private static Map<DoubtCause, Double> shares(
            SampleReading reading, Calibration calibration, Settling settling, Optional<Drift> drift) {
        Temperature temperature = reading.last().temperature();
        CalibratedPh read =
                calibration.read(calibration.potential(settling.ph(), temperature), temperature, reading.uncertainty());
        Map<DoubtCause, Double> shares = new EnumMap<>(DoubtCause.class);
        shares.put(DoubtCause.SETTLING, settling.standardUncertainty());
        shares.put(DoubtCause.CALIBRATION, read.fromLine());
        shares.put(DoubtCause.POTENTIAL, read.fromPotential());
        shares.put(DoubtCause.TEMPERATURE, read.fromTemperature());
        shares.put(DoubtCause.LIQUID_JUNCTION, read.fromLiquidJunction());
        shares.put(DoubtCause.ISOTHERMAL_POINT, read.fromIsothermalPoint());
        shares.put(DoubtCause.DRIFT, drift.map(Drift::standardUncertainty).orElse(0.0));
        shares.put(DoubtCause.UNCALIBRATED, trusted(reading) ? 0 : ReadingLimits.of("uncalibrated"));
        return shares;
    }

    private static ReadingVerdict verdict(SampleReading reading, double below, double above) {
        double sure = ReadingLimits.of("sure-enough");
        if (!trusted(reading)) {
            return ReadingVerdict.CANNOT_TELL;
        }
        if (below >= sure) {
            return ReadingVerdict.BELOW;
        }
        if (above >= sure) {
            return ReadingVerdict.ABOVE;
        }
        return 1 - below - above >= sure ? ReadingVerdict.IN_RANGE : ReadingVerdict.CANNOT_TELL;
    }

    private static double root(Map<DoubtCause, Double> shares) {
        double sum = 0;
        for (double share : shares.values()) {
            sum += share * share;
        }
        return Math.sqrt(sum);
    }
}

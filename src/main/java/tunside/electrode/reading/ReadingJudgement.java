package tunside.electrode.reading;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.hipparchus.distribution.continuous.NormalDistribution;
import tunside.electrode.CalibratedPh;
import tunside.electrode.Calibration;
import tunside.electrode.IsothermalPoint;
import tunside.electrode.Verdict;
import tunside.finding.Finding;
import tunside.quantity.Potential;
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
 * @param sharesAtSample standard uncertainty that each cause brings to {@code ph}
 * @param shares standard uncertainty that each cause brings to {@code phAt20}
 * @param compensation what the meter's temperature compensation did
 * @param isothermalDifferencePh {@code ph} with the other assumption about the isothermal point, less {@code ph}
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
        Map<DoubtCause, Double> sharesAtSample,
        Map<DoubtCause, Double> shares,
        CompensationEffect compensation,
        double isothermalDifferencePh,
        double probabilityBelow,
        double probabilityAbove,
        ReadingVerdict verdict,
        List<Finding> findings,
        List<ReadingAdvice> advice) {
    private static final NormalDistribution NORMAL = new NormalDistribution(0, 1);
    private static final double SMALLEST = 1e-9;

    public ReadingJudgement {
        sharesAtSample = new EnumMap<>(sharesAtSample);
        shares = new EnumMap<>(shares);
        findings = List.copyOf(findings);
        advice = List.copyOf(advice);
    }

    /** Judges a series. */
    public static ReadingJudgement of(SampleReading reading) {
        Calibration calibration = reading.used();
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
        Temperature reference = TemperatureEffect.reference();
        double phAt20 = effect.brought(ph, temperature, reference);
        Potential potential = calibration.potential(settling.ph(), temperature);
        Map<DoubtCause, Double> own = shares(reading, calibration, settling, drift);
        Map<DoubtCause, Double> shares = new EnumMap<>(own);
        shares.put(
                DoubtCause.TEMPERATURE,
                Math.abs((Calibration.OFFSET_PH - settling.ph()) / temperature.kelvin() + effect.fallPhPerK())
                        * reading.uncertainty().temperatureK());
        shares.put(DoubtCause.TEMPERATURE_EFFECT, effect.uncertainty(temperature, reference));
        CompensationEffect compensation = CompensationEffect.of(
                calibration.signal(), reading.compensation(), reading.last().potential(), temperature);
        double isothermal =
                calibration.with(calibration.isothermalPoint().other()).ph(potential, temperature) - settling.ph();
        double uncertainty = Math.max(SMALLEST, root(shares));
        double below = reading.range().low().isPresent()
                ? NORMAL.cumulativeProbability((reading.range().low().getAsDouble() - phAt20) / uncertainty)
                : 0;
        double above = reading.range().high().isPresent()
                ? NORMAL.cumulativeProbability((phAt20 - reading.range().high().getAsDouble()) / uncertainty)
                : 0;
        ReadingVerdict verdict = verdict(reading, below, above);
        List<Finding> findings = ReadingChecks.of(reading, calibration, settling, drift, ph, compensation, uncertainty);
        return new ReadingJudgement(
                reading,
                settling,
                temperature,
                ph,
                phAt20,
                drift,
                own,
                shares,
                compensation,
                isothermal,
                below,
                above,
                verdict,
                findings,
                ReadingAdvice.of(reading, settling, temperature, drift, verdict, findings));
    }

    /** Standard uncertainty at the sample's own temperature. */
    public double standardUncertainty() {
        return root(sharesAtSample);
    }

    /** Standard uncertainty of the pH brought to 20 degC. */
    public double standardUncertaintyAt20() {
        return root(shares);
    }

    /** What was assumed, in words. */
    public List<ReadingWord> assumptions() {
        List<String> keys = new ArrayList<>();
        keys.add(
                settling.timeConstantS().isPresent()
                        ? "settling"
                        : reading.points().size() == 1 ? "one-reading" : "no-curve");
        keys.add("slope");
        Calibration used = reading.used();
        keys.add(used.isothermalPoint() == IsothermalPoint.OFFSET_KEPT ? "offset-kept" : "zero-point-kept");
        if (!trusted(reading)) {
            keys.add("uncalibrated");
        }
        keys.add(reading.liquid().name().toLowerCase(Locale.ROOT));
        if (reading.calibration().isPresent()) {
            keys.add(drift.isPresent() ? "drift" : "unseen-drift");
        }
        keys.add("normal");
        if (reading.liquid() != SampleLiquid.LIQUOR) {
            keys.add("conventional");
        }
        return keys.stream().map(key -> ReadingWord.of("assumption", key)).toList();
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
        shares.put(DoubtCause.DISPLAY, reading.stepPh() / Math.sqrt(12));
        shares.put(DoubtCause.TEMPERATURE, read.fromTemperature());
        shares.put(DoubtCause.LIQUID_JUNCTION, read.fromLiquidJunction());
        shares.put(DoubtCause.ISOTHERMAL_POINT, read.fromIsothermalPoint());
        shares.put(
                DoubtCause.DRIFT,
                drift.map(Drift::standardUncertainty)
                        .orElseGet(() -> reading.calibration().isEmpty()
                                ? 0
                                : Drift.unseen(reading.sinceCalibrationS().orElse(ReadingLimits.of("unstated-age")))));
        shares.put(DoubtCause.UNCALIBRATED, trusted(reading) ? 0 : ReadingLimits.of("uncalibrated"));
        shares.put(DoubtCause.TEMPERATURE_EFFECT, 0.0);
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

package tunside.electrode.reading;

import java.util.Comparator;
import java.util.List;
import tunside.electrode.BufferValue;
import tunside.electrode.Calibration;
import tunside.electrode.ReadingUncertainty;

/**
 * Drift of the electrode at the time of a reading, interpolated in time between the calibration and the re-checks.
 *
 * <p>It may have come evenly or in one step at any moment; both have the same mean. The uncertainty is that of the step: a
 * change {@code d} over an interval of which the share {@code f} has passed has the deviation {@code |d| sqrt(f (1 - f))}.
 *
 * @param ph drift at the reading, to be subtracted; 0 right after the calibration
 * @param standardUncertainty of it
 * @param largestPh largest drift found in a re-check, signed
 */
public record Drift(double ph, double standardUncertainty, double largestPh) {

    private static final double SECONDS_PER_DAY = 86_400;

    /** A re-check's drift. */
    private record Known(double seconds, double ph, double uncertainty) {}

    /**
     * At a time after the calibration; after the last re-check its drift is kept, and what goes unseen grows.
     *
     * @param rechecks at least one, in any order
     */
    public static Drift at(
            double sinceCalibrationS, List<Recheck> rechecks, Calibration calibration, ReadingUncertainty uncertainty) {
        List<Known> known = rechecks.stream()
                .map(recheck -> known(recheck, calibration, uncertainty))
                .sorted(Comparator.comparingDouble(Known::seconds))
                .toList();
        double largest = known.stream()
                .mapToDouble(Known::ph)
                .boxed()
                .max(Comparator.comparingDouble(Math::abs))
                .orElseThrow();
        Known before = new Known(0, 0, 0);
        for (Known after : known) {
            if (sinceCalibrationS <= after.seconds) {
                double share = (sinceCalibrationS - before.seconds) / (after.seconds - before.seconds);
                double change = after.ph - before.ph;
                return new Drift(
                        before.ph + share * change,
                        Math.sqrt(square((1 - share) * before.uncertainty)
                                + square(share * after.uncertainty)
                                + change * change * share * (1 - share)),
                        largest);
            }
            before = after;
        }
        return new Drift(
                before.ph, Math.hypot(before.uncertainty, unseen(sinceCalibrationS - before.seconds)), largest);
    }

    /** Standard uncertainty of what nobody saw drift in a time, pH: a rectangular distribution that grows with time. */
    static double unseen(double seconds) {
        return ReadingLimits.of("unseen-drift") * seconds / SECONDS_PER_DAY / Math.sqrt(3);
    }

    private static Known known(Recheck recheck, Calibration calibration, ReadingUncertainty uncertainty) {
        BufferValue buffer = recheck.cup().value(recheck.temperature());
        double read = calibration.ph(recheck.potential(), recheck.temperature());
        double repeat = uncertainty.potentialMv() / calibration.slopeMvPerPh(recheck.temperature());
        return new Known(
                recheck.sinceCalibrationS(), read - buffer.ph(), Math.hypot(buffer.standardUncertainty(), repeat));
    }

    private static double square(double value) {
        return value * value;
    }
}

package tunside.electrode.reading;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.distribution.continuous.TDistribution;

/**
 * How a series of readings settles.
 *
 * @param state what the series shows
 * @param ph value that it is heading for; the last reading where the series is too short to tell
 * @param standardUncertainty of that value, from scatter and from what may still be missing, pH
 * @param halfWidth90 half of its 90 % interval, pH: wider than 1.64 standard uncertainties where the readings are few
 * @param stillToComePh that value less what the curve says at the last reading
 * @param changePh what the curve changed in the criterion's window before the last reading, signed
 * @param timeConstantS of the approach, s; empty where no curve was fitted
 * @param waitS until the criterion is met, s; 0 where it is met, empty where unknown
 * @param noisePh standard deviation of one reading about the curve
 * @param outliers readings left out, by index, with their distance from the curve
 */
public record Settling(
        State state,
        double ph,
        double standardUncertainty,
        double halfWidth90,
        double stillToComePh,
        double changePh,
        OptionalDouble timeConstantS,
        OptionalDouble waitS,
        double noisePh,
        List<Outlier> outliers) {
    private static final double COVERAGE = 0.95;
    private static final double NORMAL_90 = new NormalDistribution(0, 1).inverseCumulativeProbability(COVERAGE);
    private static final double SHORTEST_S = 1e-9;

    /** What a series shows. */
    public enum State {
        /** The criterion is met. */
        SETTLED,
        /** A curve is found, and it goes on. */
        SETTLING,
        /** Too few readings, or too short a time, for a curve that can be believed. */
        TOO_SHORT
    }

    /** A reading left out. @param index from 0 @param distancePh from the curve */
    public record Outlier(int index, double distancePh) {}

    public Settling {
        outliers = List.copyOf(outliers);
    }

    /**
     * Judges a series.
     *
     * @param seconds rising
     * @param ph of the readings, all at one temperature
     * @param stepPh last digit of the display: scatter below what it rounds away is not believed
     * @param criterion when it counts as settled
     */
    public static Settling of(double[] seconds, double[] ph, double stepPh, SettlingCriterion criterion) {
        int n = ph.length;
        double rounding = stepPh / Math.sqrt(12);
        if (n < ReadingLimits.of("fewest-readings") || seconds[n - 1] - seconds[0] < SHORTEST_S) {
            return tooShort(seconds, ph, rounding, List.of());
        }
        double[] since = new double[n];
        for (int i = 0; i < n; i++) {
            since[i] = seconds[i] - seconds[0];
        }
        Approach approach = Approach.fit(since, ph, rounding);
        if (approach != null && approach.counted() > 3) {
            List<Outlier> outliers = outliers(approach, since, ph);
            boolean seen = approach.timeConstantS() <= ReadingLimits.of("longest-time-constant") * since[n - 1]
                    && Math.abs(approach.startPh()) > 2 * approach.noisePh()
                    && approach.endUncertainty() < Math.max(Math.abs(approach.startPh()), stepPh);
            if (seen) {
                return curve(approach, since[n - 1], rounding, criterion, outliers);
            }
        }
        return flat(since, ph, rounding, criterion);
    }

    private static Settling curve(
            Approach approach, double last, double rounding, SettlingCriterion criterion, List<Outlier> outliers) {
        double toCome = approach.endPh() - approach.at(last);
        double change = approach.at(last) - approach.at(Math.max(0, last - criterion.windowS()));
        double uncertainty = Math.hypot(approach.endUncertainty(), rounding / Math.sqrt(approach.counted()));
        double wait = wait(approach, last, criterion);
        boolean settled = last >= criterion.windowS() && wait <= 0;
        return new Settling(
                settled ? State.SETTLED : State.SETTLING,
                approach.endPh(),
                uncertainty,
                student(approach.counted() - 3) * uncertainty,
                toCome,
                change,
                OptionalDouble.of(approach.timeConstantS()),
                OptionalDouble.of(Math.max(0, Math.max(wait, criterion.windowS() - last))),
                approach.noisePh(),
                outliers);
    }

    /** Until both what is to come and the change over the window are small enough, s. */
    private static double wait(Approach approach, double last, SettlingCriterion criterion) {
        double tau = approach.timeConstantS();
        double toCome = Math.abs(approach.endPh() - approach.at(last));
        double inWindow = toCome * Math.expm1(criterion.windowS() / tau);
        double most = Math.max(toCome, last >= criterion.windowS() ? inWindow : toCome);
        return most <= criterion.changePh() ? 0 : tau * Math.log(most / criterion.changePh());
    }

    /** No curve is seen: either it stands still, or it drifts and nobody can say where to. */
    private static Settling flat(double[] since, double[] ph, double rounding, SettlingCriterion criterion) {
        int n = ph.length;
        double last = since[n - 1];
        double middle = Approach.median(ph);
        double[] residuals = new double[n];
        double[] weights = new double[n];
        for (int i = 0; i < n; i++) {
            residuals[i] = ph[i] - middle;
            weights[i] = 1;
        }
        double noise = Math.max(rounding, Approach.scale(residuals, weights));
        List<Outlier> outliers = new ArrayList<>();
        double sum = 0;
        double sumT = 0;
        double sumTt = 0;
        double sumTp = 0;
        int counted = 0;
        for (int i = 0; i < n; i++) {
            if (Math.abs(residuals[i]) > ReadingLimits.of("outlier-deviations") * noise) {
                outliers.add(new Outlier(i, residuals[i]));
                continue;
            }
            counted++;
            sum += ph[i];
            sumT += since[i];
            sumTt += since[i] * since[i];
            sumTp += since[i] * ph[i];
        }
        double spread = sumTt - sumT * sumT / counted;
        double slope = counted > 2 && spread > 0 ? (sumTp - sumT * sum / counted) / spread : 0;
        double slopeUncertainty = counted > 2 && spread > 0 ? noise / Math.sqrt(spread) : 0;
        double change = slope * Math.min(last, criterion.windowS());
        boolean still = Math.abs(slope) <= student(Math.max(1, counted - 2)) * slopeUncertainty
                || Math.abs(slope) * last <= criterion.changePh();
        if (!still || last < criterion.windowS()) {
            return tooShort(since, ph, rounding, outliers);
        }
        double uncertainty = Math.sqrt(
                noise * noise / counted + rounding * rounding / counted + square(slope * last / Math.sqrt(12)));
        return new Settling(
                State.SETTLED,
                sum / counted,
                uncertainty,
                student(counted - 1) * uncertainty,
                0,
                change,
                OptionalDouble.empty(),
                OptionalDouble.of(0),
                noise,
                outliers);
    }

    /** The last reading, with the doubt of one whose settling nobody saw, or of all the change so far if that is more. */
    private static Settling tooShort(double[] seconds, double[] ph, double rounding, List<Outlier> outliers) {
        int n = ph.length;
        int last = n - 1;
        for (Outlier outlier : outliers) {
            last = outlier.index() == last ? last - 1 : last;
        }
        int from = 0;
        while (outliers.stream().map(Outlier::index).toList().contains(from) && from < last) {
            from++;
        }
        double changed = ph[last] - ph[from];
        double uncertainty = Math.sqrt(square(ReadingLimits.of("one-reading")) + square(changed) + square(rounding));
        return new Settling(
                State.TOO_SHORT,
                ph[last],
                uncertainty,
                NORMAL_90 * uncertainty,
                0,
                changed,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                rounding,
                outliers);
    }

    private static List<Outlier> outliers(Approach approach, double[] since, double[] ph) {
        List<Outlier> outliers = new ArrayList<>();
        for (int i = 0; i < ph.length; i++) {
            if (approach.weights()[i] == 0) {
                outliers.add(new Outlier(i, approach.residual(since[i], ph[i])));
            }
        }
        return outliers;
    }

    private static double student(int freedom) {
        return new TDistribution(Math.max(1, freedom)).inverseCumulativeProbability(COVERAGE);
    }

    private static double square(double value) {
        return value * value;
    }
}

package tunside.electrode.reading;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoubleFunction;
import org.hipparchus.distribution.continuous.TDistribution;
import tunside.quantity.Interval90;

/**
 * How a series of readings settles.
 *
 * @param state what the series shows
 * @param ph value that it is heading for; the last reading where the series does not tell
 * @param standardUncertainty of that value, from scatter and from what may still be missing, pH; widened where the readings
 *     are few, so that 1.645 of it are half of a 90 % interval. What the display rounds away is not in it
 * @param stillToComePh that value less what the curve says at the last reading; without a curve a bound either way
 * @param changePh trend over the criterion's window before the last reading, signed
 * @param timeConstantS of the approach, s; empty where no curve was fitted
 * @param waitS until the criterion is met, s; 0 where it is met, empty where unknown
 * @param noisePh standard deviation of one reading about the curve or line
 * @param outliers readings left out, by index, with their distance from the curve
 * @param course of the readings, each with the curve's value where one is seen
 */
public record Settling(
        State state,
        double ph,
        double standardUncertainty,
        double stillToComePh,
        double changePh,
        OptionalDouble timeConstantS,
        OptionalDouble waitS,
        double noisePh,
        List<Outlier> outliers,
        List<CoursePoint> course) {
    private static final double COVERAGE = 0.95;
    private static final int CURVE_PARAMETERS = 3;
    private static final int MANY = 300;

    /** What a series shows. */
    public enum State {
        /** The criterion is met. */
        SETTLED,
        /** A curve is found, and it goes on. */
        SETTLING,
        /** Too few readings, too short a time, or too unsteady for a curve that can be believed. */
        TOO_SHORT
    }

    /**
     * A reading left out.
     *
     * @param index from 0
     * @param distancePh from the curve
     */
    public record Outlier(int index, double distancePh) {}

    /**
     * A reading of the series.
     *
     * @param seconds after the first reading
     * @param ph read, at the temperature of the last reading
     * @param curvePh what the curve says then; empty where none is seen
     */
    public record CoursePoint(double seconds, double ph, OptionalDouble curvePh) {}

    public Settling {
        outliers = List.copyOf(outliers);
        course = List.copyOf(course);
    }

    /**
     * Judges a series. Cost: about 3 ms for 2,000 readings.
     *
     * @param seconds rising
     * @param ph of the readings, all at one temperature
     * @param stepPh last digit of the display: scatter below what it rounds away is not believed
     * @param readingPh standard uncertainty of one reading, for series too short to show their own scatter
     * @param criterion when it counts as settled
     */
    public static Settling of(
            double[] seconds, double[] ph, double stepPh, double readingPh, SettlingCriterion criterion) {
        int n = ph.length;
        double rounding = stepPh / Math.sqrt(12);
        if (n < 2) {
            return single(ph[0]);
        }
        double[] since = new double[n];
        for (int i = 0; i < n; i++) {
            since[i] = seconds[i] - seconds[0];
        }
        if (n >= ReadingLimits.of("fewest-readings")) {
            Approach approach = Approach.fit(since, ph, rounding);
            if (approach != null && approach.counted() > CURVE_PARAMETERS && seen(approach, since[n - 1], stepPh)) {
                return curve(approach, since, ph, criterion);
            }
        }
        return flat(since, ph, rounding, readingPh, criterion);
    }

    /** Half of the 90 % interval, pH. */
    public double halfWidth90() {
        return Interval90.HALF_WIDTH * standardUncertainty;
    }

    private static boolean seen(Approach approach, double last, double stepPh) {
        double start = Math.abs(approach.startPh());
        return approach.timeConstantS() <= ReadingLimits.of("longest-time-constant") * last
                && start > 2 * approach.noisePh()
                && approach.endUncertainty() < Math.max(start, stepPh);
    }

    private static Settling curve(Approach approach, double[] since, double[] ph, SettlingCriterion criterion) {
        double last = since[since.length - 1];
        double toCome = approach.endPh() - approach.at(last);
        double change = approach.at(last) - approach.at(Math.max(0, last - criterion.windowS()));
        double wait = wait(approach, last, criterion);
        boolean settled = last >= criterion.windowS() && wait <= 0;
        return new Settling(
                settled ? State.SETTLED : State.SETTLING,
                approach.endPh(),
                studentOverNormal(approach.counted() - CURVE_PARAMETERS) * approach.endUncertainty(),
                toCome,
                change,
                OptionalDouble.of(approach.timeConstantS()),
                OptionalDouble.of(Math.max(0, Math.max(wait, criterion.windowS() - last))),
                approach.noisePh(),
                outliers(approach, since, ph),
                course(since, ph, seconds -> OptionalDouble.of(approach.at(seconds))));
    }

    /** Until both what is to come and the change over the window are small enough, s. */
    private static double wait(Approach approach, double last, SettlingCriterion criterion) {
        double tau = approach.timeConstantS();
        double toCome = Math.abs(approach.endPh() - approach.at(last));
        double inWindow = toCome * Math.expm1(criterion.windowS() / tau);
        double most = Math.max(toCome, last >= criterion.windowS() ? inWindow : toCome);
        return most <= criterion.changePh() ? 0 : tau * Math.log(most / criterion.changePh());
    }

    /**
     * No curve is seen: either it stands still, or it drifts and nobody can say where to. The trend, with its uncertainty,
     * may go on for as long as a slow electrode takes; that bounds what is still to come.
     */
    private static Settling flat(
            double[] since, double[] ph, double rounding, double readingPh, SettlingCriterion criterion) {
        double last = since[since.length - 1];
        List<Outlier> outliers = apart(ph, rounding);
        Trend trend = Trend.of(since, ph, outliers, Math.max(rounding, readingPh));
        double window = criterion.windowS();
        double change = trend.perS() * window;
        double toCome = Math.min(
                ReadingLimits.of("largest-still-to-come"),
                (Math.abs(trend.perS()) + trend.perSUncertainty()) * ReadingLimits.of("slow-time-constant"));
        boolean still = last >= window && Math.abs(change) + trend.perSUncertainty() * window <= criterion.changePh();
        return new Settling(
                still ? State.SETTLED : State.TOO_SHORT,
                still ? trend.mean() : ph[lastKept(ph.length, outliers)],
                Math.hypot(still ? trend.meanUncertainty() : trend.noisePh(), toCome / Math.sqrt(3)),
                toCome,
                change,
                OptionalDouble.empty(),
                still ? OptionalDouble.of(0) : OptionalDouble.empty(),
                trend.noisePh(),
                outliers,
                course(since, ph, seconds -> OptionalDouble.empty()));
    }

    /** One reading, with the doubt of one whose settling nobody saw. */
    private static Settling single(double ph) {
        double doubt = ReadingLimits.of("one-reading");
        return new Settling(
                State.TOO_SHORT,
                ph,
                doubt,
                doubt * Math.sqrt(3),
                0,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                doubt,
                List.of(),
                List.of(new CoursePoint(0, ph, OptionalDouble.empty())));
    }

    /** Readings far from the median of the series, where there are enough to say so. */
    private static List<Outlier> apart(double[] ph, double rounding) {
        List<Outlier> outliers = new ArrayList<>();
        if (ph.length < ReadingLimits.of("fewest-readings")) {
            return outliers;
        }
        double middle = Approach.median(ph);
        double[] residuals = new double[ph.length];
        double[] weights = new double[ph.length];
        for (int i = 0; i < ph.length; i++) {
            residuals[i] = ph[i] - middle;
            weights[i] = 1;
        }
        double most = ReadingLimits.of("outlier-deviations") * Math.max(rounding, Approach.scale(residuals, weights));
        for (int i = 0; i < ph.length; i++) {
            if (Math.abs(residuals[i]) > most) {
                outliers.add(new Outlier(i, residuals[i]));
            }
        }
        return outliers;
    }

    private static List<CoursePoint> course(double[] since, double[] ph, DoubleFunction<OptionalDouble> curve) {
        List<CoursePoint> course = new ArrayList<>();
        for (int i = 0; i < ph.length; i++) {
            course.add(new CoursePoint(since[i], ph[i], curve.apply(since[i])));
        }
        return course;
    }

    private static int lastKept(int n, List<Outlier> outliers) {
        int last = n - 1;
        for (int k = outliers.size() - 1; k >= 0 && outliers.get(k).index() == last; k--) {
            last--;
        }
        return last;
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

    /** The 95 % quantile of Student's t over that of the normal distribution. */
    static double studentOverNormal(int freedom) {
        return freedom > MANY
                ? 1
                : new TDistribution(freedom).inverseCumulativeProbability(COVERAGE) / Interval90.HALF_WIDTH;
    }
}

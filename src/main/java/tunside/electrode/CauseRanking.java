package tunside.electrode;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Tries every cause on the readings of a session and ranks them by how well they explain the pattern.
 *
 * <p>The weight of a cause is its prior times the evidence of the readings, all ways in which it can have come about and
 * all values of its parameter averaged (Bayes' rule, normal priors, trapezoid of 121 points). The priors and widths are
 * those of {@code electrode-cause-model.csv}: from common practice, so read the order, not the figure.
 */
public final class CauseRanking {
    private static final int POINTS = 121;

    private final CalibrationSession session;
    private final double[] potentialsMv;

    private record Tried(Cause cause, double logEvidence, CauseVariant best, double mean, double sd) {}

    private CauseRanking(CalibrationSession session) {
        this.session = session;
        this.potentialsMv = session.readings().stream()
                .mapToDouble(reading -> reading.potential().millivolts())
                .toArray();
    }

    /** Every cause that can have happened, the likeliest first; the weights sum to 1. */
    public static List<SuspectedCause> of(CalibrationSession session) {
        CauseRanking ranking = new CauseRanking(session);
        CauseVariants variants = new CauseVariants(session);
        List<Tried> tried = new ArrayList<>();
        for (Cause cause : Cause.values()) {
            List<CauseVariant> own = variants.of(cause);
            if (!own.isEmpty()) {
                tried.add(ranking.tried(cause, own));
            }
        }
        return weighed(tried);
    }

    private static List<SuspectedCause> weighed(List<Tried> tried) {
        double sound = tried.get(0).logEvidence;
        double[] logs = tried.stream()
                .mapToDouble(one -> one.logEvidence + Math.log(one.cause.prior()))
                .toArray();
        double total = logSum(logs);
        List<SuspectedCause> causes = new ArrayList<>();
        for (int i = 0; i < logs.length; i++) {
            Tried one = tried.get(i);
            boolean known = one.best.hasParameter();
            causes.add(new SuspectedCause(
                    one.cause,
                    Math.exp(logs[i] - total),
                    known ? OptionalDouble.of(one.mean) : OptionalDouble.empty(),
                    known ? OptionalDouble.of(one.sd) : OptionalDouble.empty(),
                    one.best.readings(),
                    one.logEvidence - sound));
        }
        causes.sort(Comparator.comparingDouble(SuspectedCause::weight).reversed());
        return causes;
    }

    private Tried tried(Cause cause, List<CauseVariant> variants) {
        double[] logs = new double[variants.size()];
        Tried best = null;
        double logOfBest = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < logs.length; i++) {
            Tried one = tried(cause, variants.get(i));
            logs[i] = one.logEvidence + Math.log(variants.get(i).share());
            if (best == null || logs[i] > logOfBest) {
                best = one;
                logOfBest = logs[i];
            }
        }
        return new Tried(cause, logSum(logs), best.best, best.mean, best.sd);
    }

    private Tried tried(Cause cause, CauseVariant variant) {
        if (!variant.hasParameter()) {
            return new Tried(cause, logDensity(cause, variant.picture().idealMv(0)), variant, 0, 0);
        }
        double[] parameters = new double[POINTS];
        double[] priors = new double[POINTS];
        double[] logs = new double[POINTS];
        for (int i = 0; i < POINTS; i++) {
            parameters[i] = variant.low() + (variant.high() - variant.low()) * i / (POINTS - 1);
            double z = parameters[i] / cause.parameterSd();
            priors[i] = -0.5 * z * z + Math.log(i == 0 || i == POINTS - 1 ? 0.5 : 1);
            logs[i] = priors[i] + logDensity(cause, variant.picture().idealMv(parameters[i]));
        }
        double total = logSum(logs);
        double mean = 0;
        double square = 0;
        for (int i = 0; i < POINTS; i++) {
            double weight = Math.exp(logs[i] - total);
            double shown = shown(cause, parameters[i]);
            mean += weight * shown;
            square += weight * shown * shown;
        }
        return new Tried(cause, total - logSum(priors), variant, mean, Math.sqrt(Math.max(0, square - mean * mean)));
    }

    /** The parameter as an answer states it. */
    private static double shown(Cause cause, double parameter) {
        return cause == Cause.WRONG_WATER_VOLUME ? Math.pow(2, parameter) : parameter;
    }

    private double logDensity(Cause cause, double[] idealMv) {
        double slopeMean = cause.quantity("slope-mean", session.readout());
        double extraPh = cause.quantityOrZero("extra-ph-sd");
        double[] noise = new double[idealMv.length];
        double logDensity = 0;
        for (int i = 0; i < noise.length; i++) {
            if (Double.isNaN(idealMv[i])) {
                return Double.NEGATIVE_INFINITY;
            }
            BufferReading reading = session.readings().get(i);
            double ph = Math.hypot(reading.buffer().standardUncertainty(), extraPh);
            double byBuffer = slopeMean * NernstSlope.millivoltsPerPh(reading.temperature()) * ph;
            noise[i] = Math.max(0.05, Math.hypot(session.uncertainty().potentialMv(), byBuffer));
            if (reading.settlingTime().isPresent()) {
                logDensity += ReadingModel.logSettling(
                        reading.settlingTime().get().seconds(),
                        cause.quantity("settling-median", session.readout()),
                        cause.quantity("settling-log-sd", session.readout()));
            }
        }
        return logDensity
                + ReadingModel.logDensity(
                        potentialsMv,
                        idealMv,
                        noise,
                        slopeMean,
                        cause.quantity("slope-sd", session.readout()),
                        cause.quantity("offset-sd", session.readout()));
    }

    private static double logSum(double[] logs) {
        double largest = Arrays.stream(logs).max().orElseThrow();
        return largest == Double.NEGATIVE_INFINITY
                ? largest
                : largest
                        + Math.log(Arrays.stream(logs)
                                .map(log -> Math.exp(log - largest))
                                .sum());
    }
}

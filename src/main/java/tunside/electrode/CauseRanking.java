package tunside.electrode;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Tries every cause on the readings of a session and ranks them by how well they explain the pattern.
 *
 * <p>The weight of a cause is its prior times the evidence of the readings, all ways in which it can have come about and
 * all values of its parameter averaged (Bayes' rule, normal priors, trapezoid of 121 points). The priors and widths are
 * those of {@code electrode-cause-model.csv}: from common practice, so read the order, not the figure. Cost: some 30 ns
 * for each reading, cup and point of the grid.
 */
public final class CauseRanking {
    /** Pictures of cups are no better than this, however sure the readings are, mV. */
    private static final double LEAST_NOISE_MV = 0.3;

    private final CalibrationSession session;
    private final double[] potentialsMv;
    private final double[] idealMvPerPh;
    private final double[] bufferUncertaintiesPh;

    private record Tried(Cause cause, double logEvidence, CauseVariant best, double mean, double sd) {}

    private CauseRanking(CalibrationSession session) {
        this.session = session;
        int n = session.readings().size();
        this.potentialsMv = new double[n];
        this.idealMvPerPh = new double[n];
        this.bufferUncertaintiesPh = new double[n];
        for (int i = 0; i < n; i++) {
            BufferReading reading = session.readings().get(i);
            potentialsMv[i] = reading.potential().millivolts();
            idealMvPerPh[i] = NernstSlope.millivoltsPerPh(reading.temperature());
            bufferUncertaintiesPh[i] = reading.buffer().standardUncertainty();
        }
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
        double total = ParameterGrid.logSum(logs);
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
        ReadingModel model = model(cause);
        double[] evidences = new double[variants.size()];
        int best = 0;
        double[] logsOfBest = {};
        for (int i = 0; i < evidences.length; i++) {
            double[] logs = logs(variants.get(i), model);
            evidences[i] = ParameterGrid.logSum(logs) + Math.log(variants.get(i).share());
            if (i == 0 || evidences[i] > evidences[best]) {
                best = i;
                logsOfBest = logs;
            }
        }
        return summary(cause, logSettling(cause) + ParameterGrid.logSum(evidences), variants.get(best), logsOfBest);
    }

    private static double[] logs(CauseVariant variant, ReadingModel model) {
        double[] logs = new double[variant.grid().size()];
        for (int i = 0; i < logs.length; i++) {
            logs[i] = variant.grid().logPrior(i) + model.logDensity(variant.idealMv(), i);
        }
        return logs;
    }

    /** Mean and standard deviation of the parameter of the likeliest variant. */
    private static Tried summary(Cause cause, double logEvidence, CauseVariant best, double[] logs) {
        double total = ParameterGrid.logSum(logs);
        double mean = 0;
        double square = 0;
        for (int i = 0; i < logs.length; i++) {
            double weight = Math.exp(logs[i] - total);
            double shown = cause.shown(best.grid().value(i));
            mean += weight * shown;
            square += weight * shown * shown;
        }
        return new Tried(cause, logEvidence, best, mean, Math.sqrt(Math.max(0, square - mean * mean)));
    }

    private ReadingModel model(Cause cause) {
        double slopeMean = cause.quantity("slope-mean", session.readout());
        double extraPh = cause.quantityOrZero("extra-ph-sd");
        double[] noise = new double[potentialsMv.length];
        for (int i = 0; i < noise.length; i++) {
            double byBuffer = slopeMean * idealMvPerPh[i] * Math.hypot(bufferUncertaintiesPh[i], extraPh);
            noise[i] = Math.max(LEAST_NOISE_MV, Math.hypot(session.uncertainty().potentialMv(), byBuffer));
        }
        return new ReadingModel(
                potentialsMv,
                noise,
                slopeMean,
                cause.quantity("slope-sd", session.readout()),
                cause.quantity("offset-sd", session.readout()));
    }

    private double logSettling(Cause cause) {
        double sum = 0;
        for (BufferReading reading : session.readings()) {
            if (reading.settlingTime().isPresent()) {
                sum += ReadingModel.logSettling(
                        reading.settlingTime().get().seconds(),
                        cause.quantity("settling-median", session.readout()),
                        cause.quantity("settling-log-sd", session.readout()));
            }
        }
        return sum;
    }
}

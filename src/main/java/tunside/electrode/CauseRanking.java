package tunside.electrode;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * Tries every cause on the readings of a session and ranks them by how well they explain the pattern.
 *
 * <p>The weight of a cause is its prior times the evidence of the readings, all ways in which it can have come about and
 * all values of its parameter averaged (Bayes' rule, normal priors, trapezoid). The priors and widths are
 * those of {@code electrode-cause-model.csv}: from common practice, so read the order, not the figure. The error of a trapezoid
 * falls faster than any power of its step; a finer grid is taken only for a cause on which readings are so sharp that the coarser
 * one may have missed what lies between its points. Cost: some 20 ns for each cup and point of the grid.
 */
public final class CauseRanking {
    /** Pictures of cups are no better than this, however sure the readings are, mV. */
    private static final double LEAST_NOISE_MV = 0.3;

    /** Weight that may be missed. */
    private static final double NEGLIGIBLE = 1e-3;

    private final CalibrationSession session;
    private final CauseVariants variants;
    private final double[] potentialsMv;
    private final double[] idealMv;
    private final double[] idealMvPerPh;
    private final double[] bufferUncertaintiesPh;
    private final ReadingModel.Workspace space;
    private final Map<Cause.Electrode, ReadingModel> models = new HashMap<>(); // most causes leave the electrode sound

    /** A cause with its evidence, and what that may be between the points of its grid. */
    private record Tried(
            Cause cause, double logEvidence, double logBetween, CauseVariant best, double mean, double sd) {
        double log() {
            return logEvidence + Math.log(cause.prior());
        }
    }

    private CauseRanking(CalibrationSession session, CauseGrids grids) {
        this.session = session;
        this.variants = new CauseVariants(session, grids);
        this.idealMv = variants.idealMv();
        this.space = new ReadingModel.Workspace(grids.points());
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
        List<Tried> tried = new CauseRanking(session, CauseGrids.EVER_FINER.get(0)).tried();
        for (int finer = 1; finer < CauseGrids.EVER_FINER.size(); finer++) {
            List<Tried> unresolved = unresolved(tried);
            if (unresolved.isEmpty()) {
                break;
            }
            CauseRanking ranking = new CauseRanking(session, CauseGrids.EVER_FINER.get(finer));
            tried.replaceAll(
                    one -> unresolved.contains(one) ? ranking.tried(one.cause, ranking.variants.of(one.cause)) : one);
        }
        return weighed(tried);
    }

    /** The same by given grids alone. */
    static List<SuspectedCause> of(CalibrationSession session, CauseGrids grids) {
        return weighed(new CauseRanking(session, grids).tried());
    }

    private List<Tried> tried() {
        List<Tried> tried = new ArrayList<>();
        for (Cause cause : Cause.values()) {
            List<CauseVariant> own = variants.of(cause);
            if (!own.isEmpty()) {
                tried.add(tried(cause, own));
            }
        }
        return tried;
    }

    /** Those that may have more than a negligible weight between the points of their grids. */
    private static List<Tried> unresolved(List<Tried> tried) {
        double total = total(tried);
        List<Tried> unresolved = new ArrayList<>();
        for (Tried one : tried) {
            if (Math.exp(one.logBetween + Math.log(one.cause.prior()) - total) > NEGLIGIBLE) {
                unresolved.add(one);
            }
        }
        return unresolved;
    }

    private static double total(List<Tried> tried) {
        double[] logs = new double[tried.size()];
        for (int i = 0; i < logs.length; i++) {
            logs[i] = tried.get(i).log();
        }
        return ParameterGrid.logSum(logs);
    }

    private static List<SuspectedCause> weighed(List<Tried> tried) {
        double sound = tried.get(0).logEvidence;
        double total = total(tried);
        List<SuspectedCause> causes = new ArrayList<>();
        for (Tried one : tried) {
            boolean known = one.best.hasParameter();
            causes.add(new SuspectedCause(
                    one.cause,
                    Math.exp(one.log() - total),
                    known ? OptionalDouble.of(one.mean) : OptionalDouble.empty(),
                    known ? OptionalDouble.of(one.sd) : OptionalDouble.empty(),
                    one.best.readings(),
                    one.logEvidence - sound));
        }
        causes.sort(Comparator.comparingDouble(SuspectedCause::weight).reversed());
        return causes;
    }

    private Tried tried(Cause cause, List<CauseVariant> variants) {
        Cause.Electrode electrode = cause.electrode(session.readout());
        ReadingModel model = models.computeIfAbsent(electrode, this::model);
        double[] logs = new double[variants.size()];
        double[] between = new double[variants.size()];
        int best = 0;
        double[] sharesOfBest = {};
        for (int i = 0; i < logs.length; i++) {
            CauseVariant variant = variants.get(i);
            double logShare = Math.log(variant.share());
            ReadingModel.Evidence evidence = model.evidence(idealMv, variant.changedMv(), variant.grid(), space);
            logs[i] = logShare + evidence.log();
            between[i] = logShare + evidence.logBetween();
            if (i == 0 || logs[i] > logs[best]) {
                best = i;
                sharesOfBest = space.shares(variant.grid());
            }
        }
        double settling = logSettling(electrode);
        return summary(
                cause,
                settling + ParameterGrid.logSum(logs),
                settling + ParameterGrid.logSum(between),
                variants.get(best),
                sharesOfBest);
    }

    /** Mean and standard deviation of the parameter of the likeliest variant. */
    private static Tried summary(
            Cause cause, double logEvidence, double logBetween, CauseVariant best, double[] weights) {
        double sum = 0;
        double mean = 0;
        double square = 0;
        for (int i = 0; best.hasParameter() && i < weights.length; i++) {
            if (weights[i] > 0) {
                double shown = cause.shown(best.grid().value(i));
                sum += weights[i];
                mean += weights[i] * shown;
                square += weights[i] * shown * shown;
            }
        }
        mean /= sum;
        return new Tried(
                cause, logEvidence, logBetween, best, mean, Math.sqrt(Math.max(0, square / sum - mean * mean)));
    }

    private ReadingModel model(Cause.Electrode electrode) {
        double[] noise = new double[potentialsMv.length];
        double extra = electrode.extraPhSd() * electrode.extraPhSd();
        for (int i = 0; i < noise.length; i++) {
            double byBuffer = electrode.slopeMean()
                    * idealMvPerPh[i]
                    * Math.sqrt(bufferUncertaintiesPh[i] * bufferUncertaintiesPh[i] + extra);
            double potential = session.uncertainty().potentialMv();
            noise[i] = Math.max(LEAST_NOISE_MV, Math.sqrt(potential * potential + byBuffer * byBuffer));
        }
        return new ReadingModel(potentialsMv, noise, electrode.slopeMean(), electrode.slopeSd(), electrode.offsetSd());
    }

    private double logSettling(Cause.Electrode electrode) {
        double sum = 0;
        for (BufferReading reading : session.readings()) {
            if (reading.settlingTime().isPresent()) {
                sum += ReadingModel.logSettling(
                        reading.settlingTime().get().seconds(),
                        electrode.logSettlingMedian(),
                        electrode.settlingLogSd());
            }
        }
        return sum;
    }
}

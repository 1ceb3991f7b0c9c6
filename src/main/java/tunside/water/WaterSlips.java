package tunside.water;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tunside.chemistry.Ion;
import tunside.finding.Finding;
import tunside.finding.Outcome;
import tunside.quantity.Conductivity;

/**
 * Which slip explains a report best. Each is undone in turn, and what the report then says of itself (ion balance,
 * hardness against calcium and magnesium, conductivity, dissolved solids) is weighed by how likely such deviations are;
 * a report without a slip, and one with some other fault, compete with them.
 */
public final class WaterSlips {
    /** Slips that are together as likely as all else are named. */
    private static final double NAMED_FROM = 0.5;

    private static final double LISTED_FROM = 0.02;

    private static final double RELATIVE = WaterModel.value("slip-ion-relative");
    private static final double FLOOR = WaterModel.value("slip-ion-floor");
    private static final double LOG_BEYOND_LAW = Math.log(WaterModel.value("slip-beyond-law"));

    /** How many times further off a report with some other fault may be. */
    private static final double OTHER_SCALE = WaterModel.value("slip-other-relative") / RELATIVE;

    private WaterSlips() {}

    /** A slip that may have happened, the report without it, and the logarithm of how likely both are. */
    private record Candidate(Slip slip, WaterReport mended, double log) {}

    /** All slips that are worth a look, likeliest first; empty where the report has nothing to test them by. */
    public static List<SuspectedSlip> of(WaterReport report) {
        if (!canBeTested(report)) {
            return List.of();
        }
        boolean balanced = IonBalance.canBeJudged(report);
        List<Candidate> candidates = new ArrayList<>();
        double none = Slip.LOG_PRIOR_OF_NONE + logLikelihood(report, balanced, 1);
        double other = Slip.LOG_PRIOR_OF_OTHER + logLikelihood(report, balanced, OTHER_SCALE);
        double largest = Math.max(none, other);
        for (Slip slip : Slip.ALL) {
            Optional<WaterReport> mended = slip.mended(report);
            if (mended.isPresent()) {
                double log = slip.logPrior() + logLikelihood(mended.get(), balanced, 1);
                candidates.add(new Candidate(slip, mended.get(), log));
                largest = Math.max(largest, log);
            }
        }
        double sum = Math.exp(none - largest) + Math.exp(other - largest);
        for (Candidate candidate : candidates) {
            sum += Math.exp(candidate.log - largest);
        }
        IonBalance before = balance(report);
        List<SuspectedSlip> suspects = new ArrayList<>();
        for (Candidate candidate : candidates) {
            double probability = Math.exp(candidate.log - largest) / sum;
            if (probability >= LISTED_FROM) {
                WaterReport mended = candidate.mended;
                suspects.add(new SuspectedSlip(candidate.slip, probability, mended, before, balance(mended)));
            }
        }
        suspects.sort(Comparator.comparingDouble(SuspectedSlip::probability).reversed());
        return List.copyOf(suspects);
    }

    /** The likeliest slip, where some slip is at least as likely as all else together. */
    public static Optional<SuspectedSlip> named(WaterReport report) {
        List<SuspectedSlip> suspects = of(report);
        double any = 0;
        for (SuspectedSlip suspect : suspects) {
            any += suspect.probability();
        }
        return any >= NAMED_FROM ? Optional.of(suspects.get(0)) : Optional.empty();
    }

    /** A caution that names a slip; passed where there was something to test by; empty where not. */
    static Optional<Finding> finding(WaterReport report) {
        if (!canBeTested(report)) {
            return Optional.empty();
        }
        Optional<SuspectedSlip> named = named(report);
        return Optional.of(
                named.isEmpty()
                        ? Finding.of("water.slip", Outcome.PASS, "")
                        : Finding.of(
                                        "water.slip",
                                        Outcome.CAUTION,
                                        "",
                                        100 * named.get().probability(),
                                        100)
                                .about(named.get().slip().meaning() + " "
                                        + named.get().slip().advice()));
    }

    private static IonBalance balance(WaterReport report) {
        return IonBalance.of(report, report.alkalinityMeqPerL().orElse(0));
    }

    private static boolean canBeTested(WaterReport report) {
        return report.statesHardnessTwice() || IonBalance.canBeJudged(report);
    }

    /**
     * Of what the report says of itself; a water that no tap may give is less likely.
     *
     * @param balanced whether enough is reported for a balance, which no slip changes
     */
    private static double logLikelihood(WaterReport report, boolean balanced, double scale) {
        Map<Ion, Double> ions = report.mmolPerL();
        double log = WaterChecks.isWithinLaw(ions) ? 0 : LOG_BEYOND_LAW;
        if (report.statesHardnessTwice()) {
            double hardness = report.hardness().orElseThrow().meqPerL();
            double calcium = 2 * requireNonNull(ions.get(Ion.CALCIUM));
            double magnesium = 2 * requireNonNull(ions.get(Ion.MAGNESIUM));
            double squares = hardness * hardness + calcium * calcium + magnesium * magnesium;
            log += logDensity(hardness - calcium - magnesium, scale * uncertainty(squares));
        }
        if (!balanced) {
            return log;
        }
        double alkalinity = report.alkalinityMeqPerL().orElseThrow();
        double squares = alkalinity * alkalinity;
        for (Ion ion : Ion.ALL) {
            double meq = IonBalance.meqPerL(ions, ion);
            squares += meq * meq;
        }
        double difference = IonBalance.of(ions, alkalinity).differenceMeqPerL();
        log += logDensity(difference, scale * uncertainty(squares));
        double conductivity =
                report.conductivity().map(Conductivity::microsiemensPerCm).orElse(0.0);
        if (conductivity > 0) {
            double expected =
                    Conductivities.microsiemensPerCm(ions, alkalinity) / WaterModel.value("conductivity-recovery");
            double spread = Math.hypot(RELATIVE, WaterModel.value("conductivity-recovery-uncertainty"));
            log += logDensityOfRatio(conductivity, expected, scale * spread);
        }
        double solids = report.dissolvedSolidsMgPerL().orElse(0);
        if (solids > 0) {
            double expected = DissolvedSolids.mgPerL(ions, alkalinity) * WaterModel.value("solids-recovery");
            double spread = Math.hypot(RELATIVE, WaterModel.value("solids-recovery-uncertainty"));
            log += logDensityOfRatio(solids, expected, scale * spread);
        }
        return log;
    }

    /** Of a measured sum beside what the ions let expect; nothing where they let expect none. */
    private static double logDensityOfRatio(double measured, double expected, double spread) {
        return expected > 0 ? logDensity(Math.log(measured / expected), spread) : 0;
    }

    private static double logDensity(double deviation, double standardUncertainty) {
        double z = deviation / standardUncertainty;
        return -0.5 * z * z - Math.log(standardUncertainty);
    }

    private static double uncertainty(double squares) {
        return Math.sqrt(FLOOR * FLOOR + RELATIVE * RELATIVE * squares);
    }
}

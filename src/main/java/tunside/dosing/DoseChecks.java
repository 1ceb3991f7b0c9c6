package tunside.dosing;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import tunside.chemistry.AcidProduct;
import tunside.chemistry.NeatAcidLimits;
import tunside.electrode.Verdict;
import tunside.finding.Finding;
import tunside.finding.Outcome;
import tunside.quantity.Interval90;

/** Checks of what a dose is computed from. */
public final class DoseChecks {
    private static final double GOOD_UNCERTAINTY = 0.05;
    private static final double FIT_UNCERTAINTY = 0.1;
    private static final double WORST_UNCERTAINTY = 0.3;
    private static final double SOFT_END_PH = 0.1 + 1e-9;

    private DoseChecks() {}

    /** Standard uncertainty taken where the caller states none. */
    public static double usualUncertainty() {
        return GOOD_UNCERTAINTY;
    }

    /**
     * Whether a reading is good enough.
     *
     * @param stated whether the caller stated its uncertainty
     */
    public static Finding reading(PhReading reading, boolean stated) {
        double uncertainty = reading.standardUncertainty();
        Outcome outcome = uncertainty > WORST_UNCERTAINTY
                ? Outcome.STOP
                : uncertainty > FIT_UNCERTAINTY ? Outcome.CAUTION : stated ? Outcome.PASS : Outcome.NOTE;
        return Finding.of(
                "dose.reading-uncertainty",
                outcome,
                stated ? "/phUncertainty" : "",
                uncertainty,
                outcome == Outcome.STOP ? WORST_UNCERTAINTY : FIT_UNCERTAINTY);
    }

    /** Whether the electrode behind the readings may be trusted; one that may not gives no ground for a dose. */
    public static Finding calibration(Verdict verdict) {
        Outcome outcome = switch (verdict) {
            case FIT -> Outcome.PASS;
            case FIT_WITH_CARE -> Outcome.CAUTION;
            case UNFIT -> Outcome.STOP;
        };
        return Finding.of("dose.calibration", outcome, "/calibration/verdict");
    }

    /**
     * Whether the range was stated.
     *
     * @param halfWidthPh taken otherwise
     */
    public static Finding range(boolean stated, double halfWidthPh) {
        return stated
                ? Finding.of("dose.range", Outcome.PASS, "")
                : new Finding(
                        "dose.range", Outcome.NOTE, "", "", OptionalDouble.of(halfWidthPh), OptionalDouble.empty());
    }

    /** Whether the target is usual for the liquid; the ends of a usual range are soft by 0.1. */
    public static Finding target(DosedLiquid liquid, double targetPh) {
        double low = liquid.lowestTargetPh();
        double high = liquid.highestTargetPh();
        boolean usual = targetPh >= low - SOFT_END_PH && targetPh <= high + SOFT_END_PH;
        return Finding.of(
                "dose.target",
                usual ? Outcome.PASS : Outcome.CAUTION,
                "/targetPh",
                targetPh,
                targetPh < low ? low : high);
    }

    /** Whether an acid may be dosed as it was bought, and whether all of it acts at once. */
    public static List<Finding> product(AcidProduct bought) {
        List<Finding> findings = new ArrayList<>();
        boolean dilute = NeatAcidLimits.reachedBy(bought);
        findings.add((dilute
                        ? Finding.of(
                                "dose.dilute-first",
                                Outcome.STOP,
                                "/strength",
                                bought.massPercent(),
                                AcidDilution.DOSING_PERCENT)
                        : Finding.of("dose.strength", Outcome.PASS, "/strength", bought.massPercent(), 100))
                .about(bought.acid().name()));
        if (bought.directShare() < 1) {
            findings.add(Finding.of(
                    "dose.lactic-oligomers",
                    Outcome.NOTE,
                    "/strength",
                    bought.massPercent(),
                    100 * bought.directShare()));
        }
        return findings;
    }

    /** How little is known of the buffering before the first addition is measured: a factor to each side at 90 %. */
    public static Finding prior(BufferingPrior prior) {
        double factor = Math.exp(Interval90.HALF_WIDTH * prior.logStandardDeviation());
        return new Finding(
                "dose.buffering-prior", Outcome.NOTE, "", "", OptionalDouble.of(factor), OptionalDouble.empty());
    }

    /** Whether a base needs care. */
    public static Finding base(Bases.Base base) {
        return Finding.of("dose.base", base.care() ? Outcome.CAUTION : Outcome.PASS, "/base")
                .about(base.salt().name());
    }
}

package tunside.water;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tunside.chemistry.Ion;
import tunside.finding.Finding;
import tunside.finding.Outcome;

/**
 * Which slip explains a report best. Each is undone in turn, and what the report then says of itself (ion balance,
 * hardness against calcium and magnesium, conductivity, dissolved solids) is weighed by how likely such deviations are;
 * a report without a slip, and one with some other fault, compete with them.
 */
public final class WaterSlips {
    /** Slips that are together as likely as all else are named. */
    private static final double NAMED_FROM = 0.5;

    private static final double LISTED_FROM = 0.02;

    private WaterSlips() {}

    /** One thing that a report says of itself: how far it is off and how far it may be. */
    private record Deviation(double value, double standardUncertainty) {
        double logLikelihood() {
            double z = value / standardUncertainty;
            return -0.5 * z * z - Math.log(standardUncertainty);
        }
    }

    /** All slips that are worth a look, likeliest first; empty where the report has nothing to test them by. */
    public static List<SuspectedSlip> of(WaterReport report) {
        if (deviations(report, 1).isEmpty()) {
            return List.of();
        }
        Map<Slip, WaterReport> mended = new LinkedHashMap<>();
        Map<Slip, Double> logs = new LinkedHashMap<>();
        double none = Math.log(Slip.priorOfNone()) + logLikelihood(report, 1);
        double other = Math.log(Slip.priorOfOther()) + logLikelihood(report, otherScale());
        double largest = Math.max(none, other);
        for (Slip slip : Slip.values()) {
            Optional<WaterReport> candidate = slip.mended(report);
            if (candidate.isPresent()) {
                double log = Math.log(slip.prior()) + logLikelihood(candidate.get(), 1);
                mended.put(slip, candidate.get());
                logs.put(slip, log);
                largest = Math.max(largest, log);
            }
        }
        double sum = Math.exp(none - largest) + Math.exp(other - largest);
        for (double log : logs.values()) {
            sum += Math.exp(log - largest);
        }
        IonBalance before = balance(report);
        List<SuspectedSlip> suspects = new ArrayList<>();
        for (Map.Entry<Slip, Double> entry : logs.entrySet()) {
            double probability = Math.exp(entry.getValue() - largest) / sum;
            if (probability >= LISTED_FROM) {
                WaterReport meant = requireNonNull(mended.get(entry.getKey()));
                suspects.add(new SuspectedSlip(entry.getKey(), probability, meant, before, balance(meant)));
            }
        }
        suspects.sort(Comparator.comparingDouble(SuspectedSlip::probability).reversed());
        return List.copyOf(suspects);
    }

    /** The likeliest slip, where some slip is at least as likely as all else together. */
    public static Optional<SuspectedSlip> named(WaterReport report) {
        List<SuspectedSlip> suspects = of(report);
        double any = suspects.stream().mapToDouble(SuspectedSlip::probability).sum();
        return any >= NAMED_FROM ? Optional.of(suspects.get(0)) : Optional.empty();
    }

    /** A caution that names a slip; passed where there was something to test by; empty where not. */
    static Optional<Finding> finding(WaterReport report) {
        if (deviations(report, 1).isEmpty()) {
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

    /** How many times further off a report with some other fault may be. */
    private static double otherScale() {
        return WaterModel.value("slip-other-relative") / WaterModel.value("slip-ion-relative");
    }

    /** Of what the report says of itself; a water that no tap may give is less likely. */
    private static double logLikelihood(WaterReport report, double scale) {
        double sum = WaterChecks.isWithinLaw(report.mmolPerL()) ? 0 : Math.log(WaterModel.value("slip-beyond-law"));
        for (Deviation deviation : deviations(report, scale)) {
            sum += deviation.logLikelihood();
        }
        return sum;
    }

    private static List<Deviation> deviations(WaterReport report, double scale) {
        List<Deviation> deviations = new ArrayList<>();
        double relative = WaterModel.value("slip-ion-relative");
        Map<Ion, Double> ions = report.mmolPerL();
        double alkalinity = report.alkalinityMeqPerL().orElse(0);
        if (report.hardness().isPresent() && ions.containsKey(Ion.CALCIUM) && ions.containsKey(Ion.MAGNESIUM)) {
            double hardness = report.hardness().get().meqPerL();
            double calcium = 2 * ions.get(Ion.CALCIUM);
            double magnesium = 2 * ions.get(Ion.MAGNESIUM);
            deviations.add(new Deviation(
                    hardness - calcium - magnesium,
                    scale * uncertainty(relative, List.of(hardness, calcium, magnesium))));
        }
        if (!IonBalance.canBeJudged(report)) {
            return deviations;
        }
        List<Double> parts = new ArrayList<>();
        ions.forEach((ion, amount) -> parts.add(ion.charge() * amount));
        parts.add(alkalinity);
        IonBalance balance = IonBalance.of(report, alkalinity);
        deviations.add(new Deviation(balance.differenceMeqPerL(), scale * uncertainty(relative, parts)));
        double estimate = Conductivities.microsiemensPerCm(ions, alkalinity);
        if (report.conductivity().isPresent() && report.conductivity().get().microsiemensPerCm() > 0 && estimate > 0) {
            double ratio = report.conductivity().get().microsiemensPerCm()
                    * WaterModel.value("conductivity-recovery")
                    / estimate;
            deviations.add(new Deviation(
                    Math.log(ratio),
                    scale * Math.hypot(relative, WaterModel.value("conductivity-recovery-uncertainty"))));
        }
        double solids = DissolvedSolids.mgPerL(ions, alkalinity);
        if (report.dissolvedSolidsMgPerL().orElse(0) > 0 && solids > 0) {
            double ratio = report.dissolvedSolidsMgPerL().getAsDouble() / solids / WaterModel.value("solids-recovery");
            deviations.add(new Deviation(
                    Math.log(ratio), scale * Math.hypot(relative, WaterModel.value("solids-recovery-uncertainty"))));
        }
        return deviations;
    }

    private static double uncertainty(double relative, List<Double> parts) {
        double variance = Math.pow(WaterModel.value("slip-ion-floor"), 2);
        for (double part : parts) {
            variance += Math.pow(relative * part, 2);
        }
        return Math.sqrt(variance);
    }
}

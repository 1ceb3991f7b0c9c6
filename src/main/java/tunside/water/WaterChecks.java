package tunside.water;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import tunside.chemistry.Ion;
import tunside.chemistry.IonAmounts;
import tunside.finding.Finding;
import tunside.finding.Outcome;
import tunside.reference.Row;
import tunside.reference.Table;

/** Whether the numbers of a report go together, beyond its ion balance, and with what the law lets a tap give. */
public final class WaterChecks {
    private static final List<LegalLimit> LEGAL = loadLegal();
    private static final List<LegalAmount> MOST_LEGAL = mostLegal();

    /** Greater ones are not told apart: to next to nothing everything is in any ratio. */
    private static final double LARGEST_RATIO = 1e6;

    private WaterChecks() {}

    private record LegalLimit(String region, String what, double low, double high) {}

    private record LegalAmount(Ion ion, double mmolPerL) {}

    /** Every check that the report has the numbers for, in a fixed order. */
    public static List<Finding> of(WaterReport report) {
        List<Finding> findings = new ArrayList<>();
        double alkalinity = report.alkalinityMeqPerL().orElse(0);
        double anions = IonBalance.of(report, alkalinity).anionsMeqPerL();
        bothAlkalinities(report, findings);
        hardness(report, findings);
        if (IonBalance.canBeJudged(report)) {
            conductivity(report, anions, findings);
            solids(report, alkalinity, findings);
        }
        solidsAgainstConductivity(report, anions, findings);
        legal(report, findings);
        return findings;
    }

    /** Whether what comes out can drop chalk. */
    public static Finding calcite(WaterProfile treated) {
        double index = treated.calciteIndex();
        double limit = WaterModel.value("lime-supersaturation");
        if (index == Double.NEGATIVE_INFINITY) {
            return Finding.of("water.calcite", Outcome.PASS, "");
        }
        return Finding.of("water.calcite", index > limit ? Outcome.NOTE : Outcome.PASS, "", index, limit);
    }

    private static void bothAlkalinities(WaterReport report, List<Finding> findings) {
        if (report.alkalinity().isPresent() && report.carbonateIons().isPresent()) {
            double stated = report.alkalinity().get().meqPerL();
            double ofIons = report.carbonateIons().get().alkalinityMeqPerL();
            findings.add(Finding.of(
                    "water.alkalinity-against-bicarbonate",
                    agree(stated, ofIons) ? Outcome.PASS : Outcome.CAUTION,
                    "/alkalinity",
                    stated,
                    ofIons));
        }
    }

    /** Whether a stated alkalinity and one of bicarbonate and carbonate are the same but for rounding and end point. */
    public static boolean agree(double statedMeqPerL, double ofIonsMeqPerL) {
        double limit = Math.max(
                WaterModel.value("alkalinity-agreement-floor"),
                WaterModel.value("alkalinity-agreement-relative") * Math.abs(statedMeqPerL));
        return Math.abs(statedMeqPerL - ofIonsMeqPerL) <= limit;
    }

    private static void hardness(WaterReport report, List<Finding> findings) {
        if (!report.statesHardnessTwice()) {
            return;
        }
        Map<Ion, Double> ions = report.mmolPerL();
        double stated = report.hardness().orElseThrow().meqPerL();
        double ofIons = 2 * (requireNonNull(ions.get(Ion.CALCIUM)) + requireNonNull(ions.get(Ion.MAGNESIUM)));
        WaterLimits.Limit limit = WaterLimits.of("hardness-against-ions", stated);
        double deviation = limit.isPercent() ? 100 * (ofIons - stated) / stated : ofIons - stated;
        findings.add(Finding.of(
                "water.hardness",
                limit.accepts(deviation) ? Outcome.PASS : Outcome.CAUTION,
                "/hardness",
                stated,
                ofIons));
    }

    private static void conductivity(WaterReport report, double anions, List<Finding> findings) {
        if (report.conductivity().isEmpty() || anions <= 0) {
            return;
        }
        double measured = report.conductivity().get().microsiemensPerCm();
        WaterLimits.Limit limit = WaterLimits.of("conductivity-per-anions", anions);
        findings.add(ratio("water.conductivity", "/conductivity", limit, measured / anions));
    }

    private static void solids(WaterReport report, double alkalinity, List<Finding> findings) {
        double sum = DissolvedSolids.mgPerL(report.mmolPerL(), alkalinity);
        if (report.dissolvedSolidsMgPerL().isEmpty() || sum <= 0) {
            return;
        }
        WaterLimits.Limit limit = WaterLimits.of("solids-per-sum", 0);
        findings.add(ratio(
                "water.dissolved-solids",
                "/dissolvedSolids",
                limit,
                report.dissolvedSolidsMgPerL().getAsDouble() / sum));
    }

    private static void solidsAgainstConductivity(WaterReport report, double anions, List<Finding> findings) {
        if (report.dissolvedSolidsMgPerL().isEmpty()
                || report.conductivity().isEmpty()
                || report.conductivity().get().microsiemensPerCm() <= 0) {
            return;
        }
        WaterLimits.Limit limit = WaterLimits.of("solids-per-conductivity", anions);
        findings.add(ratio(
                "water.solids-against-conductivity",
                "/dissolvedSolids",
                limit,
                report.dissolvedSolidsMgPerL().getAsDouble()
                        / report.conductivity().get().microsiemensPerCm()));
    }

    private static Finding ratio(String code, String pointer, WaterLimits.Limit limit, double quotient) {
        double ratio = Math.min(quotient, LARGEST_RATIO);
        return Finding.of(
                code, limit.accepts(ratio) ? Outcome.PASS : Outcome.CAUTION, pointer, ratio, limit.nearest(ratio));
    }

    private static void legal(WaterReport report, List<Finding> findings) {
        boolean within = true;
        for (LegalLimit limit : LEGAL) {
            double value = reported(report, limit.what);
            if (value < limit.low || value > limit.high) {
                within = false;
                findings.add(Finding.of(
                                "water.legal-limit",
                                Outcome.NOTE,
                                "",
                                value,
                                value < limit.low ? limit.low : limit.high)
                        .about("%s (%s)".formatted(limit.what, limit.region)));
            }
        }
        if (within) {
            findings.add(Finding.of("water.legal-limit", Outcome.PASS, ""));
        }
    }

    /** Whether no ion lies beyond what the law lets a tap give. */
    static boolean isWithinLaw(Map<Ion, Double> mmolPerL) {
        for (LegalAmount most : MOST_LEGAL) {
            if (IonAmounts.amount(mmolPerL, most.ion) > most.mmolPerL) {
                return false;
            }
        }
        return true;
    }

    /** NaN, which no limit refuses, where the report does not have it. */
    private static double reported(WaterReport report, String what) {
        return switch (what) {
            case "pH" -> report.ph().orElse(Double.NaN);
            case "conductivity" ->
                report.conductivity()
                        .map(value -> value.microsiemensPerCm() / WaterModel.conductivityAt20To25())
                        .orElse(Double.NaN);
            case "dissolved solids" -> report.dissolvedSolidsMgPerL().orElse(Double.NaN);
            default -> {
                Ion ion = Ion.ofSymbol(what);
                Double mmolPerL = report.mmolPerL().get(ion);
                yield mmolPerL == null ? Double.NaN : mmolPerL * ion.molarMassGPerMol();
            }
        };
    }

    private static List<LegalAmount> mostLegal() {
        List<LegalAmount> most = new ArrayList<>();
        for (LegalLimit limit : LEGAL) {
            for (Ion ion : Ion.ALL) {
                if (ion.symbol().equals(limit.what)) {
                    most.add(new LegalAmount(ion, limit.high / ion.molarMassGPerMol()));
                }
            }
        }
        return List.copyOf(most);
    }

    private static List<LegalLimit> loadLegal() {
        List<LegalLimit> limits = new ArrayList<>();
        for (Row row : Table.read("drinking-water-limits.csv").rows()) {
            double low = row.number("low", 0, 1000);
            limits.add(new LegalLimit(row.text("region"), row.text("what"), low, row.number("high", low, 100_000)));
        }
        return List.copyOf(limits);
    }
}

package tunside.water;

import java.util.ArrayList;
import java.util.List;
import tunside.chemistry.ChargeBalance;
import tunside.chemistry.Ion;
import tunside.chemistry.Solution;
import tunside.finding.Finding;
import tunside.finding.Outcome;
import tunside.quantity.Temperature;

/**
 * A water that the service can compute with.
 *
 * @param solution ions, carbon and the charge that makes up the alkalinity
 * @param ph of the water in a closed vessel at its temperature
 * @param temperature of the sample
 * @param findings what was assumed, and whether the report hangs together
 */
public record Water(Solution solution, double ph, Temperature temperature, List<Finding> findings) {
    /** pH taken where a report names none: common for tap water, and the carbon dioxide hardly depends on it there. */
    static final double ASSUMED_PH = 7.5;

    /** End point taken where a report names none (EPA-310-1). */
    static final double ASSUMED_END_POINT_PH = 4.5;

    /** How far the solved pH may be from the reported one before the report contradicts itself. */
    private static final double PH_TOLERANCE = 0.01;

    private static final int MOST_ITERATIONS = 60;
    private static final double MOST_CARBON = 1;

    /** Calcium's share in Kolbach's residual alkalinity (KOLBACH-1953). */
    private static final double CALCIUM_DIVISOR = 3.5;

    /** Magnesium's share in it. */
    private static final double MAGNESIUM_DIVISOR = 7;

    public Water {
        findings = List.copyOf(findings);
    }

    /** Water with nothing in it, at 20 degC. */
    public static Water distilled() {
        Temperature temperature = new Temperature(20);
        return new Water(
                Solution.WATER, ChargeBalance.solve(Solution.WATER, temperature).ph(), temperature, List.of());
    }

    /**
     * Reads a report. Alkalinity is what acid the sample took from its pH down to the end point; the true alkalinity and
     * the carbon are found so that both that titration and the sample's pH come out.
     *
     * <p>Without an alkalinity the charge that the ions leave over is taken, if positive. Without a pH 7.5 is taken, without
     * an end point 4.5; each is a finding.
     */
    public static Water of(WaterReport report) {
        List<Finding> findings = new ArrayList<>();
        Solution ions = Solution.WATER;
        for (Ion ion : report.mmolPerL().keySet()) {
            ions = ions.plus(Solution.of(ion, report.mmolPerL().get(ion) / 1000));
        }
        double ph = report.ph().orElse(ASSUMED_PH);
        findings.add(
                report.ph().isPresent()
                        ? Finding.of("water.ph", Outcome.PASS, "/ph", ph, ASSUMED_PH)
                        : Finding.of("water.ph", Outcome.NOTE, "", ph, ASSUMED_PH));
        double endPoint = report.endPointPh().orElse(ASSUMED_END_POINT_PH);
        double titrated = report.alkalinity().isPresent()
                ? report.alkalinity().get().meqPerL()
                : Math.max(0, 1000 * ions.fixedCharge());
        findings.add(alkalinityFinding(report, titrated, endPoint));
        if (IonBalance.canBeJudged(report)) {
            findings.add(IonBalance.of(report, titrated).finding());
        } else {
            findings.add(Finding.of("water.ion-balance", Outcome.NOTE, ""));
        }
        Solution solution = report.alkalinity().isPresent()
                ? titrated(ions, titrated / 1000, endPoint, ph, report.temperature())
                : carbonated(ions, titrated / 1000, ph, report.temperature());
        double computed = ChargeBalance.solve(solution, report.temperature()).ph();
        if (Math.abs(computed - ph) > PH_TOLERANCE) {
            findings.add(Finding.of("water.ph-against-alkalinity", Outcome.CAUTION, "", ph, computed));
        }
        return new Water(solution, computed, report.temperature(), findings);
    }

    private static Finding alkalinityFinding(WaterReport report, double titrated, double endPoint) {
        if (report.alkalinity().isEmpty()) {
            return Finding.of("water.alkalinity", Outcome.CAUTION, "", titrated, 0);
        }
        return report.endPointPh().isPresent()
                ? Finding.of("water.alkalinity", Outcome.PASS, "/alkalinity", titrated, endPoint)
                : Finding.of("water.alkalinity", Outcome.NOTE, "/alkalinity", titrated, endPoint);
    }

    /** True alkalinity so that the acid from the sample's pH to the end point is what was titrated. */
    private static Solution titrated(
            Solution ions, double titrated, double endPoint, double ph, Temperature temperature) {
        double alkalinity = titrated;
        Solution solution = carbonated(ions, alkalinity, ph, temperature);
        for (int i = 0; i < MOST_ITERATIONS; i++) {
            double missing =
                    titrated - ChargeBalance.at(solution, temperature, endPoint).netCharge();
            if (Math.abs(missing) < 1e-10) {
                break;
            }
            alkalinity += missing;
            solution = carbonated(ions, alkalinity, ph, temperature);
        }
        return solution;
    }

    /** The ions with an alkalinity, and the carbon that gives the sample its pH; none where even none is too much. */
    private static Solution carbonated(Solution ions, double alkalinity, double ph, Temperature temperature) {
        Solution bare = ions.withBase(0);
        Solution charged = bare.withBase(alkalinity - bare.fixedCharge());
        double carbon = ChargeBalance.dose(charged, Solution.ofCarbon(1), ph, temperature, MOST_CARBON)
                .orElse(0);
        return charged.withCarbon(carbon);
    }

    /**
     * Waters poured together; ions, alkalinity and carbon mix linearly, the pH is solved anew in a closed vessel.
     *
     * @param parts at least one, volumes summing to more than 0
     */
    public static Water blend(List<WaterPart> parts) {
        double litres =
                parts.stream().mapToDouble(part -> part.volume().litres()).sum();
        if (!(litres > 0)) {
            throw new IllegalArgumentException(
                    "the volumes of a blend must sum to more than 0 L but to %s".formatted(litres));
        }
        Solution mixed = Solution.WATER;
        double celsius = 0;
        List<Finding> findings = new ArrayList<>();
        for (int i = 0; i < parts.size(); i++) {
            WaterPart part = parts.get(i);
            double share = part.volume().litres() / litres;
            mixed = mixed.plus(part.water().solution.scaled(share));
            celsius += share * part.water().temperature.celsius();
            String place = "/" + i + "/water";
            part.water().findings.forEach(finding -> findings.add(finding.under(place)));
        }
        Temperature temperature = new Temperature(celsius);
        return new Water(mixed, ChargeBalance.solve(mixed, temperature).ph(), temperature, findings);
    }

    /** True alkalinity, mEq/L. */
    public double alkalinityMeqPerL() {
        return 1000 * solution.fixedCharge();
    }

    /** Kolbach's residual alkalinity, mEq/L: alkalinity less Ca/3.5 and Mg/7 (KOLBACH-1953). */
    public double residualAlkalinityMeqPerL() {
        return alkalinityMeqPerL()
                - 2000 * solution.ion(Ion.CALCIUM) / CALCIUM_DIVISOR
                - 2000 * solution.ion(Ion.MAGNESIUM) / MAGNESIUM_DIVISOR;
    }
}

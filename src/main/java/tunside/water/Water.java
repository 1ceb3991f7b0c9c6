package tunside.water;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tunside.chemistry.CarbonateState;
import tunside.chemistry.ChargeBalance;
import tunside.chemistry.Ion;
import tunside.chemistry.IonAmounts;
import tunside.chemistry.Solution;
import tunside.finding.Finding;
import tunside.finding.Outcome;
import tunside.quantity.Temperature;

/**
 * A water that the service can compute with; 1 kg of water is taken for 1 L.
 *
 * @param solution ions, carbon and the charge that makes up the alkalinity
 * @param ph of the water in a closed vessel at its temperature
 * @param temperature of the sample
 * @param samplePh pH by which the carbon is known: that of the sample; of a treated water that before its treatment
 * @param findings what was assumed, and whether the report hangs together
 */
public record Water(Solution solution, double ph, Temperature temperature, double samplePh, List<Finding> findings) {
    private static final double MOST_CARBON = 1;
    private static final Water DISTILLED = closed(Solution.WATER, new Temperature(20));

    public Water {
        findings = List.copyOf(findings);
    }

    /** A water whose carbon is known by its own pH. */
    public Water(Solution solution, double ph, Temperature temperature, List<Finding> findings) {
        this(solution, ph, temperature, ph, findings);
    }

    /** The water that a solution makes in a closed vessel. */
    static Water closed(Solution solution, Temperature temperature, double samplePh, List<Finding> findings) {
        return new Water(solution, ChargeBalance.solve(solution, temperature).ph(), temperature, samplePh, findings);
    }

    private static Water closed(Solution solution, Temperature temperature) {
        return new Water(solution, ChargeBalance.solve(solution, temperature).ph(), temperature, List.of());
    }

    /** Water with nothing in it, at 20 degC. */
    public static Water distilled() {
        return DISTILLED;
    }

    /**
     * Reads a report. A titrated alkalinity is what acid the sample took from its pH down to the end point; the true
     * alkalinity and the carbon are found so that both that titration and the sample's pH come out. An alkalinity made up
     * by bicarbonate and carbonate is taken as true.
     *
     * <p>Without an alkalinity the charge that the ions leave over is taken, if positive. Without a pH that of bicarbonate
     * beside carbonate or the usual one is taken, without an end point the usual one; each is a finding.
     *
     * @throws IllegalArgumentException if no water takes that titration from that pH
     */
    public static Water of(WaterReport report) {
        List<Finding> findings = new ArrayList<>();
        Map<Ion, Double> molPerKg = IonAmounts.changed(report.mmolPerL(), (ion, amount) -> amount / 1000);
        Solution ions = new Solution(molPerKg, 0, Map.of(), 0);
        double ph = report.statedPh();
        findings.add(phFinding(report, ph));
        double endPoint = report.endPointPh().orElse(WaterModel.assumedEndPointPh());
        double stated = report.alkalinityMeqPerL().orElse(Math.max(0, 1000 * ions.fixedCharge()));
        findings.add(alkalinityFinding(report, stated, endPoint));
        if (IonBalance.canBeJudged(report)) {
            findings.add(IonBalance.of(report, stated).finding());
        } else {
            findings.add(Finding.of("water.ion-balance-incomplete", Outcome.NOTE, ""));
        }
        WaterSlips.finding(report).ifPresent(findings::add);
        Water water = report.alkalinity().isPresent()
                ? titrated(ions, stated / 1000, endPoint, ph, report.temperature())
                : closed(carbonated(ions, stated / 1000, ph, report.temperature()), report.temperature());
        if (Math.abs(water.ph - ph) > WaterModel.value("ph-tolerance")) {
            findings.add(Finding.of("water.ph-against-alkalinity", Outcome.CAUTION, "", ph, water.ph));
        }
        return water.withFindings(findings);
    }

    private static Finding phFinding(WaterReport report, double ph) {
        if (report.ph().isPresent()) {
            return Finding.of("water.ph", Outcome.PASS, "/ph", ph, WaterModel.assumedPh());
        }
        return report.phIsStated()
                ? Finding.of("water.ph-of-carbonate", Outcome.NOTE, "/carbonate", ph, WaterModel.assumedPh())
                : Finding.of("water.ph", Outcome.NOTE, "", ph, WaterModel.assumedPh());
    }

    private static Finding alkalinityFinding(WaterReport report, double stated, double endPoint) {
        if (report.alkalinity().isPresent()) {
            return Finding.of(
                    "water.alkalinity",
                    report.endPointPh().isPresent() ? Outcome.PASS : Outcome.NOTE,
                    "/alkalinity",
                    stated,
                    endPoint);
        }
        return report.carbonateIons().isPresent()
                ? Finding.of("water.bicarbonate", Outcome.PASS, "/bicarbonate", stated, stated)
                : Finding.of("water.alkalinity", Outcome.CAUTION, "", stated, 0);
    }

    /**
     * The carbon that takes what was titrated between the sample's pH and the end point, and the alkalinity that gives this
     * water the sample's pH. Where even a water without carbon takes more, none, and the alkalinity that was titrated.
     */
    private static Water titrated(Solution ions, double titrated, double endPoint, double ph, Temperature temperature) {
        if (ph <= endPoint) {
            if (titrated > 0) {
                throw new IllegalArgumentException(
                        "pH of the water (%s) must lie above the end point of its alkalinity titration (%s)"
                                .formatted(ph, endPoint));
            }
            double free = ChargeBalance.at(Solution.WATER, temperature, ph).netCharge();
            return closed(carbonated(ions, -free, ph, temperature), temperature);
        }
        Optional<Solution> neutral = ChargeBalance.titrated(ions, ph, endPoint, titrated, temperature, MOST_CARBON);
        if (neutral.isPresent()) {
            return new Water(neutral.get(), ph, temperature, List.of());
        }
        double atEndPoint = netCharge(ions, temperature, endPoint);
        if (atEndPoint - netCharge(ions, temperature, ph) < titrated) {
            throw new IllegalArgumentException(
                    "no water of pH %s takes %s mEq/L of acid down to pH %s; the pH is too near the end point"
                            .formatted(ph, 1000 * titrated, endPoint));
        }
        return closed(ions.withBase(titrated - atEndPoint), temperature);
    }

    private static double netCharge(Solution solution, Temperature temperature, double ph) {
        return ChargeBalance.at(solution, temperature, ph).netCharge();
    }

    /**
     * The ions with an alkalinity, and the carbon that gives the sample its pH; none where even none is too much, at most
     * 1 mol/kg.
     */
    private static Solution carbonated(Solution ions, double alkalinity, double ph, Temperature temperature) {
        Solution charged = ions.withBase(alkalinity - ions.fixedCharge());
        double carbon = ChargeBalance.dose(charged, Solution.ofCarbon(1), ph, temperature, MOST_CARBON)
                .orElseGet(() -> ChargeBalance.at(charged, temperature, ph).netCharge() > 0 ? MOST_CARBON : 0);
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
        double ph = ChargeBalance.solve(mixed, temperature).ph();
        return new Water(mixed, ph, temperature, findings);
    }

    /**
     * What reverse osmosis leaves of this water: a share of the ions, of the alkalinity and of the carbon bound in it. Its
     * free carbon dioxide passes the membrane (COMMON-PRACTICE).
     *
     * @param share 0 to 1
     */
    public Water afterReverseOsmosis(double share) {
        if (!(share >= 0 && share <= 1)) {
            throw new IllegalArgumentException(
                    "share that reverse osmosis leaves (%s) must be from 0 to 1".formatted(share));
        }
        double free = CarbonateState.closed(solution, temperature).carbonDioxideMolPerKg();
        Solution left = solution.scaled(share).withCarbon(share * (solution.carbon() - free) + free);
        double after = ChargeBalance.solve(left, temperature).ph();
        return new Water(left, after, temperature, findings);
    }

    /** The same water with other findings. */
    public Water withFindings(List<Finding> others) {
        return new Water(solution, ph, temperature, samplePh, others);
    }

    /** True alkalinity, mEq/L: the charge that the ions leave over. Anions of weak acids that were added do not count. */
    public double alkalinityMeqPerL() {
        return 1000 * solution.fixedCharge();
    }

    /** Calcium and magnesium, mEq/L. */
    public double hardnessMeqPerL() {
        return 2000 * (solution.ion(Ion.CALCIUM) + solution.ion(Ion.MAGNESIUM));
    }

    /** Kolbach's residual alkalinity, mEq/L: alkalinity less Ca/3.5 and Mg/7 (KOLBACH-1953). */
    public double residualAlkalinityMeqPerL() {
        return residualAlkalinityMeqPerL(alkalinityMeqPerL());
    }

    double residualAlkalinityMeqPerL(double alkalinityMeqPerL) {
        return alkalinityMeqPerL
                - 2000 * solution.ion(Ion.CALCIUM) / WaterModel.value("calcium-divisor")
                - 2000 * solution.ion(Ion.MAGNESIUM) / WaterModel.value("magnesium-divisor");
    }
}

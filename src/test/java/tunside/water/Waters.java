package tunside.water;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import tunside.chemistry.ChargeBalance;
import tunside.chemistry.Ion;
import tunside.chemistry.Solution;
import tunside.finding.Finding;
import tunside.quantity.Alkalinity;
import tunside.quantity.Conductivity;
import tunside.quantity.DissolvedUnit;
import tunside.quantity.EquivalentUnit;
import tunside.quantity.Hardness;
import tunside.quantity.Temperature;

/** Waters for the tests. */
final class Waters {
    static final Temperature ROOM = new Temperature(20);

    private Waters() {}

    /** A model water: calcium and alkalinity as given, the rest moderate, sodium (or chloride) balances; pH 7.6 at 20 degC. */
    static Water model(double calciumMgPerKg, double alkalinityMeqPerKg, double sulfateMgPerKg) {
        Solution ions = Solution.of(Ion.CALCIUM, calciumMgPerKg / 40078)
                .plus(Solution.of(Ion.MAGNESIUM, 8 / 24305.0))
                .plus(Solution.of(Ion.CHLORIDE, 25 / 35453.0))
                .plus(Solution.of(Ion.SULFATE, sulfateMgPerKg / 96056));
        double missing = alkalinityMeqPerKg / 1000 - ions.fixedCharge();
        ions = ions.plus(missing > 0 ? Solution.of(Ion.SODIUM, missing) : Solution.of(Ion.CHLORIDE, -missing));
        double carbon =
                ChargeBalance.dose(ions, Solution.ofCarbon(1), 7.6, ROOM, 1).orElseThrow();
        return Water.closed(ions.withCarbon(carbon), ROOM, 7.6, List.of());
    }

    /** Ca 50, Mg 8, Cl 25, SO4 40 mg/kg, alkalinity 2.3 mEq/kg. */
    static Water moderate() {
        return model(50, 2.3, 40);
    }

    static WaterReport report(
            double calcium, double magnesium, double sodium, double chloride, double sulfate, double alkalinity) {
        Map<Ion, Double> ions = new EnumMap<>(Ion.class);
        ions.put(Ion.CALCIUM, calcium);
        ions.put(Ion.MAGNESIUM, magnesium);
        ions.put(Ion.SODIUM, sodium);
        ions.put(Ion.CHLORIDE, chloride);
        ions.put(Ion.SULFATE, sulfate);
        return new WaterReport(
                ions, Optional.of(new Alkalinity(alkalinity)), OptionalDouble.of(4.5), OptionalDouble.of(7.5), ROOM);
    }

    /** One millimole of calcium a litre, titrated to pH 4.5 from a pH. */
    static WaterReport titrated(double alkalinity, double ph) {
        return new WaterReport(
                Map.of(Ion.CALCIUM, 1.0),
                Optional.of(new Alkalinity(alkalinity)),
                OptionalDouble.of(4.5),
                OptionalDouble.of(ph),
                Waters.ROOM);
    }

    /** The same with what else a laboratory measures. */
    static WaterReport with(WaterReport report, Double hardnessMeqPerL, Double microsiemensPerCm, Double solidsMgPerL) {
        return new WaterReport(
                report.mmolPerL(),
                report.ionUnits(),
                report.alkalinity(),
                report.alkalinityUnit(),
                report.carbonateIons(),
                report.endPointPh(),
                report.ph(),
                report.temperature(),
                Optional.ofNullable(hardnessMeqPerL).map(Hardness::new),
                Optional.ofNullable(microsiemensPerCm).map(Conductivity::new),
                solidsMgPerL == null ? OptionalDouble.empty() : OptionalDouble.of(solidsMgPerL));
    }

    /** The same as printed in mg/L and in a unit of alkalinity. */
    static WaterReport printed(WaterReport report, EquivalentUnit alkalinityUnit, Ion counted, DissolvedUnit unit) {
        Map<Ion, DissolvedUnit> units = new EnumMap<>(Ion.class);
        report.mmolPerL().keySet().forEach(ion -> units.put(ion, ion == counted ? unit : DissolvedUnit.MG_PER_L));
        return new WaterReport(
                report.mmolPerL(),
                units,
                report.alkalinity(),
                Optional.of(alkalinityUnit),
                report.carbonateIons(),
                report.endPointPh(),
                report.ph(),
                report.temperature(),
                report.hardness(),
                report.conductivity(),
                report.dissolvedSolidsMgPerL());
    }

    /** A plausible tap water within the law: ions that balance, as a laboratory finds them within 2 %. */
    static WaterReport plausible(SplittableRandom random) {
        while (true) {
            Map<Ion, Double> ions = new EnumMap<>(Ion.class);
            ions.put(Ion.CALCIUM, random.nextDouble(0.3, 3.5));
            ions.put(Ion.MAGNESIUM, random.nextDouble(0.1, 1.2));
            ions.put(Ion.SODIUM, random.nextDouble(0.2, 2.5));
            ions.put(Ion.POTASSIUM, random.nextDouble(0.02, 0.15));
            ions.put(Ion.CHLORIDE, random.nextDouble(0.2, 2.5));
            ions.put(Ion.SULFATE, random.nextDouble(0.1, 2.4));
            ions.put(Ion.NITRATE, random.nextDouble(0.02, 0.7));
            double alkalinity = IonBalance.of(ions, 0).differenceMeqPerL();
            if (alkalinity > 0.4 && alkalinity < 7) {
                double hardness = 2 * (ions.get(Ion.CALCIUM) + ions.get(Ion.MAGNESIUM));
                double conductivity =
                        Conductivities.microsiemensPerCm(ions, alkalinity) / WaterModel.value("conductivity-recovery");
                double solids = DissolvedSolids.mgPerL(ions, alkalinity) * 1.1;
                Map<Ion, Double> found = new EnumMap<>(Ion.class);
                ions.forEach((ion, amount) -> found.put(ion, amount * noise(random, 0.02)));
                WaterReport report = new WaterReport(
                        found,
                        Optional.of(new Alkalinity(alkalinity * noise(random, 0.02))),
                        OptionalDouble.of(4.5),
                        OptionalDouble.of(7.5),
                        ROOM);
                return with(
                        report,
                        random.nextBoolean() ? hardness * noise(random, 0.02) : null,
                        random.nextBoolean() ? conductivity * noise(random, 0.04) : null,
                        random.nextBoolean() ? solids * noise(random, 0.05) : null);
            }
        }
    }

    private static double noise(SplittableRandom random, double relative) {
        double sum = -6;
        for (int i = 0; i < 12; i++) {
            sum += random.nextDouble();
        }
        return 1 + relative * sum;
    }

    static Finding finding(List<Finding> findings, String code) {
        return findings.stream()
                .filter(finding -> finding.code().equals(code))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no " + code + " in " + findings));
    }
}

package tunside.water;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import tunside.chemistry.AcidSystem;
import tunside.chemistry.CarbonateConstants;
import tunside.chemistry.CarbonateState;
import tunside.chemistry.ChargeBalance;
import tunside.chemistry.Ion;
import tunside.chemistry.Solution;
import tunside.quantity.Temperature;

/**
 * What can be said of a water at a temperature; 1 kg of water is taken for 1 L.
 *
 * @param water which
 * @param temperature 0 to 100 degC
 * @param closed its carbonate species in a closed vessel
 */
public record WaterProfile(Water water, Temperature temperature, CarbonateState closed) {
    /** Molar masses, g/mol (IUPAC-WEIGHTS). */
    private static final double BICARBONATE = 61.016;

    private static final double CARBONATE = 60.008;
    /** Molar mass of calcium carbonate, g/mol (IUPAC-WEIGHTS). */
    public static final double CALCIUM_CARBONATE_G_PER_MOL = 100.086;

    private static final double MG_CACO3_PER_MEQ = CALCIUM_CARBONATE_G_PER_MOL / 2;
    private static final double TRACE = 1e-9;

    /**
     * An ion.
     *
     * @param mgPerL mass
     * @param meqPerL charge
     */
    public record Amount(double mgPerL, double meqPerL) {}

    /** Reads a water. */
    public static WaterProfile of(Water water, Temperature temperature) {
        return new WaterProfile(water, temperature, CarbonateState.closed(water.solution(), temperature));
    }

    /** Every ion by its symbol, bicarbonate and carbonate as in the closed vessel. */
    public Map<String, Amount> ions() {
        Map<String, Amount> ions = new LinkedHashMap<>();
        for (Ion ion : Ion.ALL) {
            double mmol = 1000 * water.solution().ion(ion);
            ions.put(ion.symbol(), new Amount(mmol * ion.molarMassGPerMol(), mmol * Math.abs(ion.charge())));
        }
        double bicarbonate = 1000 * closed.bicarbonateMolPerKg();
        double carbonate = 1000 * closed.carbonateMolPerKg();
        ions.put("HCO3", new Amount(bicarbonate * BICARBONATE, bicarbonate));
        ions.put("CO3", new Amount(carbonate * CARBONATE, 2 * carbonate));
        return ions;
    }

    /** pH in a closed vessel. */
    public double closedPh() {
        return closed.ph();
    }

    /** pH after the carbon dioxide has come to that of the air. */
    public double openPh() {
        return ChargeBalance.solve(open(), temperature).ph();
    }

    private Solution open() {
        return CarbonateState.open(water.solution(), temperature, CarbonateState.AIR_PARTIAL_PRESSURE_ATM);
    }

    /**
     * Alkalinity, mEq/L: what the ions leave over; where a weak acid went in, its anions do not count, so that it is
     * bicarbonate, carbonate and hydroxide less hydrogen ion in the closed vessel.
     */
    public double alkalinityMeqPerL() {
        if (water.solution().acids().isEmpty()) {
            return water.alkalinityMeqPerL();
        }
        double gamma = Math.sqrt(Math.sqrt(closed.gammaOfTwo()));
        double hydrogen = Math.pow(10, -closed.ph());
        double hydroxide = Math.pow(10, closed.ph() - CarbonateConstants.pKWater(temperature));
        return 1000 * (closed.bicarbonateMolPerKg() + 2 * closed.carbonateMolPerKg() + (hydroxide - hydrogen) / gamma);
    }

    /** Alkalinity as CaCO3, mg/L. */
    public double alkalinityMgPerLAsCaCO3() {
        return MG_CACO3_PER_MEQ * alkalinityMeqPerL();
    }

    /** Calcium and magnesium, mEq/L. */
    public double hardnessMeqPerL() {
        return water.hardnessMeqPerL();
    }

    /** The part of the hardness that bicarbonate and carbonate match, mEq/L. */
    public double carbonateHardnessMeqPerL() {
        return Math.max(0, Math.min(hardnessMeqPerL(), alkalinityMeqPerL()));
    }

    /** The rest of the hardness, mEq/L. */
    public double nonCarbonateHardnessMeqPerL() {
        return hardnessMeqPerL() - carbonateHardnessMeqPerL();
    }

    /** Kolbach's residual alkalinity, mEq/L (KOLBACH-1953). */
    public double residualAlkalinityMeqPerL() {
        return water.residualAlkalinityMeqPerL(alkalinityMeqPerL());
    }

    /** All carbonate species, mmol/L. */
    public double carbonMmolPerL() {
        return 1000 * water.solution().carbon();
    }

    /** CO2(aq), mmol/L. */
    public double carbonDioxideMmolPerL() {
        return 1000 * closed.carbonDioxideMolPerKg();
    }

    /** Cations against anions of what is listed. */
    public IonBalance balance() {
        Map<Ion, Double> ions = mmolPerL();
        double anionsOfAcids = 0;
        if (!water.solution().acids().isEmpty()) {
            anionsOfAcids = water.alkalinityMeqPerL() - alkalinityMeqPerL();
        }
        return IonBalance.of(ions, alkalinityMeqPerL() + anionsOfAcids);
    }

    /** Conductivity that the ions make up, uS/cm at 25 degC. */
    public double conductivityMicrosiemensPerCm() {
        return Conductivities.microsiemensPerCm(mmolPerL(), alkalinityMeqPerL())
                / WaterModel.value("conductivity-recovery");
    }

    /** Dissolved solids that the ions make up, mg/L. */
    public double dissolvedSolidsMgPerL() {
        return DissolvedSolids.mgPerL(mmolPerL(), alkalinityMeqPerL());
    }

    /** Saturation index of calcite; minus infinity without calcium or carbon. */
    public double calciteIndex() {
        return Saturation.calcite(water.solution(), temperature);
    }

    /** Saturation index of gypsum; minus infinity without calcium or sulfate. */
    public double gypsumIndex() {
        return Saturation.gypsum(water.solution(), temperature);
    }

    /** Langelier's index by its short form; minus infinity where it asks for the logarithm of nothing. */
    public double langelierIndex() {
        double calcium = 2000 * water.solution().ion(Ion.CALCIUM) * MG_CACO3_PER_MEQ;
        double alkalinity = alkalinityMgPerLAsCaCO3();
        return calcium < TRACE || alkalinity < TRACE
                ? Double.NEGATIVE_INFINITY
                : Saturation.langelier(closedPh(), temperature, dissolvedSolidsMgPerL(), calcium, alkalinity);
    }

    /** Total hardness as CaCO3, mg/L. */
    public double hardnessMgPerLAsCaCO3() {
        return MG_CACO3_PER_MEQ * hardnessMeqPerL();
    }

    /** Charge of one mole of a weak acid at the closed vessel's pH, activities left out. */
    public double meanCharge(AcidSystem system) {
        return system.meanCharge(closed.ph(), temperature);
    }

    /**
     * Standard uncertainty of something about the water, to first order (GUM-2008).
     *
     * @param others the same water with one uncertain input after another one standard uncertainty further
     */
    public double standardUncertainty(List<WaterProfile> others, ToDoubleFunction<WaterProfile> what) {
        double centre = what.applyAsDouble(this);
        double variance = 0;
        for (WaterProfile other : others) {
            variance += Math.pow(what.applyAsDouble(other) - centre, 2);
        }
        return Math.sqrt(variance);
    }

    /** Total of each weak acid that went in, mmol/L. */
    public Map<AcidSystem, Double> acidsMmolPerL() {
        Map<AcidSystem, Double> acids = new LinkedHashMap<>();
        water.solution().acids().forEach((system, amount) -> acids.put(system, 1000 * amount));
        return acids;
    }

    private Map<Ion, Double> mmolPerL() {
        Map<Ion, Double> ions = new LinkedHashMap<>();
        water.solution().ions().forEach((ion, amount) -> ions.put(ion, 1000 * amount));
        return ions;
    }
}

package tunside.water;

import java.util.ArrayList;
import java.util.List;
import tunside.chemistry.CarbonateState;
import tunside.chemistry.Ion;
import tunside.chemistry.Solution;
import tunside.quantity.Temperature;
import tunside.reference.Row;
import tunside.reference.Table;

/** How near a water is to dropping calcite or gypsum. */
public final class Saturation {
    private static final List<double[]> GYPSUM = load();

    /** Molar mass of gypsum, g/mol (IUPAC-WEIGHTS). */
    private static final double GYPSUM_G_PER_MOL = 172.164;

    private Saturation() {}

    /**
     * Saturation index of calcite in a closed vessel: log10 of ion activity product over solubility product
     * (PLUMMER-BUSENBERG-1982), ion pairs taken off.
     *
     * @param temperature 0 to 100 degC
     * @return minus infinity without calcium or carbon
     */
    public static double calcite(Solution solution, Temperature temperature) {
        return CalciteEquilibrium.index(solution, temperature);
    }

    /**
     * Saturation index of gypsum; the solubility product is the one that gives pure water its tabulated solubility with
     * the same activities, so ion pairs are in it.
     */
    public static double gypsum(Solution solution, Temperature temperature) {
        CarbonateState state = CarbonateState.closed(solution, temperature);
        double product =
                state.freeCalciumMolPerKg() * solution.ion(Ion.SULFATE) * state.gammaOfTwo() * state.gammaOfTwo();
        double molPerKg = gypsumMolPerKg(temperature);
        Solution saturated = Solution.of(Ion.CALCIUM, molPerKg).plus(Solution.of(Ion.SULFATE, molPerKg));
        double gamma = CarbonateState.closed(saturated, temperature).gammaOfTwo();
        return Math.log10(product / (molPerKg * molPerKg * gamma * gamma));
    }

    /** Gypsum that pure water dissolves, mol/kg; below 20 degC the value there. */
    public static double gypsumMolPerKg(Temperature temperature) {
        double celsius = temperature.celsius();
        double[] below = GYPSUM.get(0);
        if (celsius <= below[0]) {
            return below[1] / GYPSUM_G_PER_MOL;
        }
        for (double[] above : GYPSUM) {
            if (celsius <= above[0]) {
                double share = (celsius - below[0]) / (above[0] - below[0]);
                return (below[1] + share * (above[1] - below[1])) / GYPSUM_G_PER_MOL;
            }
            below = above;
        }
        return below[1] / GYPSUM_G_PER_MOL;
    }

    /**
     * Langelier's index by its short form (LANGELIER-SHORT): pH less {@code (9.3 + A + B) - (C + D)}.
     *
     * @param ph of the water
     * @param temperature 0 to 100 degC
     * @param dissolvedSolidsMgPerL above 0
     * @param calciumMgPerLAsCaCO3 above 0
     * @param alkalinityMgPerLAsCaCO3 above 0
     */
    public static double langelier(
            double ph,
            Temperature temperature,
            double dissolvedSolidsMgPerL,
            double calciumMgPerLAsCaCO3,
            double alkalinityMgPerLAsCaCO3) {
        double a = (Math.log10(dissolvedSolidsMgPerL) - 1) / 10;
        double b = -13.12 * Math.log10(temperature.celsius() + 273) + 34.55;
        double c = Math.log10(calciumMgPerLAsCaCO3) - 0.4;
        double d = Math.log10(alkalinityMgPerLAsCaCO3);
        return ph - (9.3 + a + b - c - d);
    }

    private static List<double[]> load() {
        List<double[]> rows = new ArrayList<>();
        double last = -1;
        for (Row row : Table.read("gypsum-solubility.csv").rows()) {
            double celsius = row.number("temperature_degC", last, 100);
            rows.add(new double[] {celsius, row.number("grams_per_kg", 1, 4)});
            last = celsius;
        }
        return List.copyOf(rows);
    }
}

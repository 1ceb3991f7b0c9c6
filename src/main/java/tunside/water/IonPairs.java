package tunside.water;

import static java.util.Objects.requireNonNull;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import tunside.chemistry.CarbonateState;
import tunside.chemistry.Ion;
import tunside.chemistry.IonAmounts;
import tunside.chemistry.Solution;
import tunside.quantity.Temperature;
import tunside.reference.Row;
import tunside.reference.Table;

/**
 * What calcium and magnesium hold back from a mineral by pairing with anions, from {@code ion-pairs.csv}. The pairs hardly
 * matter to a pH, but in hot or limed water they carry a tenth of what is left.
 */
final class IonPairs {
    private static final Map<String, double[]> ALL = load();

    private IonPairs() {}

    /**
     * Pairs besides CaCO3, mol/kg.
     *
     * @param calciumBicarbonate CaHCO3+
     * @param calciumSulfate CaSO4
     * @param magnesiumCarbonate MgCO3
     * @param magnesiumSulfate MgSO4
     */
    record Held(double calciumBicarbonate, double calciumSulfate, double magnesiumCarbonate, double magnesiumSulfate) {
        static final Held NONE = new Held(0, 0, 0, 0);

        /**
         * Those in equilibrium with the free ions of a solution.
         *
         * @param state of that solution
         */
        static Held of(Solution free, CarbonateState state, Temperature temperature) {
            double two = state.gammaOfTwo() * state.gammaOfTwo();
            double calcium = free.ion(Ion.CALCIUM);
            double magnesium = free.ion(Ion.MAGNESIUM);
            double sulfate = free.ion(Ion.SULFATE);
            return new Held(
                    k("CaHCO3", temperature) * state.gammaOfTwo() * calcium * state.bicarbonateMolPerKg(),
                    k("CaSO4", temperature) * two * calcium * sulfate,
                    k("MgCO3", temperature) * two * magnesium * state.carbonateMolPerKg(),
                    k("MgSO4", temperature) * two * magnesium * sulfate);
        }

        /** The solution without them; CaHCO3+ leaves its charge. */
        Solution removedFrom(Solution solution) {
            return new Solution(
                    IonAmounts.changed(solution.ions(), (ion, amount) -> Math.max(0, amount - held(ion))),
                    Math.max(0, solution.carbon() - calciumBicarbonate - magnesiumCarbonate),
                    solution.acids(),
                    solution.base() + calciumBicarbonate);
        }

        private double held(Ion ion) {
            return switch (ion) {
                case CALCIUM -> calciumBicarbonate + calciumSulfate;
                case MAGNESIUM -> magnesiumCarbonate + magnesiumSulfate;
                case SULFATE -> calciumSulfate + magnesiumSulfate;
                default -> 0;
            };
        }
    }

    /** CaCO3 pairs beside free ions of an activity product, mol/kg. */
    static double calciumCarbonate(double activityProduct, Temperature temperature) {
        return k("CaCO3", temperature) * activityProduct;
    }

    /** Association constant at zero ionic strength. */
    static double k(String pair, Temperature temperature) {
        double[] c = requireNonNull(ALL.get(pair));
        double t = temperature.kelvin();
        return Math.pow(10, c[0] + c[1] * t + c[2] / t + c[3] * Math.log10(t));
    }

    private static Map<String, double[]> load() {
        Map<String, double[]> pairs = new LinkedHashMap<>();
        for (Row row : Table.read("ion-pairs.csv").rows()) {
            pairs.put(row.text("pair"), new double[] {row.number("a"), row.number("b"), row.number("c"), row.number("d")
            });
        }
        return Collections.unmodifiableMap(pairs);
    }
}

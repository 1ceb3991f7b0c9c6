package tunside.chemistry;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tunside.quantity.Temperature;

/**
 * The forms of every weak acid in a solution and an addition, alone or held by calcium or magnesium, laid out in arrays at
 * one temperature. Concentrations within one acid are in proportion to {@code factor aH^z (aM / aH^2) gamma^(-z^2)}, with the
 * form's charge z and the activity of the metal that holds it, if one does.
 */
final class Species {
    /** The metals that acids hold. */
    static final List<Ion> METALS = List.of(Ion.CALCIUM, Ion.MAGNESIUM);

    /** Every acid has a class of forms that are alone, and one for each metal. */
    static final int CLASSES = 1 + METALS.size();

    private static final double LN_10 = Math.log(10);

    private final double[] amounts;
    private final double[] addedAmounts;
    private final int[] ends; // of each acid's classes
    private final int[] charges;
    private final double[] factors;

    Species(Solution solution, Solution addition, Temperature temperature, boolean open) {
        Map<AcidSystem, double[]> systems = systems(solution, addition, open);
        int most = 0;
        for (AcidSystem system : systems.keySet()) {
            most += system.steps().size() + 1 + MetalComplexes.of(system).size();
        }
        this.amounts = new double[systems.size()];
        this.addedAmounts = new double[systems.size()];
        this.ends = new int[CLASSES * systems.size()];
        this.charges = new int[most];
        this.factors = new double[most];
        int acid = 0;
        int end = 0;
        for (Map.Entry<AcidSystem, double[]> entry : systems.entrySet()) {
            AcidSystem system = entry.getKey();
            amounts[acid] = entry.getValue()[0];
            addedAmounts[acid] = entry.getValue()[1];
            int begin = end;
            charges[end] = system.topCharge();
            factors[end++] = 1;
            for (DissociationConstant step : system.steps()) {
                charges[end] = charges[end - 1] - 1;
                factors[end] = factors[end - 1] * Math.exp(-LN_10 * step.pK(temperature));
                end++;
            }
            ends[CLASSES * acid] = end;
            for (int metal = 1; metal < CLASSES; metal++) {
                Ion ion = METALS.get(metal - 1);
                if (solution.ion(ion) > 0 || addition.ion(ion) > 0) {
                    for (MetalComplexes.Complex complex : MetalComplexes.of(system)) {
                        if (complex.metal() == ion) {
                            int form = begin + complex.protonsLost();
                            charges[end] = charges[form] + ion.charge();
                            factors[end++] = factors[form] * complex.constant();
                        }
                    }
                }
                ends[CLASSES * acid + metal] = end;
            }
            acid++;
        }
    }

    /** All reacting acids with their amounts in the solution and in the addition; carbonic acid first. */
    private static Map<AcidSystem, double[]> systems(Solution solution, Solution addition, boolean open) {
        Map<AcidSystem, double[]> systems = new LinkedHashMap<>();
        if (open || solution.carbon() > 0 || addition.carbon() > 0) {
            systems.put(Acids.CARBONIC, new double[] {solution.carbon(), addition.carbon()});
        }
        double sulfate = solution.ion(Ion.SULFATE);
        double addedSulfate = addition.ion(Ion.SULFATE);
        if (sulfate > 0 || addedSulfate > 0) {
            systems.put(Acids.get("sulfuric").system(), new double[] {sulfate, addedSulfate});
        }
        solution.acids().forEach((system, amount) -> systems.computeIfAbsent(system, k -> new double[2])[0] += amount);
        addition.acids().forEach((system, amount) -> systems.computeIfAbsent(system, k -> new double[2])[1] += amount);
        return systems;
    }

    /** How many acids there are. */
    int acids() {
        return amounts.length;
    }

    /** Total of an acid with so much of the addition, mol/kg. */
    double total(int acid, double added) {
        return amounts[acid] + added * addedAmounts[acid];
    }

    /** Index of the first form of an acid's class; its classes follow each other. */
    int begin(int acid, int ofClass) {
        int place = CLASSES * acid + ofClass;
        return place == 0 ? 0 : ends[place - 1];
    }

    /** Index behind the last form of an acid's class. */
    int end(int acid, int ofClass) {
        return ends[CLASSES * acid + ofClass];
    }

    /** Charge of a form, from -4 to 2. */
    int charge(int form) {
        return charges[form];
    }

    /** Its equilibrium constant from the acid's most protonated form, at zero ionic strength. */
    double factor(int form) {
        return factors[form];
    }

    /** Whether a metal meets an acid that holds it. */
    boolean holds(int metal) {
        for (int acid = 0; acid < amounts.length; acid++) {
            if (end(acid, metal) > begin(acid, metal)) {
                return true;
            }
        }
        return false;
    }
}

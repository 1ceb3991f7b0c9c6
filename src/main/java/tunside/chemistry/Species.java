package tunside.chemistry;

import java.util.ArrayList;
import java.util.List;
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
    private static final AcidSystem SULFURIC = Acids.get("sulfuric").system();

    private final List<AcidSystem> systems = new ArrayList<>(); // carbonic acid first
    private final double[] amounts;
    private final double[] addedAmounts;
    private final int[] ends; // of each acid's classes
    private final int[] charges;
    private final double[] factors;

    Species(Solution solution, Solution addition, Temperature temperature, boolean open) {
        int acids = 2 + solution.acids().size() + addition.acids().size();
        this.amounts = new double[acids];
        this.addedAmounts = new double[acids];
        addAcids(solution, addition, open);
        int most = 0;
        for (AcidSystem system : systems) {
            most += system.steps().size() + 1 + MetalComplexes.of(system).size();
        }
        this.ends = new int[CLASSES * systems.size()];
        this.charges = new int[most];
        this.factors = new double[most];
        boolean[] meets = new boolean[CLASSES];
        for (int metal = 1; metal < CLASSES; metal++) {
            Ion ion = METALS.get(metal - 1);
            meets[metal] = solution.ion(ion) > 0 || addition.ion(ion) > 0;
        }
        int end = 0;
        for (int acid = 0; acid < acids(); acid++) {
            AcidSystem system = systems.get(acid);
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
                end = meets[metal] ? addComplexes(system, METALS.get(metal - 1), begin, end) : end;
                ends[CLASSES * acid + metal] = end;
            }
        }
    }

    /** The forms of an acid that a metal holds; gives the index behind them. */
    private int addComplexes(AcidSystem system, Ion metal, int begin, int end) {
        int next = end;
        for (MetalComplexes.Complex complex : MetalComplexes.of(system)) {
            if (complex.metal() == metal) {
                int form = begin + complex.protonsLost();
                charges[next] = charges[form] + metal.charge();
                factors[next++] = factors[form] * complex.constant();
            }
        }
        return next;
    }

    private void addAcids(Solution solution, Solution addition, boolean open) {
        if (open || solution.carbon() > 0 || addition.carbon() > 0) {
            add(Acids.CARBONIC, solution.carbon(), addition.carbon());
        }
        double sulfate = solution.ion(Ion.SULFATE);
        double addedSulfate = addition.ion(Ion.SULFATE);
        if (sulfate > 0 || addedSulfate > 0) {
            add(SULFURIC, sulfate, addedSulfate);
        }
        solution.acids().forEach((system, amount) -> add(system, amount, 0));
        addition.acids().forEach((system, amount) -> {
            int place = systems.indexOf(system);
            if (place >= 0) {
                addedAmounts[place] += amount;
            } else {
                add(system, 0, amount);
            }
        });
    }

    private void add(AcidSystem system, double amount, double addedAmount) {
        amounts[systems.size()] = amount;
        addedAmounts[systems.size()] = addedAmount;
        systems.add(system);
    }

    /** How many acids there are. */
    int acids() {
        return systems.size();
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
        for (int acid = 0; acid < acids(); acid++) {
            if (end(acid, metal) > begin(acid, metal)) {
                return true;
            }
        }
        return false;
    }
}

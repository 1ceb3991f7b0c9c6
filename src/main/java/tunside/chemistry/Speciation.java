package tunside.chemistry;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import tunside.quantity.Temperature;

/**
 * One solution at one temperature, laid out in arrays for many evaluations at different pH.
 *
 * <p>Constants are mixed: the activity of H+ as the pH gives it, concentrations of everything else. With Davies'
 * function f and slope A, {@code log10 gamma(z) = -A z^2 f(I)}. Ionic strength is iterated to 1e-10 relative, at most 60
 * times; the last one is where the next evaluation starts.
 */
final class Speciation {
    private static final double LN10 = Math.log(10);
    private static final int MOST_ITERATIONS = 60;
    private static final int MOST_METAL_ITERATIONS = 500;
    private static final double LARGEST_STRENGTH = 0.5;

    private final double fixedCharge;
    private final double fixedStrength;
    private final double[] metals;
    private final WeakAcid[] acids;
    private final double slope;
    private final double pKWater;
    private final double[] freeMetals = new double[2];
    private final double[] state = new double[1];

    private static final class WeakAcid {
        private final double total;
        private final int topCharge;
        private final double[] pK;
        private final int[] metal;
        private final int[] protonsLost;
        private final double[] logK;
        private final double[] weights;

        WeakAcid(AcidSystem system, double total, Temperature temperature, boolean withMetals) {
            this.total = total;
            this.topCharge = system.topCharge();
            this.pK = new double[system.steps().size()];
            for (int step = 0; step < pK.length; step++) {
                pK[step] = system.pK(step + 1, temperature);
            }
            List<MetalComplexes.Complex> complexes = withMetals ? MetalComplexes.of(system) : List.of();
            this.metal = complexes.stream()
                    .mapToInt(c -> c.metal() == Ion.CALCIUM ? 0 : 1)
                    .toArray();
            this.protonsLost = complexes.stream()
                    .mapToInt(MetalComplexes.Complex::protonsLost)
                    .toArray();
            this.logK =
                    complexes.stream().mapToDouble(MetalComplexes.Complex::logK).toArray();
            this.weights = new double[pK.length + 1 + complexes.size()];
        }
    }

    Speciation(Solution solution, Temperature temperature) {
        double calcium = solution.ion(Ion.CALCIUM);
        double magnesium = solution.ion(Ion.MAGNESIUM);
        double sulfate = solution.ion(Ion.SULFATE);
        this.metals = new double[] {calcium, magnesium};
        List<WeakAcid> weak = new ArrayList<>();
        if (solution.carbon() > 0) {
            weak.add(new WeakAcid(Acids.CARBONIC, solution.carbon(), temperature, false));
        }
        if (sulfate > 0) {
            weak.add(new WeakAcid(Acids.get("sulfuric").system(), sulfate, temperature, false));
        }
        boolean withMetals = calcium + magnesium > 0;
        for (Map.Entry<AcidSystem, Double> entry : solution.acids().entrySet()) {
            if (entry.getValue() > 0) {
                weak.add(new WeakAcid(entry.getKey(), entry.getValue(), temperature, withMetals));
            }
        }
        this.acids = weak.toArray(WeakAcid[]::new);
        double charge = solution.base();
        double strength = Math.abs(solution.base());
        for (Map.Entry<Ion, Double> entry : solution.ions().entrySet()) {
            Ion ion = entry.getKey();
            if (ion == Ion.SODIUM || ion == Ion.POTASSIUM || ion == Ion.CHLORIDE || ion == Ion.NITRATE) {
                charge += ion.charge() * entry.getValue();
                strength += entry.getValue();
            }
        }
        this.fixedCharge = charge;
        this.fixedStrength = strength;
        this.slope = Activity.debyeHuckelSlope(temperature);
        this.pKWater = CarbonateConstants.pKWater(temperature);
    }

    /** Ionic strength of the last evaluation, mol/kg. */
    double ionicStrength() {
        return state[0];
    }

    /** Charge of everything dissolved at a pH, mol/kg. */
    double netCharge(double ph) {
        double charge = 0;
        for (int i = 0; i < MOST_ITERATIONS; i++) {
            double before = state[0];
            charge = evaluate(ph, before);
            if (Math.abs(state[0] - before) <= 1e-10 * state[0]) {
                break;
            }
        }
        return charge;
    }

    /** Charge at a given ionic strength; leaves the strength that it finds in {@link #state}. */
    private double evaluate(double ph, double ionicStrength) {
        double af = slope * Activity.daviesFunction(Math.min(ionicStrength, LARGEST_STRENGTH));
        double hydrogen = Math.exp(LN10 * (af - ph));
        double hydroxide = Math.exp(LN10 * (af + ph - pKWater));
        weigh(ph, af);
        bindMetals();
        double charge = fixedCharge + hydrogen - hydroxide + 2 * (freeMetals[0] + freeMetals[1]);
        double doubleStrength = fixedStrength + hydrogen + hydroxide + 4 * (freeMetals[0] + freeMetals[1]);
        for (WeakAcid acid : acids) {
            double sum = boundSum(acid);
            double perWeight = acid.total / sum;
            int forms = acid.pK.length + 1;
            for (int j = 0; j < forms; j++) {
                int z = acid.topCharge - j;
                double amount = perWeight * acid.weights[j];
                charge += z * amount;
                doubleStrength += z * z * amount;
            }
            for (int c = 0; c < acid.metal.length; c++) {
                int z = acid.topCharge - acid.protonsLost[c] + 2;
                double amount = perWeight * acid.weights[forms + c] * freeMetals[acid.metal[c]];
                charge += z * amount;
                doubleStrength += z * z * amount;
            }
        }
        state[0] = doubleStrength / 2;
        return charge;
    }

    /** Relative amounts of every form (most protonated = 1, then scaled), and of every complex per free metal. */
    private void weigh(double ph, double af) {
        for (WeakAcid acid : acids) {
            double[] weights = acid.weights;
            double log = 0;
            double largest = 0;
            weights[0] = 0;
            for (int step = 0; step < acid.pK.length; step++) {
                int z = acid.topCharge - step;
                log += ph - (acid.pK[step] + af * (2 * z - 1));
                weights[step + 1] = log;
                largest = Math.max(largest, log);
            }
            int forms = acid.pK.length + 1;
            for (int c = 0; c < acid.metal.length; c++) {
                int z = acid.topCharge - acid.protonsLost[c];
                // log K' = log K + log gamma(M) + log gamma(L) - log gamma(ML)
                double logK = acid.logK[c] - af * (4 + z * z - (z + 2) * (z + 2));
                weights[forms + c] = weights[acid.protonsLost[c]] + logK;
            }
            for (int j = 0; j < weights.length; j++) {
                weights[j] = Math.exp(LN10 * (weights[j] - largest));
            }
        }
    }

    private double boundSum(WeakAcid acid) {
        int forms = acid.pK.length + 1;
        double sum = 0;
        for (int j = 0; j < forms; j++) {
            sum += acid.weights[j];
        }
        for (int c = 0; c < acid.metal.length; c++) {
            sum += acid.weights[forms + c] * freeMetals[acid.metal[c]];
        }
        return sum;
    }

    /**
     * Free metal by its mass balance. The map from one guess to the next rises with the guess, so that from the total it
     * falls monotonically to the one solution; its rate is the bound share of the metal times that of the ligand.
     */
    private void bindMetals() {
        freeMetals[0] = metals[0];
        freeMetals[1] = metals[1];
        for (int i = 0; i < MOST_METAL_ITERATIONS; i++) {
            double calcium = 1;
            double magnesium = 1;
            for (WeakAcid acid : acids) {
                if (acid.metal.length == 0) {
                    continue;
                }
                int forms = acid.pK.length + 1;
                double perWeight = acid.total / boundSum(acid);
                for (int c = 0; c < acid.metal.length; c++) {
                    double bound = perWeight * acid.weights[forms + c];
                    if (acid.metal[c] == 0) {
                        calcium += bound;
                    } else {
                        magnesium += bound;
                    }
                }
            }
            double nextCalcium = metals[0] / calcium;
            double nextMagnesium = metals[1] / magnesium;
            boolean settled = Math.abs(nextCalcium - freeMetals[0]) <= 1e-12 * metals[0]
                    && Math.abs(nextMagnesium - freeMetals[1]) <= 1e-12 * metals[1];
            freeMetals[0] = nextCalcium;
            freeMetals[1] = nextMagnesium;
            if (settled) {
                return;
            }
        }
    }
}

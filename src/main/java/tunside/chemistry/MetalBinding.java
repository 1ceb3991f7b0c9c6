package tunside.chemistry;

import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * How much calcium and magnesium is bound by weak acids, at given shares of the acids' forms.
 *
 * <p>The free metals solve their mass balances. In the logarithm of the free metals these are the gradient of a strictly
 * convex function, so Newton's method with a limited and halved step converges from any start.
 */
final class MetalBinding {
    private static final Ion[] METALS = {Ion.CALCIUM, Ion.MAGNESIUM};
    private static final int MOST_STEPS = 200;
    private static final int MOST_HALVINGS = 40;
    private static final double LARGEST_STEP = 3;
    private static final double TOLERANCE = 1e-8; // of the last step: what it leaves is its square

    private final double[][][] constants; // by metal, system, form; null where nothing binds
    private final int[] topCharges;
    private final double[] metals;
    private final double[] addedMetals;

    private final double[] totals = new double[METALS.length];
    private final double[] free = new double[METALS.length];
    private final double[] trial = new double[METALS.length];
    private final double[] gradient = new double[METALS.length];
    private final double[] trialGradient = new double[METALS.length];
    private final double[][] affinity; // by metal and system: bound per free metal and free ligand
    private final double[] ligands;
    private final double[] unboundShares;
    private final double[] sums = new double[2]; // charge and squared charges of free metals and complexes

    private MetalBinding(double[][][] constants, int[] topCharges, double[] metals, double[] addedMetals) {
        this.constants = constants;
        this.topCharges = topCharges;
        this.metals = metals;
        this.addedMetals = addedMetals;
        this.affinity = new double[METALS.length][topCharges.length];
        this.ligands = new double[topCharges.length];
        this.unboundShares = new double[topCharges.length];
        Arrays.fill(unboundShares, 1);
    }

    /** The binding in a solution with an addition, or null where no metal meets an acid that binds it. */
    static @Nullable MetalBinding of(Solution solution, Solution addition, List<AcidSystem> systems) {
        double[] metals = amounts(solution);
        double[] addedMetals = amounts(addition);
        double[][][] constants = new double[METALS.length][systems.size()][];
        int[] topCharges = new int[systems.size()];
        boolean binds = false;
        for (int s = 0; s < systems.size(); s++) {
            AcidSystem system = systems.get(s);
            int steps = system.steps().size();
            topCharges[s] = system.topCharge();
            for (MetalComplexes.Complex complex : MetalComplexes.of(system)) {
                int metal = complex.metal() == METALS[0] ? 0 : 1;
                if (metals[metal] > 0 || addedMetals[metal] > 0) {
                    if (constants[metal][s] == null) {
                        constants[metal][s] = new double[steps + 1];
                    }
                    constants[metal][s][complex.protonsLost()] = Math.pow(10, complex.logK());
                    binds = true;
                }
            }
        }
        return binds ? new MetalBinding(constants, topCharges, metals, addedMetals) : null;
    }

    private static double[] amounts(Solution solution) {
        double[] amounts = new double[METALS.length];
        for (int m = 0; m < METALS.length; m++) {
            amounts[m] = solution.ion(METALS[m]);
        }
        return amounts;
    }

    /** Whether this ion is counted here. */
    boolean binds(Ion ion) {
        return ion == METALS[0] || ion == METALS[1];
    }

    /** Calcium that nothing holds, mol/kg. */
    double freeCalcium() {
        return free[0];
    }

    /** Charge of the free metals and of the complexes, mol/kg. */
    double charge() {
        return sums[0];
    }

    /** Squared charges of the free metals and of the complexes times their amounts, mol/kg. */
    double squares() {
        return sums[1];
    }

    /** Share of a system's total that no metal holds. */
    double unboundShare(int system) {
        return unboundShares[system];
    }

    /**
     * Solves the mass balances.
     *
     * @param shares of the forms in the unbound total, by system
     * @param gammaOfTwo activity coefficient of a doubly charged ion
     * @return Newton steps that it took, at most 200
     */
    int solve(double[][] shares, double[] amounts, double[] addedAmounts, double added, double gammaOfTwo) {
        for (int s = 0; s < ligands.length; s++) {
            ligands[s] = amounts[s] + added * addedAmounts[s];
        }
        for (int m = 0; m < METALS.length; m++) {
            totals[m] = metals[m] + added * addedMetals[m];
            boolean startsAfresh = !(free[m] > 0 && free[m] <= totals[m]);
            if (startsAfresh) {
                free[m] = totals[m];
            }
            for (int s = 0; s < ligands.length; s++) {
                affinity[m][s] = affinity(m, s, shares, gammaOfTwo);
            }
        }
        int steps = 0;
        double change;
        do {
            change = newtonStep();
            steps++;
        } while (change > TOLERANCE && steps < MOST_STEPS);
        sumUp(shares, gammaOfTwo);
        return steps;
    }

    private double affinity(int m, int s, double[][] shares, double gammaOfTwo) {
        double sum = 0;
        if (constants[m][s] != null) {
            for (int j = 0; j < constants[m][s].length; j++) {
                sum += formAffinity(m, s, j, shares, gammaOfTwo);
            }
        }
        return sum;
    }

    /** gamma(M) gamma(L) / gamma(ML) of a double cation with an anion of charge z is gamma(2) to the power -z. */
    private double formAffinity(int m, int s, int form, double[][] shares, double gammaOfTwo) {
        double value = constants[m][s][form] * shares[s][form];
        for (int z = topCharges[s] - form; z < 0; z++) {
            value *= gammaOfTwo;
        }
        return value;
    }

    private double denominator(int s, double[] metal) {
        return 1 + affinity[0][s] * metal[0] + affinity[1][s] * metal[1];
    }

    private void setGradient(double[] metal, double[] result) {
        for (int m = 0; m < METALS.length; m++) {
            double sum = metal[m] - totals[m];
            for (int s = 0; s < ligands.length; s++) {
                sum += ligands[s] * affinity[m][s] * metal[m] / denominator(s, metal);
            }
            result[m] = sum;
        }
    }

    /** One damped Newton step in the logarithms of the free metals; returns the largest relative change. */
    private double newtonStep() {
        setGradient(free, gradient);
        double h00 = free[0];
        double h11 = free[1];
        double h01 = 0;
        for (int s = 0; s < ligands.length; s++) {
            double denominator = denominator(s, free);
            double bound0 = affinity[0][s] * free[0] / denominator;
            double bound1 = affinity[1][s] * free[1] / denominator;
            h00 += ligands[s] * bound0 * (1 - bound0);
            h11 += ligands[s] * bound1 * (1 - bound1);
            h01 -= ligands[s] * bound0 * bound1;
        }
        double step0;
        double step1;
        if (totals[0] > 0 && totals[1] > 0) {
            double determinant = h00 * h11 - h01 * h01;
            step0 = -(gradient[0] * h11 - gradient[1] * h01) / determinant;
            step1 = -(gradient[1] * h00 - gradient[0] * h01) / determinant;
        } else {
            step0 = totals[0] > 0 ? -gradient[0] / h00 : 0;
            step1 = totals[1] > 0 ? -gradient[1] / h11 : 0;
        }
        double longest = Math.max(Math.abs(step0), Math.abs(step1));
        double scale = longest > LARGEST_STEP ? LARGEST_STEP / longest : 1;
        double slope = Math.abs(gradient[0] * step0 + gradient[1] * step1);
        for (int halving = 0; halving < MOST_HALVINGS; halving++) {
            trial[0] = free[0] * Math.exp(scale * step0);
            trial[1] = free[1] * Math.exp(scale * step1);
            setGradient(trial, trialGradient);
            if (trialGradient[0] * step0 + trialGradient[1] * step1 <= 0.5 * slope) {
                break;
            }
            scale /= 2;
        }
        free[0] = trial[0];
        free[1] = trial[1];
        return longest;
    }

    private void sumUp(double[][] shares, double gammaOfTwo) {
        double charge = 2 * (free[0] + free[1]);
        double squares = 4 * (free[0] + free[1]);
        for (int s = 0; s < ligands.length; s++) {
            double unboundShare = 1 / denominator(s, free);
            unboundShares[s] = unboundShare;
            for (int m = 0; m < METALS.length; m++) {
                if (constants[m][s] != null) {
                    double pairs = ligands[s] * unboundShare * free[m];
                    for (int j = 0; j < constants[m][s].length; j++) {
                        int z = 2 + topCharges[s] - j;
                        double bound = pairs * formAffinity(m, s, j, shares, gammaOfTwo);
                        charge += z * bound;
                        squares += z * z * bound;
                    }
                }
            }
        }
        sums[0] = charge;
        sums[1] = squares;
    }
}

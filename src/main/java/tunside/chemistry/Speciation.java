package tunside.chemistry;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tunside.quantity.Temperature;

/**
 * A solution, and something that may be added to it, laid out in arrays at one temperature, so that its charge can be
 * computed many times in a fraction of a microsecond. For one thread; keeps the last ionic strength as the next start.
 *
 * <p>At a given pH the ionic strength is the fixed point of {@code I -> I(activity coefficients(I))}, which contracts
 * strongly at brewing dilution; activity coefficients stay at their value of 0.5 mol/kg above that, where Davies'
 * equation ends.
 */
final class Speciation {
    private static final double LN_10 = Math.log(10);
    private static final double LARGEST_DAVIES_IONIC_STRENGTH = 0.5;
    private static final int MOST_IONIC_STRENGTH_STEPS = 100;

    private static final int IONIC_STRENGTH = 0;
    private static final int NET_CHARGE = 1;

    private final double slope;
    private final double waterIonProduct;
    /** Henry's fixed CO2(aq) in open vessels, mol/kg; negative in closed ones. */
    private final double openCarbonDioxide;

    /** Of each system: charge of its first form; constants of its steps; amount of the solution, of the addition. */
    private final int[] topCharges;

    private final double[][] constants;
    private final double[] amounts;
    private final double[] addedAmounts;

    private final double metalFree; // charge and ionic strength of the ions that never react
    private final double metalFreeAdded;
    private final double squares;
    private final double squaresAdded;
    private final double base;
    private final double baseAdded;

    private final @Nullable MetalBinding binding;

    private final double[] state = {0.01, 0};
    private final double[] gammas = new double[1 - AcidSystem.LOWEST_CHARGE];
    private final double[][] shares;

    Speciation(Solution solution, Solution addition, Temperature temperature, double openCarbonDioxide) {
        this.slope = Activity.debyeHuckelSlope(temperature) * LN_10;
        this.waterIonProduct = Math.exp(-LN_10 * CarbonateConstants.pKWater(temperature));
        this.openCarbonDioxide = openCarbonDioxide;
        this.base = solution.base();
        this.baseAdded = addition.base();

        Map<AcidSystem, double[]> systems = systems(solution, addition, openCarbonDioxide >= 0);
        int count = systems.size();
        this.topCharges = new int[count];
        this.constants = new double[count][];
        this.amounts = new double[count];
        this.addedAmounts = new double[count];
        this.shares = new double[count][];
        int s = 0;
        for (Map.Entry<AcidSystem, double[]> entry : systems.entrySet()) {
            List<DissociationConstant> steps = entry.getKey().steps();
            topCharges[s] = entry.getKey().topCharge();
            constants[s] = new double[steps.size()];
            for (int j = 0; j < steps.size(); j++) {
                constants[s][j] = Math.exp(-LN_10 * steps.get(j).pK(temperature));
            }
            amounts[s] = entry.getValue()[0];
            addedAmounts[s] = entry.getValue()[1];
            shares[s] = new double[steps.size() + 1];
            s++;
        }

        this.binding = MetalBinding.of(solution, addition, List.copyOf(systems.keySet()));
        double[] ions = unreactive(solution);
        double[] addedIons = unreactive(addition);
        this.metalFree = ions[0];
        this.squares = ions[1];
        this.metalFreeAdded = addedIons[0];
        this.squaresAdded = addedIons[1];
    }

    /** In a closed vessel, with something that may be added. */
    Speciation(Solution solution, Solution addition, Temperature temperature) {
        this(solution, addition, temperature, -1);
    }

    /** In a closed vessel, with nothing to add. */
    Speciation(Solution solution, Temperature temperature) {
        this(solution, Solution.WATER, temperature, -1);
    }

    /** All reacting systems with their amounts in the solution and in the addition; carbonic acid first. */
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

    /** Charge and sum of squared charges of the ions that take no part in a reaction. */
    private double[] unreactive(Solution solution) {
        double charge = 0;
        double square = 0;
        for (Map.Entry<Ion, Double> entry : solution.ions().entrySet()) {
            Ion ion = entry.getKey();
            if (ion != Ion.SULFATE && !(binding != null && binding.binds(ion))) {
                charge += ion.charge() * entry.getValue();
                square += ion.charge() * ion.charge() * entry.getValue();
            }
        }
        return new double[] {charge, square};
    }

    /** Ionic strength of the last evaluation, mol/kg. */
    double ionicStrength() {
        return state[IONIC_STRENGTH];
    }

    /** Share of CO2(aq), HCO3- or CO3-- in all inorganic carbon at the last evaluation; only with carbon. */
    double carbonShare(int protonsLost) {
        return shares[0][protonsLost];
    }

    /** Calcium of the solution that no weak acid holds at the last evaluation, mol/kg. */
    double freeCalcium(Solution solution) {
        return binding == null ? solution.ion(Ion.CALCIUM) : binding.freeCalcium();
    }

    /** Activity coefficient of an ion of so many charges at the last evaluation. */
    double gamma(int charges) {
        return gammas[charges];
    }

    /** Net charge of the solution alone at a pH, mol/kg. */
    double netCharge(double ph) {
        return netCharge(ph, 0);
    }

    /** Net charge at a pH with so much of the addition, mol/kg. */
    double netCharge(double ph, double added) {
        double activityOfH = Math.exp(-LN_10 * ph);
        for (int step = 0; step < MOST_IONIC_STRENGTH_STEPS; step++) {
            double before = state[IONIC_STRENGTH];
            evaluate(activityOfH, added);
            double change = Math.abs(state[IONIC_STRENGTH] - before);
            if (change <= 1e-14 + 1e-9 * before) {
                break;
            }
        }
        return state[NET_CHARGE];
    }

    /** One step of the fixed point: charge and ionic strength from the activity coefficients of the last one. */
    private void evaluate(double activityOfH, double added) {
        setGammas(state[IONIC_STRENGTH]);
        double gamma = gammas[1];
        double hydrogen = activityOfH / gamma;
        double hydroxide = waterIonProduct / activityOfH / gamma;
        double charge = hydrogen - hydroxide + metalFree + added * metalFreeAdded;
        double sumOfSquares = hydrogen + hydroxide + squares + added * squaresAdded;
        if (binding != null) {
            for (int s = 0; s < shares.length; s++) {
                setShares(s, activityOfH);
            }
            binding.solve(shares, amounts, addedAmounts, added, gammas[2]);
            charge += binding.charge();
            sumOfSquares += binding.squares();
        }
        for (int s = 0; s < shares.length; s++) {
            double amount = amounts[s] + added * addedAmounts[s];
            if (binding == null) {
                setShares(s, activityOfH);
            } else {
                amount *= binding.unboundShare(s);
            }
            double[] ofSystem = shares[s];
            if (s == 0 && openCarbonDioxide >= 0) {
                amount = openCarbonDioxide / ofSystem[0];
            }
            double meanCharge = 0;
            double meanSquare = 0;
            for (int j = 0; j < ofSystem.length; j++) {
                int z = topCharges[s] - j;
                meanCharge += z * ofSystem[j];
                meanSquare += z * z * ofSystem[j];
            }
            charge += amount * meanCharge;
            sumOfSquares += amount * meanSquare;
        }
        double strongBase = base + added * baseAdded;
        state[NET_CHARGE] = charge + strongBase;
        state[IONIC_STRENGTH] = 0.5 * (sumOfSquares + Math.abs(charge));
    }

    private void setGammas(double ionicStrength) {
        double davies = Activity.daviesFunction(Math.min(ionicStrength, LARGEST_DAVIES_IONIC_STRENGTH));
        double gamma = Math.exp(-slope * davies);
        double square = gamma * gamma;
        gammas[0] = 1;
        gammas[1] = gamma;
        gammas[2] = square * square;
        gammas[3] = gammas[2] * gammas[2] * gamma;
        gammas[4] = gammas[2] * gammas[2] * gammas[2] * gammas[2];
    }

    /** Shares of a system's forms in its unbound total. */
    private void setShares(int s, double activityOfH) {
        double[] ofSystem = shares[s];
        double term = 1;
        double sum = 1;
        ofSystem[0] = 1;
        for (int j = 1; j < ofSystem.length; j++) {
            int z = topCharges[s] - j + 1;
            term *= constants[s][j - 1] / activityOfH * gammas[Math.abs(z)] / gammas[Math.abs(z - 1)];
            ofSystem[j] = term;
            sum += term;
        }
        double scale = 1 / sum;
        for (int j = 0; j < ofSystem.length; j++) {
            ofSystem[j] *= scale;
        }
    }
}

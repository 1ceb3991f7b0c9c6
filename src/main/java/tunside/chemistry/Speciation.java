package tunside.chemistry;

import org.hipparchus.exception.LocalizedCoreFormats;
import org.hipparchus.exception.MathIllegalStateException;
import tunside.quantity.Temperature;

/**
 * The state of a solution, and of something that may be added to it: the mass balances of the metals, the charge and the
 * ionic strength, solved at once. For one thread; keeps the last state as the next start.
 *
 * <p>Unknown are the logarithm of {@code aM / aH^2} of each metal, that of {@code aH}, and the ionic strength. At fixed
 * activity coefficients the balances are the gradient of a strictly convex function of the logarithms, whose second
 * derivatives are covariances of charges and bound metals ({@link SpeciesSums}). So far from the solution Newton's method
 * with a limited and halved step comes nearer from any start. Near it the ionic strength joins in, and a few steps that each
 * double the digits end it: five to eight in all as a rule. Activity coefficients stay at their value of 0.5 mol/kg above
 * that, where Davies' equation ends.
 */
final class Speciation {
    private static final double LN_10 = Math.log(10);
    private static final double LOWEST_LOG_ACTIVITY =
            -LN_10 * (ChargeBalance.HIGHEST_PH + 1); // of the hydrogen ion, on the way
    private static final double HIGHEST_LOG_ACTIVITY = -LN_10 * (ChargeBalance.LOWEST_PH - 1);
    private static final double SOUR_PH = 4;
    private static final double NEAR_NEUTRAL_PH = 7;
    private static final double ALKALINE_PH = 9;
    private static final double LARGEST_DAVIES_IONIC_STRENGTH = 0.5;
    private static final double LEAST_IONIC_STRENGTH = 1e-7;
    private static final int PROTON = SpeciesSums.CHARGE;
    private static final int IONIC_STRENGTH = SpeciesSums.SQUARES;

    private static final int MOST_STEPS = 200;
    private static final double LARGEST_STEP = 6;
    private static final double NEAR = 0.7;
    private static final double LARGEST_RATIO = 10; // of the ionic strength in one step
    private static final double TOLERANCE = 1e-11; // of the last step: what it leaves is about its square
    private static final double ROUNDING = 1e-6; // a step below this that shrinks no more is made of rounding

    private final double slope;
    private final SpeciesSums species;
    private final double[] metals; // 0 where no acid holds the metal
    private final double[] addedMetals;
    private final double[] unreactive; // charge, squared charges
    private final double[] addedUnreactive;
    private final double base;
    private final double addedBase;
    private final boolean binds; // whether any acid holds any metal

    private final double[] point;
    private final double[] residuals = new double[SpeciesSums.COUNT]; // by which each balance is short
    private final NewtonStep step = new NewtonStep();

    Speciation(Solution solution, Solution addition, Temperature temperature, double openCarbonDioxide) {
        this.slope = Activity.debyeHuckelSlope(temperature) * LN_10;
        Species forms = new Species(solution, addition, temperature, openCarbonDioxide >= 0);
        this.species =
                new SpeciesSums(forms, Math.exp(-LN_10 * CarbonateConstants.pKWater(temperature)), openCarbonDioxide);
        this.binds = forms.holds(1) || forms.holds(2);
        this.metals = new double[PROTON];
        this.addedMetals = new double[PROTON];
        for (int m = 0; m < PROTON; m++) {
            if (forms.holds(m + 1)) {
                metals[m] = solution.ion(Species.METALS.get(m));
                addedMetals[m] = addition.ion(Species.METALS.get(m));
            }
        }
        this.unreactive = unreactive(solution, metals);
        this.addedUnreactive = unreactive(addition, addedMetals);
        this.base = solution.base();
        this.addedBase = addition.base();
        double strong = unreactive[0] + base - 2 * solution.ion(Ion.SULFATE);
        double squares = unreactive[1] + Math.abs(base) + 4 * solution.ion(Ion.SULFATE);
        this.point = new double[SpeciesSums.COUNT];
        for (int m = 0; m < PROTON; m++) {
            point[m] = Double.POSITIVE_INFINITY; // until it is known how much of the metal there is
            strong += 2 * metals[m];
            squares += 4 * metals[m];
        }
        point[PROTON] = -LN_10 * roughPh(solution, strong);
        point[IONIC_STRENGTH] = Math.max(LEAST_IONIC_STRENGTH, (squares + Math.abs(strong)) / 2);
    }

    /** Of the same, with a state of its own: a second one costs less than a new one. */
    Speciation(Speciation other) {
        this.slope = other.slope;
        this.species = new SpeciesSums(other.species);
        this.metals = other.metals;
        this.addedMetals = other.addedMetals;
        this.unreactive = other.unreactive;
        this.addedUnreactive = other.addedUnreactive;
        this.base = other.base;
        this.addedBase = other.addedBase;
        this.binds = other.binds;
        this.point = other.point.clone();
    }

    /** In a closed vessel, with something that may be added. */
    Speciation(Solution solution, Solution addition, Temperature temperature) {
        this(solution, addition, temperature, -1);
    }

    /** In a closed vessel, with nothing to add. */
    Speciation(Solution solution, Temperature temperature) {
        this(solution, Solution.WATER, temperature, -1);
    }

    /** The pH to start from: sour where the weak acids are more than the charge they must balance, alkaline where they are too few. */
    private static double roughPh(Solution solution, double strong) {
        double weak = 0;
        for (double acid : solution.acids().values()) {
            weak += acid;
        }
        if (strong < weak) {
            return SOUR_PH;
        }
        return strong < weak + solution.carbon() ? NEAR_NEUTRAL_PH : ALKALINE_PH;
    }

    /** Charge and sum of squared charges of the ions that take no part in a reaction. */
    private static double[] unreactive(Solution solution, double[] reactiveMetals) {
        double charge = 0;
        double squares = 0;
        for (Ion ion : Ion.ALL) {
            int metal = Species.METALS.indexOf(ion);
            if (ion != Ion.SULFATE && !(metal >= 0 && reactiveMetals[metal] > 0)) {
                double amount = solution.ion(ion);
                charge += ion.charge() * amount;
                squares += ion.charge() * ion.charge() * amount;
            }
        }
        return new double[] {charge, squares};
    }

    /** Ionic strength of the last state, mol/kg. */
    double ionicStrength() {
        return point[IONIC_STRENGTH];
    }

    /** Share of CO2(aq), HCO3- or CO3-- in all inorganic carbon in the last state; only with carbon. */
    double carbonShare(int protonsLost) {
        return species.carbonShare(protonsLost);
    }

    /** Calcium or magnesium of the solution that no weak acid holds in the last state, mol/kg. */
    double free(Ion metal, Solution solution) {
        int place = Species.METALS.indexOf(metal);
        return metals[place] > 0 ? species.freeMetal(place) : solution.ion(metal);
    }

    /** Activity coefficient of an ion of so many charges in the last state. */
    double gamma(int charges) {
        return species.gamma(charges);
    }

    /** Net charge of the solution alone at a pH, mol/kg. */
    double netCharge(double ph) {
        return netCharge(ph, 0);
    }

    /** Net charge at a pH with so much of the addition, mol/kg. */
    double netCharge(double ph, double added) {
        double change = -LN_10 * ph - point[PROTON];
        point[PROTON] += change;
        for (int m = 0; m < PROTON; m++) {
            point[m] -= 2 * change;
        }
        settle(added, true);
        return -residuals[PROTON];
    }

    /** Net charge of the last state, mol/kg. */
    double netCharge() {
        return -residuals[PROTON];
    }

    /** The pH at which the solution alone has no charge; one beyond the range where it has one throughout. */
    double neutralPh() {
        settle(0, false);
        return -point[PROTON] / LN_10;
    }

    /** Solves at the pH of the point, or for it. */
    private void settle(double added, boolean held) {
        startMetals(added);
        boolean searching = false;
        boolean leaving = false;
        double scale = 0;
        double promised = 0;
        double last = Double.POSITIVE_INFINITY;
        for (int i = 0; i < MOST_STEPS; i++) {
            double counted = evaluate(added, held);
            if (searching && step.along(residuals) < -0.5 * promised) {
                scale /= 2;
                move(-scale);
                continue;
            }
            double longest = step.solve(species, residuals, gammaSlope(), counted, held);
            searching = longest > NEAR;
            if (searching) {
                promised = step.along(residuals);
            } else {
                longest = step.withIonicStrength();
            }
            scale = longest > LARGEST_STEP ? LARGEST_STEP / longest : 1;
            move(scale);
            double inside = Math.max(LOWEST_LOG_ACTIVITY, Math.min(HIGHEST_LOG_ACTIVITY, point[PROTON]));
            boolean outside = !held && point[PROTON] != inside;
            if (outside && leaving) {
                Solver.WATER.solved(i + 1);
                return;
            }
            leaving = outside;
            point[PROTON] = held ? point[PROTON] : inside;
            double size = Math.max(longest, Math.abs(step.of(IONIC_STRENGTH)) / point[IONIC_STRENGTH]);
            if (!searching && (size <= TOLERANCE || (size < ROUNDING && size > 0.5 * last))) {
                Solver.WATER.solved(i + 1);
                return;
            }
            last = size;
        }
        throw new MathIllegalStateException(LocalizedCoreFormats.MAX_COUNT_EXCEEDED, MOST_STEPS);
    }

    /** Metals start from the last state; as if nothing held them where that is more than there is now. */
    private void startMetals(double added) {
        for (int m = 0; m < PROTON; m++) {
            double most = Math.log(metals[m] + added * addedMetals[m]) - 2 * point[PROTON];
            if (!(point[m] > Double.NEGATIVE_INFINITY && point[m] <= most)) {
                point[m] = most;
            }
        }
    }

    /**
     * Balances at the point.
     *
     * @return how far the charge itself counts in the ionic strength, -1 to 1
     */
    private double evaluate(double added, boolean held) {
        double effective = Math.min(point[IONIC_STRENGTH], LARGEST_DAVIES_IONIC_STRENGTH);
        double gamma = Math.exp(-slope * Activity.daviesFunction(effective));
        for (int m = 0; binds && m < PROTON; m++) {
            species.setMetal(m, Math.exp(point[m]));
        }
        species.evaluate(Math.exp(point[PROTON]), gamma, added);
        for (int m = 0; m < PROTON; m++) {
            residuals[m] = metals[m] + added * addedMetals[m] - species.sum(m);
        }
        double ions = species.sum(PROTON) + unreactive[0] + added * addedUnreactive[0];
        double strong = base + added * addedBase;
        double squares = species.sum(IONIC_STRENGTH) + unreactive[1] + added * addedUnreactive[1];
        residuals[PROTON] = -ions - strong;
        residuals[IONIC_STRENGTH] = point[IONIC_STRENGTH] - 0.5 * (squares + Math.abs(held ? ions : strong));
        return held ? Math.signum(ions) : 0;
    }

    private double gammaSlope() {
        return point[IONIC_STRENGTH] < LARGEST_DAVIES_IONIC_STRENGTH
                ? slope * Activity.daviesSlope(point[IONIC_STRENGTH])
                : 0;
    }

    private void move(double scale) {
        for (int k = 0; k <= PROTON; k++) {
            point[k] += scale * step.of(k);
        }
        double was = point[IONIC_STRENGTH];
        double next = was + scale * step.of(IONIC_STRENGTH);
        point[IONIC_STRENGTH] = Math.max(was / LARGEST_RATIO, Math.min(was * LARGEST_RATIO, next));
    }
}

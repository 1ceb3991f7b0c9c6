package tunside.chemistry;

import java.util.Arrays;

/**
 * One step of Newton's method on the balances of two metals, of charge and of ionic strength, as {@link SpeciesSums} has their
 * derivatives. At constant ionic strength the first three are symmetric and positive definite; a Cholesky decomposition without
 * roots solves them for the balances and for what the ionic strength changes in them. The last equation then gives its own step.
 */
final class NewtonStep {
    private static final int PROTON = SpeciesSums.CHARGE;
    private static final int IONIC_STRENGTH = SpeciesSums.SQUARES;

    private final double[] atConstant = new double[SpeciesSums.COUNT];
    private final double[] perIonicStrength = {0, 0, 0, 1};
    private final double[] step = new double[SpeciesSums.COUNT];

    /** The step of an unknown: calcium, magnesium, hydrogen ion, ionic strength. */
    double of(int unknown) {
        return step[unknown];
    }

    /**
     * Solves.
     *
     * @param residuals by which each balance is short
     * @param gammaSlope fall of the logarithm of an activity coefficient with the ionic strength
     * @param counted how far the charge itself counts in the ionic strength: -1 to 1
     * @param held whether the pH stays
     * @return largest change of the logarithm of an activity at constant ionic strength
     */
    double solve(SpeciesSums sums, double[] residuals, double gammaSlope, double counted, boolean held) {
        double[] calcium = sums.products(0);
        double[] magnesium = sums.products(1);
        double[] charge = sums.products(PROTON);
        double[] squares = sums.products(IONIC_STRENGTH);
        if (held && calcium[0] == 0 && magnesium[1] == 0) { // nothing but the ionic strength is left to be found
            Arrays.fill(atConstant, 0, IONIC_STRENGTH, 0);
            Arrays.fill(perIonicStrength, 0, IONIC_STRENGTH, 0);
        } else {
            solveLogarithms(sums, residuals, gammaSlope, held);
        }
        double right = residuals[IONIC_STRENGTH];
        double left = 0.5 * gammaSlope * (squares[IONIC_STRENGTH] + counted * squares[PROTON]) - 1;
        for (int k = 0; k <= PROTON; k++) {
            double row = 0.5 * (squares[k] + counted * charge[k]);
            right -= row * atConstant[k];
            left += row * perIonicStrength[k];
        }
        atConstant[IONIC_STRENGTH] =
                right / Math.min(-0.5, left); // where it feeds back on itself, no longer than twice
        combine(0);
        return longest();
    }

    /** The steps of metals and hydrogen ion at constant ionic strength, and what it changes in them. */
    private void solveLogarithms(SpeciesSums sums, double[] residuals, double gammaSlope, boolean held) {
        double[] calcium = sums.products(0);
        double[] magnesium = sums.products(1);
        double[] charge = sums.products(PROTON);
        double free = held ? 0 : 1;
        double perCalcium = inverse(calcium[0]);
        double magnesiumPart = calcium[1] * perCalcium;
        double chargePart = free * calcium[PROTON] * perCalcium;
        double perMagnesium = inverse(magnesium[1] - magnesiumPart * calcium[1]);
        double rest = free * (magnesium[PROTON] - magnesiumPart * calcium[PROTON]);
        double restPart = rest * perMagnesium;
        double perCharge = free * inverse(charge[PROTON] - chargePart * calcium[PROTON] - restPart * rest);

        for (int side = 0; side < 2; side++) {
            double[] result = side == 0 ? atConstant : perIonicStrength;
            double ofCalcium = side == 0 ? residuals[0] : -gammaSlope * calcium[IONIC_STRENGTH];
            double ofMagnesium = side == 0 ? residuals[1] : -gammaSlope * magnesium[IONIC_STRENGTH];
            double ofCharge = side == 0 ? residuals[PROTON] : -gammaSlope * charge[IONIC_STRENGTH];
            ofMagnesium -= magnesiumPart * ofCalcium;
            ofCharge -= chargePart * ofCalcium + restPart * ofMagnesium;
            result[PROTON] = ofCharge * perCharge;
            result[1] = ofMagnesium * perMagnesium - restPart * result[PROTON];
            result[0] = ofCalcium * perCalcium - magnesiumPart * result[1] - chargePart * result[PROTON];
        }
    }

    private static double inverse(double pivot) {
        return pivot > 0 ? 1 / pivot : 0;
    }

    /**
     * Lets the ionic strength take part in the step.
     *
     * @return largest change of the logarithm of an activity
     */
    double withIonicStrength() {
        combine(atConstant[IONIC_STRENGTH]);
        return longest();
    }

    private void combine(double ionicStrength) {
        for (int k = 0; k <= PROTON; k++) {
            step[k] = atConstant[k] + ionicStrength * perIonicStrength[k];
        }
        step[IONIC_STRENGTH] = ionicStrength;
    }

    private double longest() {
        double metals = Math.max(Math.abs(step[0] + 2 * step[PROTON]), Math.abs(step[1] + 2 * step[PROTON]));
        return Math.max(metals, Math.abs(step[PROTON]));
    }

    /** How much the balances, taken as a gradient, promise along the step; negative where it leads the wrong way. */
    double along(double[] residuals) {
        double sum = 0;
        for (int k = 0; k <= PROTON; k++) {
            sum += step[k] * residuals[k];
        }
        return sum;
    }
}

package tunside.chemistry;

/**
 * Mean charge of an acid against the pH at one temperature, activities left out. The constants are worked out once, so
 * that a pH costs one exponential and a few products.
 */
public final class ChargeCurve {
    private static final double LN_10 = Math.log(10);

    private final int topCharge;
    private final double[] constants;

    /** @param pK of the steps, most acid first */
    ChargeCurve(int topCharge, double[] pK) {
        this.topCharge = topCharge;
        this.constants = new double[pK.length];
        for (int j = 0; j < pK.length; j++) {
            constants[j] = Math.exp(-LN_10 * pK[j]);
        }
    }

    /**
     * Mean charge of one mole: monotone falling from the top charge by one a step.
     *
     * @param ph -20 to 20
     * @return mol of charge per mol; its negative is the mean number of protons that a mole has delivered
     */
    public double meanCharge(double ph) {
        double perHydrogen = Math.exp(LN_10 * ph);
        double form = 1;
        double sum = 1;
        double lost = 0;
        for (int j = 0; j < constants.length; j++) {
            form *= constants[j] * perHydrogen;
            sum += form;
            lost += (j + 1) * form;
        }
        return topCharge - lost / sum;
    }
}

package tunside.electrode;

import tunside.quantity.Temperature;

/** The phthalate buffer by the equation of HETZER-1977. */
public final class HetzerPhthalate {
    static final double LOWEST_DEG_C = 0;
    static final double HIGHEST_DEG_C = 60;

    private HetzerPhthalate() {}

    /**
     * pH of potassium hydrogen phthalate, 0.05 mol/kg.
     *
     * @param temperature 0 to 60 degC
     * @return pH; 4.0059 at 25 degC
     * @throws IllegalArgumentException outside
     */
    public static double ph(Temperature temperature) {
        if (!(temperature.celsius() >= LOWEST_DEG_C && temperature.celsius() <= HIGHEST_DEG_C)) {
            throw new IllegalArgumentException("must be from %s to %s degC for this equation but is %s degC"
                    .formatted(LOWEST_DEG_C, HIGHEST_DEG_C, temperature.celsius()));
        }
        double t = temperature.kelvin();
        return 2073.44 / t - 13.3270 + 0.045199 * t - 3.4846e-5 * t * t;
    }
}

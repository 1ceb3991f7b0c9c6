package tunside.quantity;

/**
 * The concentration of a dissolved ion as reported.
 *
 * @param value finite, not negative
 * @param unit what it counts
 */
public record Dissolved(double value, DissolvedUnit unit) {
    /** Standard atomic weight of sulfur, g/mol (IUPAC). */
    private static final double SULFUR = 32.06;

    /** Standard atomic weight of nitrogen, g/mol (IUPAC). */
    private static final double NITROGEN = 14.007;

    public Dissolved {
        if (!(value >= 0 && value < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "concentration (%s %s) must be finite and not negative".formatted(value, unit.symbol()));
        }
    }

    /**
     * In mmol/L. Whether {@code as-S} or {@code as-N} suits the ion is for the caller to check.
     *
     * @param molarMassGPerMol of the ion
     * @param charge of the ion, sign ignored
     */
    public double mmolPerL(double molarMassGPerMol, int charge) {
        return switch (unit) {
            case MG_PER_L -> value / molarMassGPerMol;
            case MMOL_PER_L -> value;
            case MEQ_PER_L -> value / Math.abs(charge);
            case MG_PER_L_AS_S -> value / SULFUR;
            case MG_PER_L_AS_N -> value / NITROGEN;
        };
    }
}

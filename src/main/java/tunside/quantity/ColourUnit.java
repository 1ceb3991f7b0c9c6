package tunside.quantity;

/**
 * Units of malt colour; base unit EBC.
 *
 * <p>EBC = 1.97 SRM (common practice); EBC = 2.65 degL - 1.2 (TROESTER-2009). Lovibond and SRM differ for malts, so they
 * are kept apart.
 */
public enum ColourUnit implements Unit {
    EBC("EBC", 1, 0),
    SRM("SRM", 1.97, 0),
    DEG_L("degL", 2.65, -1.2);

    private final String symbol;
    private final double factor;
    private final double shift;

    ColourUnit(String symbol, double factor, double shift) {
        this.symbol = symbol;
        this.factor = factor;
        this.shift = shift;
    }

    @Override
    public String symbol() {
        return symbol;
    }

    /** {@inheritDoc} Never below zero: the Lovibond line crosses zero at 0.45 degL. */
    @Override
    public double toBase(double value) {
        return Math.max(0, factor * value + shift);
    }
}

package tunside.quantity;

/** Units of electric potential; base unit millivolt. */
public enum PotentialUnit implements Unit {
    MV("mV", 1);

    private final String symbol;
    private final double millivolts;

    PotentialUnit(String symbol, double millivolts) {
        this.symbol = symbol;
        this.millivolts = millivolts;
    }

    @Override
    public String symbol() {
        return symbol;
    }

    @Override
    public double toBase(double value) {
        return value * millivolts;
    }
}

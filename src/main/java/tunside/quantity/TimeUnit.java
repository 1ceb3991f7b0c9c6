package tunside.quantity;

/** Units of time; base unit second. */
public enum TimeUnit implements Unit {
    S("s", 1),
    MIN("min", 60),
    H("h", 3600);

    private final String symbol;
    private final double seconds;

    TimeUnit(String symbol, double seconds) {
        this.symbol = symbol;
        this.seconds = seconds;
    }

    @Override
    public String symbol() {
        return symbol;
    }

    @Override
    public double toBase(double value) {
        return value * seconds;
    }
}

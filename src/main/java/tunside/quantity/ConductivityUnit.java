package tunside.quantity;

/** Units of electrical conductivity; base unit microsiemens per centimetre, at 25 degC. */
public enum ConductivityUnit implements Unit {
    US_PER_CM("uS/cm", 1);

    private final String symbol;
    private final double microsiemensPerCm;

    ConductivityUnit(String symbol, double microsiemensPerCm) {
        this.symbol = symbol;
        this.microsiemensPerCm = microsiemensPerCm;
    }

    @Override
    public String symbol() {
        return symbol;
    }

    @Override
    public double toBase(double value) {
        return value * microsiemensPerCm;
    }
}

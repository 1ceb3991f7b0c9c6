package tunside.quantity;

/** Units of the strength of an acid or base. They convert into each other only for a known substance and density. */
public enum StrengthUnit implements Symbol {
    PERCENT_W_W("%w/w"),
    MOL_PER_L("mol/L"),
    EQ_PER_L("eq/L");

    private final String symbol;

    StrengthUnit(String symbol) {
        this.symbol = symbol;
    }

    @Override
    public String symbol() {
        return symbol;
    }
}

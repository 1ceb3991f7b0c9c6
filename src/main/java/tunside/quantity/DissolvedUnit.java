package tunside.quantity;

/** Units of a dissolved ion. Conversion needs the ion: see {@link Dissolved#mmolPerL}. */
public enum DissolvedUnit implements Symbol {
    MG_PER_L("mg/L"),
    MMOL_PER_L("mmol/L"),
    MEQ_PER_L("mEq/L"),
    MG_PER_L_AS_S("mg/L-as-S"),
    MG_PER_L_AS_N("mg/L-as-N");

    private final String symbol;

    DissolvedUnit(String symbol) {
        this.symbol = symbol;
    }

    @Override
    public String symbol() {
        return symbol;
    }
}

package tunside.quantity;

/** Units of alkalinity and of hardness; base unit milliequivalent per litre.
 *
 * <p>Definitions: German degree 10 mg CaO/L, French degree 10 mg CaCO3/L, Clark degree one grain (64.79891 mg) of CaCO3
 * per imperial gallon (4.54609 L); molar masses CaCO3 100.086, CaO 56.077, HCO3- 61.016 g/mol (IUPAC weights). Computed
 * from the definitions; the tests compare them with a printed table. */
public enum EquivalentUnit implements Unit {
    MEQ_PER_L("mEq/L", 1),
    MG_PER_L_AS_CACO3("mg/L-as-CaCO3", 2 / 100.086),
    MG_PER_L_AS_HCO3("mg/L-as-HCO3", 1 / 61.016),
    DH("dH", 10 * 2 / 56.077),
    FH("fH", 10 * 2 / 100.086),
    CLARK("Clark", 64.79891 / 4.54609 * 2 / 100.086);

    private final String symbol;
    private final double meqPerL;

    EquivalentUnit(String symbol, double meqPerL) {
        this.symbol = symbol;
        this.meqPerL = meqPerL;
    }

    @Override
    public String symbol() {
        return symbol;
    }

    @Override
    public double toBase(double value) {
        return value * meqPerL;
    }
}

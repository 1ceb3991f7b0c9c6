package tunside.chemistry;

import java.util.List;

/** Ions that keep their charge at every pH met in brewing, and sulfate, which nearly does. Molar masses: IUPAC-WEIGHTS. */
public enum Ion {
    CALCIUM("Ca", 40.078, 2),
    MAGNESIUM("Mg", 24.305, 2),
    SODIUM("Na", 22.990, 1),
    POTASSIUM("K", 39.098, 1),
    CHLORIDE("Cl", 35.453, -1),
    SULFATE("SO4", 96.056, -2),
    NITRATE("NO3", 62.004, -1);

    /** All of them in their usual order. */
    public static final List<Ion> ALL = List.of(values());

    private final String symbol;
    private final double molarMassGPerMol;
    private final int charge;

    Ion(String symbol, double molarMassGPerMol, int charge) {
        this.symbol = symbol;
        this.molarMassGPerMol = molarMassGPerMol;
        this.charge = charge;
    }

    /** As in tables and answers, such as {@code Ca}. */
    public String symbol() {
        return symbol;
    }

    /** Molar mass, g/mol. */
    public double molarMassGPerMol() {
        return molarMassGPerMol;
    }

    /** Charge in units of e; sulfate fully dissociated. */
    public int charge() {
        return charge;
    }

    /** The ion that a table calls so. */
    public static Ion ofSymbol(String symbol) {
        for (Ion ion : ALL) {
            if (ion.symbol.equals(symbol)) {
                return ion;
            }
        }
        throw new IllegalArgumentException("no ion has the symbol '%s'".formatted(symbol));
    }
}

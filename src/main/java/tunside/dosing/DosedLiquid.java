package tunside.dosing;

import tunside.mash.PhRanges;

/** What is dosed. */
public enum DosedLiquid {
    MASH("mash-accepted", "mash-accepted", 0.1),
    LIQUOR("mash-floor", "sparge-liquor", 0.3),
    WORT("boiled-wort", "mash-accepted", 0.1),
    BEER("ale", "lager", 0.1);

    private final String lowRange;
    private final String highRange;
    private final double halfWidthPh;

    DosedLiquid(String lowRange, String highRange, double halfWidthPh) {
        this.lowRange = lowRange;
        this.highRange = highRange;
        this.halfWidthPh = halfWidthPh;
    }

    /** Lowest pH that is usually aimed at, from {@code ph-ranges.csv}. */
    public double lowestTargetPh() {
        return PhRanges.find(lowRange).orElseThrow().lowPh().orElseThrow();
    }

    /** Highest pH that is usually aimed at, from {@code ph-ranges.csv}. */
    public double highestTargetPh() {
        return PhRanges.find(highRange).orElseThrow().highPh().orElseThrow();
    }

    /** Half width of the range that is taken where none is stated. */
    public double halfWidthPh() {
        return halfWidthPh;
    }
}

package tunside.mash;

import java.util.List;
import tunside.reference.Row;
import tunside.reference.Table;

/** How a coarser crush lowers the buffering that a mash shows, from {@code mill-gaps.csv} (TROESTER-2009). */
public final class MillGaps {
    private static final List<Row> ROWS = Table.read("mill-gaps.csv").rows();

    private MillGaps() {}

    /** Widest gap of the table, mm. */
    public static double widestMm() {
        return ROWS.get(ROWS.size() - 1).number("gap_mm");
    }

    /** Factor on the buffering of a pulverised malt; linear between rows, held beyond the last. */
    public static double bufferingFactor(double gapMm) {
        for (int i = 1; i < ROWS.size(); i++) {
            double low = ROWS.get(i - 1).number("gap_mm");
            double high = ROWS.get(i).number("gap_mm");
            if (gapMm <= high) {
                double share = (gapMm - low) / (high - low);
                return (1 - share) * ROWS.get(i - 1).number("factor")
                        + share * ROWS.get(i).number("factor");
            }
        }
        return ROWS.get(ROWS.size() - 1).number("factor");
    }
}

package tunside.electrode.reading;

import java.util.List;
import java.util.OptionalDouble;
import tunside.quantity.Temperature;
import tunside.reference.Table;

/**
 * One published shift of mash or wort pH between room and mash temperature, from {@code temperature-shifts.csv}.
 *
 * @param name what was measured
 * @param liquid mash or wort
 * @param roomDegC the lower temperature; empty for "room"
 * @param hotDegC the higher temperature; empty for "mash"
 * @param shiftPh fall in pH from the lower to the higher, positive
 * @param perK the same per K
 * @param source id of the publication
 */
public record PublishedShift(
        String name,
        String liquid,
        OptionalDouble roomDegC,
        OptionalDouble hotDegC,
        double shiftPh,
        double perK,
        String source) {
    private static final double HOSOM_PER_PH_AND_K = 0.00382;
    private static final double HOSOM_PER_K = 0.0166;
    private static final List<PublishedShift> ALL = Table.read("temperature-shifts.csv").rows().stream()
            .map(row -> new PublishedShift(
                    row.text("case"),
                    row.text("liquid"),
                    row.optionalNumber("room_degC"),
                    row.optionalNumber("hot_degC"),
                    row.number("shift_ph", 0, 1),
                    row.number("per_k", 0, 0.05),
                    row.source()))
            .toList();

    /** Every row, in the table's order. */
    public static List<PublishedShift> all() {
        return ALL;
    }

    /** The smallest published fall per K. */
    public static double lowestPerK() {
        return ALL.stream().mapToDouble(PublishedShift::perK).min().orElseThrow();
    }

    /** The largest published fall per K. */
    public static double highestPerK() {
        return ALL.stream().mapToDouble(PublishedShift::perK).max().orElseThrow();
    }

    /**
     * The change of pH on warming by the fit of HOSOM-2018, {@code dpH/dT = -(0.00382 pH - 0.0166)}, linear in
     * temperature.
     *
     * @param ph at {@code from}, 5 to 6
     * @return negative on warming
     */
    public static double byHosom2018(double ph, Temperature from, Temperature to) {
        return (HOSOM_PER_K - HOSOM_PER_PH_AND_K * ph) * (to.celsius() - from.celsius());
    }
}

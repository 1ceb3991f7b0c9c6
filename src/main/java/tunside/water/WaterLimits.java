package tunside.water;

import java.util.ArrayList;
import java.util.List;
import tunside.reference.Row;
import tunside.reference.Table;

/** How far a report may contradict itself, from {@code water-limits.csv}. */
final class WaterLimits {
    /**
     * Limits of one check for some waters.
     *
     * @param check which
     * @param fromMeqPerL anions from which it holds, left out
     * @param toMeqPerL anions up to which it holds, included
     * @param low lowest accepted value
     * @param high highest accepted value
     * @param unit of both
     */
    record Limit(String check, double fromMeqPerL, double toMeqPerL, double low, double high, String unit) {
        boolean accepts(double value) {
            return value >= low && value <= high;
        }

        boolean isPercent() {
            return unit.equals("%");
        }

        /** The end that a value is held against. */
        double nearest(double value) {
            return Math.abs(value - low) < Math.abs(value - high) ? low : high;
        }
    }

    private static final List<Limit> ALL = load();

    private WaterLimits() {}

    /** The limits for a water of so many anions; beyond the table its last. */
    static Limit of(String check, double anionsMeqPerL) {
        Limit last = null;
        for (Limit limit : ALL) {
            if (limit.check.equals(check)) {
                last = limit;
                if (anionsMeqPerL <= limit.toMeqPerL) {
                    return limit;
                }
            }
        }
        if (last == null) {
            throw new IllegalArgumentException("water-limits.csv has no '%s'".formatted(check));
        }
        return last;
    }

    private static List<Limit> load() {
        List<Limit> limits = new ArrayList<>();
        for (Row row : Table.read("water-limits.csv").rows()) {
            double from = row.number("from_meq_per_l", 0, 1000);
            double low = row.number("low");
            limits.add(new Limit(
                    row.text("check"),
                    from,
                    row.number("to_meq_per_l", from, 1000),
                    low,
                    row.number("high", low, 1000),
                    row.text("unit")));
        }
        return List.copyOf(limits);
    }
}

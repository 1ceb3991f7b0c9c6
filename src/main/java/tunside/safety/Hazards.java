package tunside.safety;

import java.util.ArrayList;
import java.util.List;
import tunside.reference.Row;
import tunside.reference.Table;

/** Hazards and supply limits of acids by strength, from {@code hazard-bands.csv} and {@code supply-limits.csv}. */
public final class Hazards {
    private record Band(String substance, double from, double below, List<String> codes, String source) {}

    /**
     * A supply limit that a strength is above.
     *
     * @param region where it is law
     * @param abovePercent strength that is still free
     * @param meaning what it takes
     * @param source id of the publication
     */
    public record SupplyLimit(String region, double abovePercent, String meaning, String source) {}

    private record Limit(String substance, SupplyLimit limit) {}

    private static final List<Band> BANDS = loadBands();
    private static final List<Limit> LIMITS = loadLimits();

    private Hazards() {}

    /** Hazard statement codes of an acid at a strength in %w/w; none where it is not classed. */
    public static List<String> of(String substance, double percent) {
        return BANDS.stream()
                .filter(band -> band.substance.equals(substance) && percent >= band.from && percent < band.below)
                .findFirst()
                .map(Band::codes)
                .orElse(List.of());
    }

    /** Supply limits that the strength is above; the limit itself is free. */
    public static List<SupplyLimit> supplyLimits(String substance, double percent) {
        return LIMITS.stream()
                .filter(limit -> limit.substance.equals(substance) && percent > limit.limit.abovePercent())
                .map(Limit::limit)
                .toList();
    }

    private static List<Band> loadBands() {
        List<Band> bands = new ArrayList<>();
        for (Row row : Table.read("hazard-bands.csv").rows()) {
            bands.add(new Band(
                    row.text("substance"),
                    row.number("from_percent", 0, 100),
                    row.optionalNumber("below_percent").orElse(Double.POSITIVE_INFINITY),
                    List.of(row.text("hazards").split(" ")),
                    row.source()));
        }
        return List.copyOf(bands);
    }

    private static List<Limit> loadLimits() {
        List<Limit> limits = new ArrayList<>();
        for (Row row : Table.read("supply-limits.csv").rows()) {
            limits.add(new Limit(
                    row.text("substance"),
                    new SupplyLimit(
                            row.text("region"),
                            row.number("above_percent", 0, 100),
                            row.text("meaning"),
                            row.source())));
        }
        return List.copyOf(limits);
    }
}

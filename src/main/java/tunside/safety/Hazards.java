package tunside.safety;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import tunside.reference.Row;
import tunside.reference.Table;

/**
 * Hazards and supply limits by substance and strength, from {@code hazard-bands.csv} and {@code supply-limits.csv}.
 * Substances are named as in {@code acids.csv} and {@code salts.csv}.
 */
public final class Hazards {
    /**
     * A range of strength and what holds in it.
     *
     * @param fromPercent first strength of the range, %w/w
     * @param belowPercent first strength beyond it; empty if it goes on to the pure substance
     * @param codes hazard statement codes; empty for a substance known not to be classed
     * @param source id of the publication
     */
    public record Band(double fromPercent, OptionalDouble belowPercent, List<String> codes, String source) {
        public Band {
            codes = List.copyOf(codes);
        }

        private boolean holds(double percent) {
            return percent >= fromPercent && percent < belowPercent.orElse(Double.POSITIVE_INFINITY);
        }
    }

    /**
     * A supply limit.
     *
     * @param region where it is law
     * @param abovePercent strength that is still free
     * @param meaning what holds above it
     * @param source id of the publication
     */
    public record SupplyLimit(String region, double abovePercent, String meaning, String source) {}

    private static final Map<String, List<Band>> BANDS = loadBands();
    private static final Map<String, List<SupplyLimit>> LIMITS = loadLimits();

    private Hazards() {}

    /** All bands of a substance; none if the table does not know it. */
    public static List<Band> bands(String substance) {
        return BANDS.getOrDefault(substance, List.of());
    }

    /** The bands of a substance that hold at a strength in %w/w. */
    public static List<Band> bands(String substance, double percent) {
        return bands(substance).stream().filter(band -> band.holds(percent)).toList();
    }

    /** Hazard statement codes of a substance at a strength in %w/w; none where it is not classed. */
    public static List<String> of(String substance, double percent) {
        Set<String> codes = new LinkedHashSet<>();
        bands(substance, percent).forEach(band -> codes.addAll(band.codes()));
        return List.copyOf(codes);
    }

    /** All supply limits of a substance. */
    public static List<SupplyLimit> supplyLimits(String substance) {
        return LIMITS.getOrDefault(substance, List.of());
    }

    /** Supply limits that the strength is above; the limit itself is free. */
    public static List<SupplyLimit> supplyLimits(String substance, double percent) {
        return supplyLimits(substance).stream()
                .filter(limit -> percent > limit.abovePercent())
                .toList();
    }

    private static Map<String, List<Band>> loadBands() {
        Map<String, List<Band>> bands = new LinkedHashMap<>();
        for (Row row : Table.read("hazard-bands.csv").rows()) {
            String hazards = row.optionalText("hazards");
            Band band = new Band(
                    row.number("from_percent", 0, 100),
                    row.optionalNumber("below_percent"),
                    hazards.isEmpty() ? List.of() : List.of(hazards.split(" ")),
                    row.source());
            for (String code : band.codes()) {
                if (HazardStatements.find(code).isEmpty()) {
                    throw row.fault("code '%s' is not in hazard-statements.csv".formatted(code));
                }
            }
            if (band.belowPercent().isPresent() && !(band.belowPercent().getAsDouble() > band.fromPercent())) {
                throw row.fault("below_percent must be above from_percent");
            }
            bands.computeIfAbsent(row.text("substance"), s -> new ArrayList<>()).add(band);
        }
        return Collections.unmodifiableMap(bands);
    }

    private static Map<String, List<SupplyLimit>> loadLimits() {
        Map<String, List<SupplyLimit>> limits = new LinkedHashMap<>();
        for (Row row : Table.read("supply-limits.csv").rows()) {
            limits.computeIfAbsent(row.text("substance"), s -> new ArrayList<>())
                    .add(new SupplyLimit(
                            row.text("region"),
                            row.number("above_percent", 0, 100),
                            row.text("meaning"),
                            row.source()));
        }
        return Collections.unmodifiableMap(limits);
    }
}

package tunside.mash;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import tunside.quantity.Colour;
import tunside.reference.Row;
import tunside.reference.Table;

/** The malt classes of {@code malt-classes.csv} with the values of {@code malts.csv}. */
public final class MaltClasses {
    private static final Map<String, MaltClass> ALL = load();

    private MaltClasses() {}

    /** By id, in the table's order. */
    public static Map<String, MaltClass> all() {
        return ALL;
    }

    /** The class with this id, if there is one. */
    public static Optional<MaltClass> find(String id) {
        return Optional.ofNullable(ALL.get(id));
    }

    /** The class with this id, which must exist: for the code's own constants. */
    public static MaltClass get(String id) {
        return find(id).orElseThrow(() -> new IllegalArgumentException("no malt class '%s'".formatted(id)));
    }

    private static Map<String, MaltClass> load() {
        Map<String, Map<String, Row>> values = new LinkedHashMap<>();
        for (Row row : Table.read("malts.csv").rows()) {
            Map<String, Row> ofClass = values.computeIfAbsent(row.text("malt"), malt -> new LinkedHashMap<>());
            if (ofClass.put(row.text("property"), row) != null) {
                throw row.fault("property '%s' stands twice".formatted(row.text("property")));
            }
        }
        Map<String, MaltClass> classes = new LinkedHashMap<>();
        for (Row row : Table.read("malt-classes.csv").rows()) {
            Map<String, Row> ofClass = values.remove(row.text("malt"));
            if (ofClass == null) {
                throw row.fault("malt '%s' has no values in malts.csv".formatted(row.text("malt")));
            }
            classes.put(row.text("malt"), maltClass(row, ofClass));
        }
        for (Map<String, Row> left : values.values()) {
            throw left.values().iterator().next().fault("malt is not in malt-classes.csv");
        }
        return Collections.unmodifiableMap(classes);
    }

    private static MaltClass maltClass(Row row, Map<String, Row> values) {
        Row slope = values.get("distilled-water-ph-per-decade");
        return new MaltClass(
                row.text("malt"),
                row.text("name"),
                row.text("evidence").equals("measured"),
                new Colour(row.number("colour_low_ebc", 0, 2000)),
                new Colour(row.number("colour_high_ebc", 0, 2000)),
                row.number("liquor_ratio_l_per_kg", 1, 20),
                value(row, values, "distilled-water-ph", 3, 7).orElseThrow(),
                slope == null ? 0 : slope.number("value", -2, 2),
                value(row, values, "buffering", 1, 300).orElseThrow(),
                value(row, values, "lactic-acid", 0.1, 10),
                row.source());
    }

    private static Optional<ClassValue> value(
            Row owner, Map<String, Row> values, String property, double low, double high) {
        Row row = values.get(property);
        if (row == null) {
            if (property.equals("lactic-acid")) {
                return Optional.empty();
            }
            throw owner.fault("malts.csv has no %s for it".formatted(property));
        }
        return Optional.of(new ClassValue(
                row.number("value", low, high),
                row.number("standard_deviation", 0, 20),
                (int) row.optionalNumber("n").orElse(0),
                row.source()));
    }
}

package tunside.chemistry;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.OptionalDouble;
import tunside.reference.Row;
import tunside.reference.Table;

/** From which strength on a mineral acid is never used neat, from {@code neat-acid-limits.csv}. */
public final class NeatAcidLimits {
    private static final Map<String, Double> ALL = load();

    private NeatAcidLimits() {}

    /** Strength from which the acid is diluted first, %w/w; empty where it may be used at every strength sold. */
    public static OptionalDouble percent(Acid acid) {
        Double percent = ALL.get(acid.id());
        return percent == null ? OptionalDouble.empty() : OptionalDouble.of(percent);
    }

    /** Whether the product must be diluted before it is dosed. */
    public static boolean reachedBy(AcidProduct product) {
        OptionalDouble limit = percent(product.acid());
        return limit.isPresent() && product.massPercent() >= limit.getAsDouble();
    }

    private static Map<String, Double> load() {
        Map<String, Double> limits = new LinkedHashMap<>();
        for (Row row : Table.read("neat-acid-limits.csv").rows()) {
            limits.put(Acids.get(row.text("acid")).id(), row.number("from_percent", 0, 100));
        }
        return limits;
    }
}

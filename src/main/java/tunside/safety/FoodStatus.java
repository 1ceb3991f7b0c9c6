package tunside.safety;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tunside.reference.Row;
import tunside.reference.Table;

/**
 * Where a substance stands in a list of food additives, from {@code food-status.csv}; food grade only.
 *
 * @param region whose list
 * @param number in that list
 * @param note limits and conditions; may be empty
 * @param source id of the publication
 */
public record FoodStatus(String region, String number, String note, String source) {
    private static final Map<String, List<FoodStatus>> ALL = load();

    /** What is known of a substance, named as in {@code acids.csv} and {@code salts.csv}; nothing if it is on no list. */
    public static List<FoodStatus> of(String substance) {
        return ALL.getOrDefault(substance, List.of());
    }

    private static Map<String, List<FoodStatus>> load() {
        Map<String, List<FoodStatus>> statuses = new LinkedHashMap<>();
        for (Row row : Table.read("food-status.csv").rows()) {
            statuses.computeIfAbsent(row.text("substance"), s -> new ArrayList<>())
                    .add(new FoodStatus(
                            row.text("region"), row.text("number"), row.optionalText("note"), row.source()));
        }
        statuses.replaceAll((substance, list) -> List.copyOf(list));
        return statuses;
    }
}

package tunside.electrode;

import java.util.Locale;
import tunside.reference.Row;

/** Constants as the tables write them: lower case, with hyphens and dots. */
final class TableEnums {
    private TableEnums() {}

    static <E extends Enum<E>> E of(Class<E> type, Row row, String column) {
        String name = row.text(column).toUpperCase(Locale.ROOT).replaceAll("[-.]", "_");
        try {
            return Enum.valueOf(type, name);
        } catch (IllegalArgumentException e) {
            throw row.fault("%s '%s' is not known".formatted(column, row.text(column)));
        }
    }
}

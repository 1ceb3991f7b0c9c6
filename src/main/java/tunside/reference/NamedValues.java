package tunside.reference;

import java.util.Map;

/**
 * The numbers of a table that has one named value a row, as {@link Table#readNamed} reads them.
 *
 * @param file its file name
 * @param values by name, in the unit of their rows
 */
public record NamedValues(String file, Map<String, Double> values) {
    public NamedValues {
        values = Map.copyOf(values);
    }

    /**
     * The value with this name.
     *
     * @throws IllegalStateException if the table has no such row: a bug
     */
    public double of(String name) {
        Double value = values.get(name);
        if (value == null) {
            throw new IllegalStateException("%s has no '%s'".formatted(file, name));
        }
        return value;
    }
}

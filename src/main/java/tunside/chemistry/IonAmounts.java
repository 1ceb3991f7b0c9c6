package tunside.chemistry;

import java.util.EnumMap;
import java.util.Map;

/** Copies of amounts by ion, in the order of the ions, so that sums do not depend on hashing. */
public final class IonAmounts {
    private IonAmounts() {}

    /** What becomes of an amount. */
    @FunctionalInterface
    public interface Change {
        double of(Ion ion, double amount);
    }

    /** The same amounts. */
    public static Map<Ion, Double> copy(Map<Ion, Double> amounts) {
        return changed(amounts, (ion, amount) -> amount);
    }

    /** Every amount changed. */
    public static Map<Ion, Double> changed(Map<Ion, Double> amounts, Change change) {
        Map<Ion, Double> changed = new EnumMap<>(Ion.class);
        for (Ion ion : Ion.ALL) { // the entries of an unmodifiable map are objects made for the moment
            Double amount = amounts.get(ion);
            if (amount != null) {
                changed.put(ion, change.of(ion, amount));
            }
        }
        return changed;
    }
}

package tunside.chemistry;

import java.util.AbstractMap;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Amounts by ion, in the order of the ions, so that sums do not depend on hashing. Immutable, so that solutions and reports share
 * one instead of copying it.
 */
public final class IonAmounts extends AbstractMap<Ion, Double> {
    private final EnumMap<Ion, Double> amounts; // never changed once it is here

    private IonAmounts(EnumMap<Ion, Double> amounts) {
        this.amounts = amounts;
    }

    /** What becomes of an amount. */
    @FunctionalInterface
    public interface Change {
        double of(Ion ion, double amount);
    }

    /** The same amounts. */
    public static IonAmounts of(Map<Ion, Double> amounts) {
        return amounts instanceof IonAmounts known ? known : changed(amounts, (ion, amount) -> amount);
    }

    /** How much there is of an ion; 0 where it is not listed. */
    public static double amount(Map<Ion, Double> amounts, Ion ion) {
        Double amount = amounts.get(ion);
        return amount == null ? 0 : amount;
    }

    /** Every amount changed; the same where none is. */
    public static IonAmounts changed(Map<Ion, Double> amounts, Change change) {
        EnumMap<Ion, Double> changed = new EnumMap<>(Ion.class);
        boolean same = true;
        for (Ion ion : Ion.ALL) {
            Double amount = amounts.get(ion);
            if (amount != null) {
                double after = change.of(ion, amount);
                boolean kept = Double.compare(after, amount) == 0;
                changed.put(ion, kept ? amount : Double.valueOf(after));
                same &= kept;
            }
        }
        return same && amounts instanceof IonAmounts known ? known : new IonAmounts(changed);
    }

    /** The same with another amount of an ion. */
    public IonAmounts with(Ion ion, double amount) {
        EnumMap<Ion, Double> others = amounts.clone();
        others.put(ion, amount);
        return new IonAmounts(others);
    }

    /** Both together. */
    public IonAmounts plus(Map<Ion, Double> more) {
        EnumMap<Ion, Double> sums = amounts.clone();
        for (Ion ion : Ion.ALL) {
            Double added = more.get(ion);
            if (added != null) {
                sums.merge(ion, added, Double::sum);
            }
        }
        return new IonAmounts(sums);
    }

    @Override
    public @Nullable Double get(@Nullable Object ion) {
        return amounts.get(ion);
    }

    @Override
    public boolean containsKey(@Nullable Object ion) {
        return amounts.containsKey(ion);
    }

    @Override
    public int size() {
        return amounts.size();
    }

    @Override
    public Set<Map.Entry<Ion, Double>> entrySet() {
        return Collections.unmodifiableMap(amounts).entrySet();
    }
}

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
@SuppressWarnings("EnumOrdinal") // an array by ion is what this class is, and nobody else sees it
public final class IonAmounts extends AbstractMap<Ion, Double> {
    private final double[] amounts; // by ordinal, 0 where not listed; never changed once it is here
    private final int listed; // a bit an ordinal

    private IonAmounts(double[] amounts, int listed) {
        this.amounts = amounts;
        this.listed = listed;
    }

    /** What becomes of an amount. */
    @FunctionalInterface
    public interface Change {
        double of(Ion ion, double amount);
    }

    /** The same amounts. */
    public static IonAmounts of(Map<Ion, Double> amounts) {
        if (amounts instanceof IonAmounts known) {
            return known;
        }
        double[] copies = new double[Ion.ALL.size()];
        int listed = 0;
        for (Ion ion : Ion.ALL) {
            Double amount = amounts.get(ion);
            if (amount != null) {
                copies[ion.ordinal()] = amount;
                listed |= bit(ion);
            }
        }
        return new IonAmounts(copies, listed);
    }

    /** How much there is of an ion; 0 where it is not listed. */
    public static double amount(Map<Ion, Double> amounts, Ion ion) {
        if (amounts instanceof IonAmounts known) {
            return known.amounts[ion.ordinal()];
        }
        Double amount = amounts.get(ion);
        return amount == null ? 0 : amount;
    }

    /** Every amount changed; the same where none is. */
    public static IonAmounts changed(Map<Ion, Double> amounts, Change change) {
        IonAmounts before = of(amounts);
        double[] after = before.amounts.clone();
        boolean same = true;
        for (int i = 0; i < after.length; i++) {
            Ion ion = Ion.ALL.get(i);
            if (before.lists(ion)) {
                after[i] = change.of(ion, before.amounts[i]);
                same &= Double.compare(after[i], before.amounts[i]) == 0;
            }
        }
        return same ? before : new IonAmounts(after, before.listed);
    }

    private static int bit(Ion ion) {
        return 1 << ion.ordinal();
    }

    private boolean lists(Ion ion) {
        return (listed & bit(ion)) != 0;
    }

    /** The same with another amount of an ion. */
    public IonAmounts with(Ion ion, double amount) {
        double[] others = amounts.clone();
        others[ion.ordinal()] = amount;
        return new IonAmounts(others, listed | bit(ion));
    }

    /** Both together. */
    public IonAmounts plus(Map<Ion, Double> more) {
        IonAmounts added = of(more);
        double[] sums = amounts.clone();
        for (int i = 0; i < sums.length; i++) {
            sums[i] += added.amounts[i];
        }
        return new IonAmounts(sums, listed | added.listed);
    }

    @Override
    public @Nullable Double get(@Nullable Object ion) {
        return ion instanceof Ion known && lists(known) ? amounts[known.ordinal()] : null;
    }

    @Override
    public boolean containsKey(@Nullable Object ion) {
        return ion instanceof Ion known && lists(known);
    }

    @Override
    public int size() {
        return Integer.bitCount(listed);
    }

    @Override
    public Set<Map.Entry<Ion, Double>> entrySet() {
        Map<Ion, Double> entries = new EnumMap<>(Ion.class);
        for (Ion ion : Ion.ALL) {
            if (lists(ion)) {
                entries.put(ion, amounts[ion.ordinal()]);
            }
        }
        return Collections.unmodifiableMap(entries).entrySet();
    }
}

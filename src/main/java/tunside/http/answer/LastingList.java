package tunside.http.answer;

import com.fasterxml.jackson.core.SerializableString;
import java.util.AbstractList;
import java.util.ArrayList;
import java.util.List;
import java.util.RandomAccess;
import java.util.concurrent.atomic.AtomicReference;
import org.jspecify.annotations.Nullable;

/** A list that stands in many answers, so that its JSON is written once and then copied. */
public final class LastingList<T> extends AbstractList<T> implements RandomAccess {
    private final List<T> items;
    private final AtomicReference<@Nullable SerializableString> json = new AtomicReference<>();

    private LastingList(List<T> items) {
        this.items = List.copyOf(items);
    }

    /** The same items, for long. */
    public static <T> LastingList<T> of(List<T> items) {
        return new LastingList<>(items);
    }

    /** Another with one item more. */
    public LastingList<T> with(T more) {
        List<T> longer = new ArrayList<>(items);
        longer.add(more);
        return new LastingList<>(longer);
    }

    /** The same as a plain list. */
    public List<T> items() {
        return items;
    }

    @Override
    public T get(int index) {
        return items.get(index);
    }

    @Override
    public int size() {
        return items.size();
    }

    /** Its JSON as {@link #keep} was given it; null before. */
    public @Nullable SerializableString json() {
        return json.get();
    }

    /** Keeps its JSON for the next answer. */
    public void keep(SerializableString written) {
        json.set(written);
    }
}

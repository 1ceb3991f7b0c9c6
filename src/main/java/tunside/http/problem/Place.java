package tunside.http.problem;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import tunside.http.answer.Rounded;

/**
 * A place in a request, and the list of faults found so far. Mappers walk down with {@link #member} and {@link #item},
 * report with {@link #fault}, and call {@link #stopIfFaulty} before they compute, so the caller gets all faults at once.
 */
public final class Place {
    private final List<Fault> faults;
    private final @Nullable Place parent;
    private final String step;

    private Place(List<Fault> faults, @Nullable Place parent, String step) {
        this.faults = faults;
        this.parent = parent;
        this.step = step;
    }

    /** The whole request, no fault yet. */
    public static Place root() {
        return new Place(new ArrayList<>(), null, "");
    }

    /** A member of the object at this place. */
    public Place member(String name) {
        return new Place(faults, this, name);
    }

    /** An item of the array at this place. */
    public Place item(int index) {
        return new Place(faults, this, Integer.toString(index));
    }

    /** JSON Pointer of this place. */
    public String pointer() {
        return parent == null
                ? ""
                : parent.pointer() + "/" + step.replace("~", "~0").replace("/", "~1");
    }

    /** Records that what stands here is wrong. */
    public void fault(String detail) {
        faults.add(new Fault(pointer(), detail));
    }

    /**
     * Builds a domain value from what stands here; its {@link IllegalArgumentException} is the caller's fault.
     *
     * @param fallback returned after a fault, so that the mapper can go on and find the others; never computed with
     */
    @SuppressWarnings("NullAway") // a fallback of null is never read: stopIfFaulty throws before
    public <T> T build(Supplier<T> supplier, @Nullable T fallback) {
        try {
            return supplier.get();
        } catch (IllegalArgumentException e) {
            fault(requireNonNull(e.getMessage()));
            return fallback;
        }
    }

    /**
     * Checks a number in words that name the range and the value; returns the low bound after a fault.
     *
     * @param given the value in the request's words
     */
    public double within(double value, double low, double high, String unit, Supplier<String> given) {
        if (value >= low && value <= high) {
            return value;
        }
        fault("must be from %s to %s%s but is %s"
                .formatted(Rounded.text(low), Rounded.text(high), unit.isEmpty() ? "" : " " + unit, given.get()));
        return low;
    }

    /** Throws if any fault has been recorded, at this place or any other of the same request. */
    public void stopIfFaulty() {
        if (!faults.isEmpty()) {
            throw new InvalidRequestException(faults);
        }
    }
}

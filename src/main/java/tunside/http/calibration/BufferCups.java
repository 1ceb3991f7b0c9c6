package tunside.http.calibration;

import static java.util.Objects.requireNonNull;

import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import tunside.electrode.Buffer;
import tunside.electrode.BufferCup;
import tunside.electrode.Buffers;
import tunside.electrode.Preparation;
import tunside.http.json.KnownIds;
import tunside.http.problem.Place;

/** Reads a cup of buffer: one of the tables by its id, or an own one by its pH. */
public final class BufferCups {
    private BufferCups() {}

    /**
     * A fresh cup.
     *
     * @param buffer id of a buffer, or null
     * @param ph of an own buffer, or null
     * @param place of the object that has the members {@code buffer} and {@code ph}
     * @return empty after a fault
     */
    public static Optional<BufferCup> toCup(@Nullable String buffer, @Nullable Double ph, Place place) {
        return toCup(buffer, ph, OptionalDouble.empty(), Preparation.fresh(), place);
    }

    /** The same with what is stated of its uncertainty and its preparation. */
    static Optional<BufferCup> toCup(
            @Nullable String buffer,
            @Nullable Double ph,
            OptionalDouble uncertainty,
            Preparation preparation,
            Place place) {
        if ((buffer == null) == (ph == null)) {
            place.fault("must either name a buffer or state the ph of an own one");
            return Optional.empty();
        }
        if (ph != null) {
            return Optional.of(new BufferCup(Optional.empty(), OptionalDouble.of(ph), uncertainty, preparation));
        }
        Optional<Buffer> known = Buffers.find(requireNonNull(buffer));
        if (known.isEmpty()) {
            place.member("buffer").fault(KnownIds.BUFFER.fault(buffer));
            return Optional.empty();
        }
        return Optional.of(new BufferCup(known, OptionalDouble.empty(), uncertainty, preparation));
    }
}

package tunside.mash.plan;

import java.util.Optional;
import java.util.OptionalDouble;
import tunside.chemistry.Ion;

/**
 * A range wanted in the liquor with all that goes into it, what the malt gives left out.
 *
 * @param kind what is wanted
 * @param ion which, for {@link Kind#ION}
 * @param low least, absent where open
 * @param high most, absent where open
 * @param pointer JSON Pointer to it, relative to the question
 */
public record IonWant(Kind kind, Optional<Ion> ion, OptionalDouble low, OptionalDouble high, String pointer) {
    /** What a range is of. */
    public enum Kind {
        /** An ion, mg/L. */
        ION,
        /** Alkalinity of the blended liquor with salts and bases, before any acid, mEq/L. */
        ALKALINITY,
        /** Milligrams of chloride to one of sulfate. */
        CHLORIDE_TO_SULFATE
    }

    public IonWant {
        if ((kind == Kind.ION) != ion.isPresent()) {
            throw new IllegalArgumentException("an ion belongs to a range of an ion, and to no other");
        }
        if (low.isEmpty() && high.isEmpty()) {
            throw new IllegalArgumentException("a range needs a low or a high end");
        }
        if (!(low.orElse(0) >= 0 && low.orElse(0) <= high.orElse(Double.MAX_VALUE) && high.orElse(0) < 1e6)) {
            throw new IllegalArgumentException("a range must run upwards from 0 or more but runs from %s to %s"
                    .formatted(low.orElse(0), high.orElse(Double.MAX_VALUE)));
        }
    }

    /** A range of an ion, mg/L. */
    public static IonWant of(Ion ion, OptionalDouble low, OptionalDouble high, String pointer) {
        return new IonWant(Kind.ION, Optional.of(ion), low, high, pointer);
    }

    /** A range of something else. */
    public static IonWant of(Kind kind, OptionalDouble low, OptionalDouble high, String pointer) {
        return new IonWant(kind, Optional.empty(), low, high, pointer);
    }

    /** Its unit in answers; 1 for the ratio. */
    public String unit() {
        return switch (kind) {
            case ION -> "mg/L";
            case ALKALINITY -> "mEq/L";
            case CHLORIDE_TO_SULFATE -> "1";
        };
    }

    /** Its name in answers. */
    public String name() {
        return switch (kind) {
            case ION -> ion.orElseThrow().symbol();
            case ALKALINITY -> "alkalinity";
            case CHLORIDE_TO_SULFATE -> "chloride to sulfate";
        };
    }
}

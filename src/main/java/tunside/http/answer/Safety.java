package tunside.http.answer;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import tunside.chemistry.AcidProduct;
import tunside.chemistry.Salt;
import tunside.safety.Chemical;
import tunside.safety.Handling;
import tunside.safety.SafetyNote;
import tunside.safety.SafetyNotes;

/** The domain's safety notes as answers carry them. */
public final class Safety {
    private static final List<SafetyAdvice> GENERAL = advice(SafetyNotes.general());
    private static final List<SafetyAdvice> CALIBRATION = advice(SafetyNotes.calibration());
    private static final List<SafetyAdvice> READING = advice(SafetyNotes.reading());
    private static final List<SafetyAdvice> ALL = advice(SafetyNotes.all());

    /** How many sets of chemicals are remembered; a household has a handful, a caller that makes up strengths starts it anew. */
    private static final int MOST_REMEMBERED = 500;

    private static final Map<Work, List<SafetyAdvice>> REMEMBERED = new ConcurrentHashMap<>();

    private record Acid(String id, double percent, boolean solid) {}

    /** Some work with acids and, by id, with salts and bases. */
    private record Work(Set<Handling> handling, List<Acid> acids, List<String> salts) {}

    private Safety() {}

    /** What applies whatever the caller does. */
    public static List<SafetyAdvice> general() {
        return GENERAL;
    }

    /** For work with electrode and buffers. */
    public static List<SafetyAdvice> calibration() {
        return CALIBRATION;
    }

    /** For a reading of a sample. */
    public static List<SafetyAdvice> reading() {
        return READING;
    }

    /** For a mash with these acid products, salts and bases. */
    public static List<SafetyAdvice> mash(List<AcidProduct> products, List<Salt> salts) {
        return of(Set.of(Handling.ELECTRODE, Handling.SAMPLE), products, salts);
    }

    /** For water with these acid products, salts and bases in it or going into it. */
    public static List<SafetyAdvice> water(List<AcidProduct> products, List<Salt> salts) {
        return of(Set.of(), products, salts);
    }

    /** For a dose of an acid, as bought and as dosed, or of a base. */
    public static List<SafetyAdvice> dosing(List<AcidProduct> products, List<Salt> bases, boolean mash) {
        return of(mash ? Set.of(Handling.ELECTRODE, Handling.SAMPLE) : Set.of(Handling.ELECTRODE), products, bases);
    }

    /** For making a weaker acid of a stronger one. */
    public static List<SafetyAdvice> dilution(AcidProduct strong, AcidProduct weak) {
        return of(Set.of(), List.of(strong, weak), List.of());
    }

    private static List<SafetyAdvice> of(Set<Handling> handling, List<AcidProduct> products, List<Salt> salts) {
        List<Acid> acids = new ArrayList<>();
        for (AcidProduct product : products) {
            acids.add(new Acid(product.acid().id(), product.massPercent(), product.solid()));
        }
        List<String> ids = new ArrayList<>();
        for (Salt salt : salts) {
            ids.add(salt.id());
        }
        Work work = new Work(handling, acids, ids);
        List<SafetyAdvice> known = REMEMBERED.get(work);
        if (known != null) {
            return known;
        }
        if (REMEMBERED.size() >= MOST_REMEMBERED) {
            REMEMBERED.clear();
        }
        List<SafetyAdvice> advice = advice(SafetyNotes.of(handling, chemicals(products, salts)));
        REMEMBERED.put(work, advice);
        return advice;
    }

    /** Every note, with its placeholders. */
    public static List<SafetyAdvice> all() {
        return ALL;
    }

    private static List<Chemical> chemicals(List<AcidProduct> products, List<Salt> salts) {
        return Stream.concat(products.stream().map(Chemical::of), salts.stream().map(Chemical::of))
                .toList();
    }

    private static List<SafetyAdvice> advice(List<SafetyNote> notes) {
        return LastingList.of(notes.stream()
                .map(note ->
                        new SafetyAdvice(note.code(), note.message(), note.appliesTo(), note.hazards(), note.source()))
                .toList());
    }
}

package tunside.http.answer;

import java.util.List;
import tunside.chemistry.AcidProduct;
import tunside.dosing.DosedLiquid;
import tunside.safety.SafetyNote;
import tunside.safety.SafetyNotes;

/** The domain's safety notes as answers carry them. */
public final class Safety {
    private static final List<SafetyAdvice> GENERAL = advice(SafetyNotes.general());
    private static final List<SafetyAdvice> CALIBRATION = advice(SafetyNotes.calibration());

    private Safety() {}

    /** What applies whatever the caller does. */
    public static List<SafetyAdvice> general() {
        return GENERAL;
    }

    /** For work with electrode and buffers. */
    public static List<SafetyAdvice> calibration() {
        return CALIBRATION;
    }

    /** For a mash with these acid products. */
    public static List<SafetyAdvice> mash(List<AcidProduct> products) {
        return advice(SafetyNotes.work(products, true));
    }

    /** For a dose of an acid, as bought and as dosed. */
    public static List<SafetyAdvice> dosing(List<AcidProduct> products, DosedLiquid liquid) {
        return advice(SafetyNotes.work(products, liquid == DosedLiquid.MASH));
    }

    /** Every note. */
    public static List<SafetyAdvice> all() {
        return advice(SafetyNotes.all());
    }

    private static List<SafetyAdvice> advice(List<SafetyNote> notes) {
        return notes.stream()
                .map(note ->
                        new SafetyAdvice(note.code(), note.message(), note.appliesTo(), note.hazards(), note.source()))
                .toList();
    }
}

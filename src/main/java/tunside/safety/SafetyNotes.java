package tunside.safety;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import tunside.chemistry.AcidProduct;
import tunside.reference.Row;
import tunside.reference.Table;

/** The notes of {@code safety-notes.csv}, chosen by what is handled; the deferral to label and codes always stands last. */
public final class SafetyNotes {
    private static final Set<String> OCCASIONS =
            Set.of("corrosive", "irritant", "mild", "acid", "electrode", "buffer", "sample", "always");

    private record Entry(String when, SafetyNote note) {}

    private static final List<Entry> ENTRIES = load();

    private SafetyNotes() {}

    /** Every note, in order. */
    public static List<SafetyNote> all() {
        return ENTRIES.stream().map(Entry::note).toList();
    }

    /** What applies to any answer. */
    public static List<SafetyNote> general() {
        return choose(Set.of(), List.of());
    }

    /** For work with electrode and buffers. */
    public static List<SafetyNote> calibration() {
        return choose(Set.of("electrode", "buffer"), List.of());
    }

    /**
     * For a mash or liquor with these acid products in it or going into it.
     *
     * @param products each gets its hazards at its strength
     * @param mash whether a hot sample is taken
     */
    public static List<SafetyNote> work(List<AcidProduct> products, boolean mash) {
        return choose(mash ? Set.of("electrode", "sample") : Set.of("electrode"), products);
    }

    private static List<SafetyNote> choose(Set<String> occasions, List<AcidProduct> products) {
        List<SafetyNote> notes = new ArrayList<>();
        for (AcidProduct product : products) {
            notes.addAll(about(product));
        }
        for (Entry entry : ENTRIES) {
            if (entry.when.equals("always")
                    || occasions.contains(entry.when)
                    || entry.when.equals("acid") && !products.isEmpty()) {
                notes.add(entry.note);
            }
        }
        return notes;
    }

    private static List<SafetyNote> about(AcidProduct product) {
        String substance = product.acid().id();
        double percent = product.massPercent();
        String name = "%s %s %%w/w".formatted(product.acid().name(), Math.round(percent * 10) / 10.0);
        List<String> hazards = Hazards.of(substance, percent);
        String when = hazards.contains("H314") ? "corrosive" : hazards.isEmpty() ? "mild" : "irritant";
        List<SafetyNote> notes = new ArrayList<>();
        for (Entry entry : ENTRIES) {
            if (entry.when.equals(when)) {
                notes.add(new SafetyNote(
                        entry.note.code(),
                        entry.note.message(),
                        name,
                        hazards,
                        hazards.isEmpty() ? entry.note.source() : "CLP-1272-2008"));
            }
        }
        for (Hazards.SupplyLimit limit : Hazards.supplyLimits(substance, percent)) {
            notes.add(new SafetyNote(
                    "acid.supply-limit",
                    "In %s, %s above %s %%w/w %s."
                            .formatted(limit.region(), product.acid().name(), limit.abovePercent(), limit.meaning()),
                    name,
                    List.of(),
                    limit.source()));
        }
        return notes;
    }

    private static List<Entry> load() {
        List<Entry> entries = new ArrayList<>();
        Table table = Table.read("safety-notes.csv");
        for (Row row : table.rows()) {
            String when = row.text("when");
            if (!OCCASIONS.contains(when)) {
                throw row.fault("when '%s' is none of %s".formatted(when, OCCASIONS));
            }
            entries.add(new Entry(
                    when,
                    new SafetyNote(
                            row.text("code"), row.text("message"), row.text("applies_to"), List.of(), row.source())));
        }
        if (!entries.get(entries.size() - 1).when.equals("always")) {
            throw table.rows().get(table.rows().size() - 1).fault("the last note must be the one that always applies");
        }
        return List.copyOf(entries);
    }
}

package tunside.safety;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Stream;
import tunside.reference.Row;
import tunside.reference.Table;

/**
 * The notes of {@code safety-notes.csv}, chosen by what is handled: first those about each chemical at its strength, then
 * those about the work. The deferral to label, codes and licensed practice always stands last.
 */
public final class SafetyNotes {
    /** Occasions of a note about one chemical. */
    private static final Set<String> OF_ONE =
            Set.of("corrosive", "eye-damage", "irritant", "mild-acid", "substance", "acid-product");

    /** Occasions of a note about the work. */
    private static final Set<String> OF_WORK = Set.of(
            "acid", "alkaline", "caustic", "salt", "chemical", "general", "electrode", "buffer", "sample", "always");

    private static final Set<String> IRRITATING = Set.of("H315", "H319", "H335");

    private record Entry(String when, String substance, OptionalDouble fromPercent, SafetyNote note) {
        /** Whether it is about this chemical by name and strength. */
        boolean names(Chemical chemical) {
            return substance.equals(chemical.substance()) && chemical.percent() >= fromPercent.orElse(0);
        }
    }

    private static final List<Entry> ENTRIES = load();

    private SafetyNotes() {}

    /** Every note, in order, with its placeholders. */
    public static List<SafetyNote> all() {
        return ENTRIES.stream().map(Entry::note).toList();
    }

    /** What applies to any answer. */
    public static List<SafetyNote> general() {
        return of(Set.of(), List.of());
    }

    /** For work with electrode and buffers. */
    public static List<SafetyNote> calibration() {
        return of(Set.of(Handling.ELECTRODE, Handling.BUFFERS), List.of());
    }

    /** For a reading of a sample. */
    public static List<SafetyNote> reading() {
        return of(Set.of(Handling.ELECTRODE, Handling.SAMPLE), List.of());
    }

    /**
     * The notes for some work with some chemicals.
     *
     * @param handling what is done besides
     * @param chemicals each gets its hazards at its strength; one that stands twice counts once
     */
    public static List<SafetyNote> of(Set<Handling> handling, List<Chemical> chemicals) {
        List<Chemical> distinct = chemicals.stream().distinct().toList();
        Set<SafetyNote> notes = new LinkedHashSet<>();
        distinct.forEach(chemical -> about(chemical, notes));
        for (Entry entry : ENTRIES) {
            if (OF_WORK.contains(entry.when) && applies(entry.when, handling, distinct)) {
                notes.add(entry.note);
            }
        }
        return List.copyOf(notes);
    }

    private static boolean applies(String when, Set<Handling> handling, List<Chemical> chemicals) {
        Stream<Chemical> stream = chemicals.stream();
        return switch (when) {
            case "always" -> true;
            case "general" -> handling.isEmpty() && chemicals.isEmpty();
            case "electrode" -> handling.contains(Handling.ELECTRODE);
            case "buffer" -> handling.contains(Handling.BUFFERS);
            case "sample" -> handling.contains(Handling.SAMPLE);
            case "chemical" -> stream.anyMatch(chemical -> !"harmless".equals(grade(hazards(chemical))));
            case "acid" -> stream.anyMatch(Chemical::acid);
            case "alkaline" -> stream.anyMatch(chemical -> chemical.kind() == Chemical.Kind.BASE);
            case "caustic" ->
                stream.anyMatch(chemical -> chemical.kind() == Chemical.Kind.BASE
                        && !hazards(chemical).isEmpty());
            default -> stream.anyMatch(chemical -> chemical.kind() == Chemical.Kind.SALT);
        };
    }

    private static List<String> hazards(Chemical chemical) {
        return Hazards.of(chemical.substance(), chemical.percent());
    }

    /** How hard a substance with these hazards bites. */
    private static String grade(List<String> hazards) {
        if (hazards.contains("H314")) {
            return "corrosive";
        }
        if (hazards.contains("H318")) {
            return "eye-damage";
        }
        return hazards.stream().anyMatch(IRRITATING::contains) ? "irritant" : "harmless";
    }

    private static void about(Chemical chemical, Set<SafetyNote> notes) {
        List<String> hazards = hazards(chemical);
        String grade = grade(hazards);
        for (Entry entry : ENTRIES) {
            boolean byGrade = entry.when.equals(grade);
            boolean mild = entry.when.equals("mild-acid") && grade.equals("harmless") && chemical.acid();
            boolean named = entry.when.equals("substance") && entry.names(chemical);
            boolean spill = entry.when.equals("acid-product") && chemical.kind() == Chemical.Kind.ACID_SOLUTION;
            if (byGrade || mild || named || spill) {
                notes.add(new SafetyNote(
                        entry.note.code(),
                        filled(entry.note.message(), chemical, hazards),
                        chemical.title(),
                        byGrade || mild ? hazards : List.of(),
                        byGrade ? source(chemical) : entry.note.source()));
            }
        }
        for (Hazards.SupplyLimit limit : Hazards.supplyLimits(chemical.substance(), chemical.percent())) {
            notes.add(new SafetyNote(
                    "acid.supply-limit",
                    "In %s, %s above %s %%w/w %s."
                            .formatted(
                                    region(limit.region()),
                                    chemical.name(),
                                    Math.round(limit.abovePercent()),
                                    limit.meaning()),
                    chemical.title(),
                    List.of(),
                    limit.source()));
        }
    }

    private static String filled(String template, Chemical chemical, List<String> hazards) {
        String filled = template.replace("{substance}", chemical.title())
                .replace("{hazards}", HazardStatements.sentence(hazards))
                .replace("{bicarbonate}", Long.toString(roundedUp(chemical.bicarbonatePer100G())))
                .replace("{gas}", Long.toString(roundedUp(SpillNeutraliser.carbonDioxideLitres((double)
                        roundedUp(chemical.bicarbonatePer100G())))));
        return Character.toUpperCase(filled.charAt(0)) + filled.substring(1);
    }

    /** To whole grams below 20 g, to tens above: a heap of powder, not a titration. */
    private static long roundedUp(double grams) {
        return (long) (grams < 20 ? Math.ceil(grams) : 10 * Math.ceil(grams / 10));
    }

    private static String region(String name) {
        return name.endsWith("Union") ? "the " + name : name;
    }

    /** The first band with hazards is the one that the note rests on. */
    private static String source(Chemical chemical) {
        return Hazards.bands(chemical.substance(), chemical.percent()).stream()
                .filter(band -> !band.codes().isEmpty())
                .findFirst()
                .orElseThrow()
                .source();
    }

    private static List<Entry> load() {
        List<Entry> entries = new ArrayList<>();
        Table table = Table.read("safety-notes.csv");
        for (Row row : table.rows()) {
            String when = row.text("when");
            String substance = row.optionalText("substance");
            if (!OF_ONE.contains(when) && !OF_WORK.contains(when)) {
                throw row.fault("when '%s' is none of %s and %s".formatted(when, OF_ONE, OF_WORK));
            }
            if (when.equals("substance") == substance.isEmpty()) {
                throw row.fault("a substance belongs to a note about one substance, and to no other");
            }
            entries.add(new Entry(
                    when,
                    substance,
                    row.optionalNumber("from_percent"),
                    new SafetyNote(
                            row.text("code"),
                            row.text("message"),
                            row.optionalText("applies_to"),
                            List.of(),
                            row.source())));
        }
        if (!entries.get(entries.size() - 1).when.equals("always")) {
            throw table.rows().get(table.rows().size() - 1).fault("the last note must be the one that always applies");
        }
        return List.copyOf(entries);
    }
}

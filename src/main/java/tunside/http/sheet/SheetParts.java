package tunside.http.sheet;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.List;
import java.util.StringJoiner;
import org.jspecify.annotations.Nullable;
import tunside.finding.Outcome;
import tunside.http.answer.Basis;
import tunside.http.answer.Check;
import tunside.http.answer.Rounded;
import tunside.http.answer.SafetyAdvice;
import tunside.http.mash.AdditionRequest;
import tunside.http.mash.MaltRequest;
import tunside.http.quantity.AlkalinityQuantity;
import tunside.http.quantity.DissolvedQuantity;
import tunside.http.quantity.MassQuantity;
import tunside.http.quantity.VolumeQuantity;
import tunside.http.sheet.BrewDaySheet.Fact;
import tunside.http.sheet.BrewDaySheet.Ingredient;
import tunside.http.sheet.BrewDaySheet.Note;
import tunside.http.water.LiquorRequest;
import tunside.http.water.WaterRequest;
import tunside.http.water.WaterSourceRequest;

/** What sheets have in common, cut to what one page holds. */
final class SheetParts {
    private static final int MOST_WARNINGS = 3;
    private static final int MOST_WATERS = 2;
    private static final int MOST_BLANK = 7;
    private static final double PAGE_MM = 255;
    private static final double HEADS_MM = 100;
    private static final double WARNING_MM = 12;
    private static final double LINE_MM = 9;
    private static final double STEP_MM = 13;
    private static final double BLANK_MM = 9.5;
    private static final double MARGIN_LINES = 75;
    private static final double NOTE_GAP_LINES = 0.4;
    private static final int LINE_CHARACTERS = 36;
    private static final List<String> ALWAYS =
            List.of("acid.into-water", "chemical.first-aid", "sample.hot", "defer.label-and-codes");

    private SheetParts() {}

    static String amount(@Nullable MassQuantity mass, @Nullable VolumeQuantity volume) {
        return volume != null
                ? Rounded.text(volume.value()) + " " + volume.unit().symbol()
                : Rounded.text(requireNonNull(mass).value()) + " " + mass.unit().symbol();
    }

    static String words(String id) {
        return id.replace('-', ' ');
    }

    static Ingredient malt(MaltRequest malt) {
        String colour = malt.colour() == null
                ? ""
                : ", %s %s"
                        .formatted(
                                Rounded.text(malt.colour().value()),
                                malt.colour().unit().symbol());
        String measured = malt.measured() == null ? "" : ", measured lot";
        return new Ingredient(words(malt.malt()) + " malt" + colour + measured, amount(malt.mass(), null));
    }

    static Ingredient addition(AdditionRequest addition) {
        String name = addition.acid() == null
                ? words(requireNonNull(addition.salt()))
                : "%s acid%s"
                        .formatted(
                                words(requireNonNull(addition.acid())),
                                addition.strength() == null
                                        ? ""
                                        : ", %s %s"
                                                .formatted(
                                                        Rounded.text(addition.strength()
                                                                .value()),
                                                        addition.strength()
                                                                .unit()
                                                                .symbol()));
        return new Ingredient(name, amount(addition.mass(), addition.volume()));
    }

    /** The waters, each with what its report says. */
    static List<Ingredient> liquor(LiquorRequest liquor) {
        List<Ingredient> waters = new ArrayList<>();
        if (liquor.sources() == null) {
            waters.add(new Ingredient("liquor, " + report(liquor.water()), amount(null, liquor.volume())));
        } else {
            for (WaterSourceRequest source : liquor.sources()) {
                waters.add(new Ingredient("liquor, " + report(source.water()), amount(null, source.volume())));
            }
        }
        return waters.size() <= MOST_WATERS
                ? waters
                : List.of(new Ingredient("liquor, a blend of %s waters".formatted(waters.size()), ""));
    }

    private static String report(@Nullable WaterRequest water) {
        StringJoiner report = new StringJoiner(", ");
        if (water != null) {
            dissolved(report, "Ca", water.calcium());
            dissolved(report, "Mg", water.magnesium());
            dissolved(report, "Na", water.sodium());
            dissolved(report, "Cl", water.chloride());
            dissolved(report, "SO4", water.sulfate());
            AlkalinityQuantity alkalinity = water.alkalinity();
            if (alkalinity != null) {
                report.add("alkalinity %s %s"
                        .formatted(
                                Rounded.text(alkalinity.value()),
                                alkalinity.unit().symbol()));
            }
        }
        return report.length() == 0 ? "distilled water" : report.toString();
    }

    private static void dissolved(StringJoiner report, String ion, @Nullable DissolvedQuantity quantity) {
        if (quantity != null) {
            report.add("%s %s %s"
                    .formatted(
                            ion, Rounded.text(quantity.value()), quantity.unit().symbol()));
        }
    }

    /** The first of a list. */
    static List<Ingredient> first(List<Ingredient> all, int most) {
        return all.size() <= most ? all : all.subList(0, most);
    }

    /** What {@link #first} left out. */
    static String more(List<Ingredient> all, int most) {
        return all.size() <= most ? "" : "and %s more, as in the question".formatted(all.size() - most);
    }

    static List<String> warnings(List<Check> checks) {
        List<String> warnings = new ArrayList<>();
        checks.stream()
                .filter(check -> check.outcome() == Outcome.STOP)
                .forEach(check -> warnings.add("STOP. " + check.message()));
        checks.stream()
                .filter(check -> check.outcome() == Outcome.CAUTION)
                .forEach(check -> warnings.add("Caution. " + check.message()));
        if (warnings.size() <= MOST_WARNINGS) {
            return warnings;
        }
        List<String> first = new ArrayList<>(warnings.subList(0, MOST_WARNINGS));
        first.add("%s more checks say caution or stop: read them in the answer."
                .formatted(warnings.size() - MOST_WARNINGS));
        return first;
    }

    static boolean stopped(List<Check> checks) {
        return checks.stream().anyMatch(check -> check.outcome() == Outcome.STOP);
    }

    /** The notes that fit the margin, in their order; the order of dilution, first aid and the deferral always. */
    static List<Note> safety(List<SafetyAdvice> safety) {
        double room = MARGIN_LINES;
        for (SafetyAdvice note : safety) {
            room -= ALWAYS.contains(note.code()) ? lines(note) : 0;
        }
        List<Note> notes = new ArrayList<>();
        String about = "";
        for (SafetyAdvice note : safety) {
            boolean always = ALWAYS.contains(note.code());
            if (always || lines(note) <= room) {
                room -= always ? 0 : lines(note);
                notes.add(new Note(note.appliesTo().equals(about) ? "" : note.appliesTo() + ":", note.message()));
                about = note.appliesTo();
            }
        }
        return notes;
    }

    static String moreSafety(List<SafetyAdvice> safety) {
        int missing = safety.size() - safety(safety).size();
        return missing == 0 ? "" : "%s more notes in the answer as JSON.".formatted(missing);
    }

    private static double lines(SafetyAdvice note) {
        int characters = note.appliesTo().length() + 2 + note.message().length();
        return Math.ceil((double) characters / LINE_CHARACTERS) + NOTE_GAP_LINES;
    }

    /** What the question says of the readings; the rest is to be filled in. */
    static List<Fact> electrode(@Nullable Double phUncertainty, @Nullable Double sharedUncertainty) {
        List<Fact> facts = new ArrayList<>();
        if (phUncertainty != null) {
            facts.add(new Fact("Standard uncertainty of a reading", Rounded.text(phUncertainty)));
        }
        if (sharedUncertainty != null) {
            facts.add(new Fact("Shared by all readings", Rounded.text(sharedUncertainty)));
        }
        for (String blank :
                List.of("Calibrated on, at", "Buffers", "Slope, % of ideal", "Offset, mV", "Buffer read again")) {
            facts.add(new Fact(blank, ""));
        }
        return facts;
    }

    private static int pairs(int entries) {
        return (entries + 1) / 2;
    }

    /** Empty rows that still fit the shorter of the two papers, from usual heights in mm. */
    static List<Integer> blankRows(int warnings, int liquors, int ingredients, int facts, int steps) {
        double used = HEADS_MM
                + warnings * WARNING_MM
                + (liquors + pairs(ingredients) + pairs(facts)) * LINE_MM
                + steps * STEP_MM;
        List<Integer> rows = new ArrayList<>();
        for (int i = 0; i < MOST_BLANK && used + (i + 1) * BLANK_MM < PAGE_MM; i++) {
            rows.add(i);
        }
        return rows;
    }

    static String origin(Basis basis) {
        return "Tunside %s, model %s".formatted(basis.version(), basis.model());
    }
}

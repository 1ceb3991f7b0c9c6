package tunside.http.sheet;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.StringJoiner;
import tunside.http.answer.Rounded;
import tunside.http.dosing.AcidDoseRequest;
import tunside.http.dosing.AcidDoseResponse;
import tunside.http.dosing.AcidDoseResponse.AcidDose;
import tunside.http.dosing.AcidDoseResponse.ReadingSoFar;
import tunside.http.dosing.AcidDoseResponse.Stage;
import tunside.http.dosing.AcidDoseResponse.TotalDose;
import tunside.http.quantity.MassQuantity;
import tunside.http.quantity.VolumeQuantity;
import tunside.http.sheet.BrewDaySheet.Fact;
import tunside.http.sheet.BrewDaySheet.Ingredient;
import tunside.http.sheet.BrewDaySheet.Step;
import tunside.quantity.VolumeUnit;

/** A dose on paper: what was read, what to add, and fields for every reading to come. */
final class AcidDoseSheet {
    private static final int MOST_READINGS = 3;
    private static final int MOST_STAGES = 3;

    private final AcidDoseRequest question;
    private final AcidDoseResponse answer;
    private final AcidDose result;
    private final boolean stopped;

    private AcidDoseSheet(AcidDoseRequest question, AcidDoseResponse answer) {
        this.question = question;
        this.answer = answer;
        this.result = answer.result();
        this.stopped = result.addNow() == null && SheetParts.stopped(answer.checks());
    }

    static BrewDaySheet of(AcidDoseRequest question, AcidDoseResponse answer) {
        return new AcidDoseSheet(question, answer).sheet();
    }

    private BrewDaySheet sheet() {
        List<Ingredient> ingredients = ingredients();
        List<Step> steps = steps();
        List<Ingredient> liquor = question.liquor() == null ? List.of() : SheetParts.liquor(question.liquor());
        return new SheetDraft(
                        stopped ? "Stop: add nothing now" : title(),
                        result.advice(),
                        liquor,
                        question.grist() == null ? "What is dosed" : "Grist and additions",
                        ingredients,
                        facts(),
                        steps,
                        SheetParts.electrode(
                                question.calibration(), question.phUncertainty(), question.sharedUncertainty()),
                        answer.checks(),
                        answer.safety(),
                        answer.basis())
                .fitted();
    }

    private String title() {
        String liquid = question.liquid().name().toLowerCase(Locale.ROOT);
        return switch (result.outcome()) {
            case DOSE, RAISE_INSTEAD ->
                result.addNow() == null
                        ? "The %s gets nothing now".formatted(liquid)
                        : (result.diluteFirst() == null ? "The %s gets %s now" : "Dilute first; then the %s gets %s")
                                .formatted(
                                        liquid,
                                        SheetParts.amount(
                                                result.addNow().mass(),
                                                result.addNow().volume()));
            case NONE_NEEDED -> "The %s needs nothing".formatted(liquid);
            case OUT_OF_REACH -> "Target out of reach: add nothing";
        };
    }

    private String amount(Stage stage) {
        return SheetParts.amount(stage.mass(), stage.volume()) + " of " + reagent();
    }

    private String reagent() {
        return result.dosedBase() != null
                ? result.dosedBase().name()
                : "%s acid, %s %s"
                        .formatted(
                                SheetParts.words(
                                        requireNonNull(result.dosedAcid()).acid()),
                                Rounded.text(result.dosedAcid().strength().value()),
                                result.dosedAcid().strength().unit().symbol());
    }

    private List<Ingredient> ingredients() {
        List<Ingredient> ingredients = new ArrayList<>();
        if (question.volume() != null) {
            ingredients.add(new Ingredient(
                    question.liquid().name().toLowerCase(Locale.ROOT), SheetParts.amount(null, question.volume())));
        }
        if (question.additions() != null) {
            question.additions().forEach(addition -> ingredients.add(SheetParts.addition(addition)));
        }
        if (question.grist() != null) {
            question.grist().forEach(malt -> ingredients.add(SheetParts.malt(malt)));
        }
        return ingredients;
    }

    private List<Fact> facts() {
        List<Fact> facts = new ArrayList<>();
        facts.add(new Fact(
                "pH now",
                ph(result.now().ph(), result.now().low90(), result.now().high90())));
        facts.add(new Fact("Target", Rounded.text(result.aim().targetPh())));
        facts.add(new Fact(
                "Range that is good enough",
                "%s to %s"
                        .formatted(
                                Rounded.text(result.aim().lowPh()),
                                Rounded.text(result.aim().highPh()))));
        if (result.total() != null) {
            facts.add(new Fact("In all it may take", total(result.total())));
        }
        if (result.anion() != null) {
            facts.add(new Fact(
                    "It leaves",
                    "%s mg/L of %s"
                            .formatted(
                                    Rounded.text(result.anion().mgPerL()),
                                    result.anion().anion())));
        }
        return facts;
    }

    /** In mL where it is measured so, its interval too. */
    private String total(TotalDose total) {
        boolean measured = total.volume() != null;
        return "%s (90 %%: %s to %s)"
                .formatted(
                        SheetParts.amount(total.mass(), total.volume()),
                        SheetParts.amount(total.low90(), measured ? volume(total.low90()) : null),
                        SheetParts.amount(total.high90(), measured ? volume(total.high90()) : null));
    }

    private VolumeQuantity volume(MassQuantity mass) {
        double millilitres = mass.value() / requireNonNull(result.dosedAcid()).densityGPerMl();
        return new VolumeQuantity(Rounded.significant(millilitres, 3), VolumeUnit.ML);
    }

    private List<Step> steps() {
        List<Step> steps = new ArrayList<>();
        List<ReadingSoFar> readings = result.readings();
        for (ReadingSoFar reading : readings.subList(Math.max(0, readings.size() - MOST_READINGS), readings.size())) {
            steps.add(done(reading));
        }
        if (result.diluteFirst() != null) {
            steps.add(new Step(
                    false,
                    "Goggles and gloves on. Pour %s (%s) of the acid slowly into %s of cold water; let it cool. It makes %s of %s %s."
                            .formatted(
                                    SheetParts.amount(result.diluteFirst().acid(), null),
                                    SheetParts.amount(null, result.diluteFirst().acidVolume()),
                                    SheetParts.amount(result.diluteFirst().water(), null),
                                    SheetParts.amount(null, result.diluteFirst().makes()),
                                    Rounded.text(result.diluteFirst().strength().value()),
                                    result.diluteFirst().strength().unit().symbol()),
                    "",
                    ""));
        }
        if (!stopped) {
            List<Stage> stages = result.stages();
            for (int i = 0; i < Math.min(MOST_STAGES, stages.size()); i++) {
                steps.add(stage(stages.get(i), i == 0 && result.addNow() != null));
            }
        }
        return steps;
    }

    private static Step done(ReadingSoFar reading) {
        StringJoiner added = new StringJoiner(" and ");
        reading.added().forEach(one -> added.add(SheetParts.amount(one.mass(), one.volume()) + " of " + one.name()));
        boolean read = reading.ph() != null;
        String what = reading.added().isEmpty()
                ? (reading.measured() ? "First reading" : "By the water report")
                : "Added " + added + (read ? ", read" : "");
        return new Step(read, what, "", reading.ph() == null ? "" : Rounded.text(reading.ph()));
    }

    private Step stage(Stage stage, boolean now) {
        return new Step(
                false,
                now
                        ? "Add %s now. Stir, wait, cool a sample, read.".formatted(amount(stage))
                        : "Only if asked again with that reading: about %s. Stir, wait, cool a sample, read."
                                .formatted(SheetParts.amount(stage.mass(), stage.volume())),
                ph(stage.expectedPh(), stage.low90(), stage.high90()),
                "");
    }

    private static String ph(double ph, double low, double high) {
        return "%s (90 %%: %s to %s)".formatted(Rounded.text(ph), Rounded.text(low), Rounded.text(high));
    }
}

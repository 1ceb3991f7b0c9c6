package tunside.http.dilution;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import tunside.chemistry.AcidProduct;
import tunside.dosing.AcidDilutionLimits;
import tunside.dosing.AcidDilutionPlan;
import tunside.http.answer.Rounded;
import tunside.http.dilution.AcidDilutionResponse.DilutionAmount;
import tunside.http.dilution.AcidDilutionResponse.DilutionSolution;
import tunside.http.dilution.AcidDilutionResponse.DilutionStage;
import tunside.http.dilution.AcidDilutionResponse.DilutionStep;
import tunside.http.dilution.AcidDilutionResponse.HazardMeaning;
import tunside.http.quantity.MassQuantity;
import tunside.http.quantity.VolumeQuantity;
import tunside.safety.Chemical;
import tunside.safety.HazardStatements;
import tunside.safety.SignalWord;

/** The words of an answer: advice, steps and label, from the numbers that the answer shows. */
record DilutionText(
        AcidDilutionPlan plan,
        DilutionAmount acid,
        DilutionAmount water,
        DilutionAmount makes,
        List<DilutionStage> stages,
        DilutionSolution made,
        DilutionSolution inHand) {

    /** Room to stir in. */
    private static final double VESSEL_FACTOR = 1.3;

    String advice() {
        if (plan.staged()) {
            if (stages.size() == 1) {
                return "Let the water cool below %s degC first. Then put %s of it into the vessel and pour %s of %s into it, slowly, stirring."
                        .formatted(
                                Rounded.text(AcidDilutionLimits.cooledToCelsius()), text(water), text(acid), strong());
            }
            String stop = plan.nearBoilingInOneGo() ? "In one go it would boil and spit acid. " : "";
            return "%sMake it in %s stages with cooling between: %s of cold water first, then %s of %s, a stage at a time, slowly, stirring."
                    .formatted(stop, stages.size(), text(water), text(acid), strong());
        }
        return plan.dilution().strong().solid()
                ? "Stir %s of %s into %s of water until it is clear.".formatted(text(acid), strong(), text(water))
                : "Put %s of cold water into the vessel, then pour %s of %s into it, slowly, stirring. Never water into acid."
                        .formatted(text(water), text(acid), strong());
    }

    List<DilutionStep> steps() {
        List<DilutionStep> steps = new ArrayList<>();
        for (DilutionWords words : DilutionWords.of("step", occasions())) {
            if (words.when().equals("each-stage")) {
                for (int i = 0; i < stages.size(); i++) {
                    steps.add(step(steps.size(), words, stage(i)));
                }
            } else {
                steps.add(step(steps.size(), words, values()));
            }
        }
        return steps;
    }

    List<String> label() {
        return DilutionWords.of("label", occasions()).stream()
                .map(words -> words.filled(values()))
                .toList();
    }

    private static DilutionStep step(int before, DilutionWords words, Map<String, String> values) {
        return new DilutionStep(before + 1, words.code(), words.filled(values), words.source());
    }

    private Set<String> occasions() {
        AcidProduct product = plan.dilution().strong();
        Set<String> occasions = new LinkedHashSet<>(Set.of("always"));
        occasions.add(
                inHand.hazards().stream().anyMatch(hazard -> hazard.code().equals("H314"))
                        ? "corrosive"
                        : "not-corrosive");
        if (product.acid().id().equals("hydrochloric") && inHand.signal() == SignalWord.DANGER) {
            occasions.add("fuming");
        }
        if (!product.solid() && plan.conditions().water().celsius() > AcidDilutionLimits.coldWaterCelsius()) {
            occasions.add("warm-water");
        }
        if (product.solid()) {
            occasions.add("powder");
        } else {
            occasions.add("liquid");
            occasions.addAll(plan.staged() ? Set.of("staged", "each-stage") : Set.of("one-go"));
        }
        occasions.add(made.hazards().isEmpty() ? "no-hazard-made" : "hazard-made");
        return occasions;
    }

    private Map<String, String> values() {
        Map<String, String> values = new LinkedHashMap<>();
        String name = made.name();
        List<String> codes = made.hazards().stream().map(HazardMeaning::code).toList();
        values.put("Acid", name.substring(0, 1).toUpperCase(Locale.ROOT) + name.substring(1));
        values.put("acid", text(acid));
        values.put("water", text(water));
        values.put("made", text(makes));
        values.put("strong", strong());
        values.put("vessel", vessel());
        values.put("cold", Rounded.text(AcidDilutionLimits.coldWaterCelsius()));
        values.put("cooled", Rounded.text(AcidDilutionLimits.cooledToCelsius()));
        values.put("limit", Rounded.text(plan.conditions().warmLimitCelsius()));
        values.put("percent", Rounded.text(made.percent().value()));
        values.put("eNumber", made.eNumber());
        values.put("mol", Rounded.text(requireNonNull(made.molPerL()).value()));
        values.put("eq", Rounded.text(requireNonNull(made.eqPerL()).value()));
        values.put("density", Rounded.text(Rounded.decimals(requireNonNull(made.densityGPerMl()), 3)));
        values.put("signal", made.signal().name());
        values.put("hazards", HazardStatements.sentence(codes));
        values.put("codes", String.join(", ", codes));
        return values;
    }

    private Map<String, String> stage(int index) {
        DilutionStage stage = stages.get(index);
        Map<String, String> values = values();
        values.put("acid", text(stage.acid()));
        values.put("stage", Integer.toString(index + 1));
        values.put("stages", Integer.toString(stages.size()));
        values.put("end", Rounded.text(stage.hottest().value()));
        return values;
    }

    private String strong() {
        return Chemical.of(plan.dilution().strong()).title();
    }

    /** The larger unit from 1 L on, rounded up. */
    private String vessel() {
        double millilitres = VESSEL_FACTOR * requireNonNull(makes.volume()).value();
        return millilitres >= 1000
                ? Rounded.text(Math.ceil(millilitres / 100) / 10) + " L"
                : Rounded.text(10 * Math.ceil(millilitres / 10)) + " mL";
    }

    private static String text(DilutionAmount amount) {
        return amount.volume() == null
                ? text(amount.mass())
                : "%s (%s)".formatted(text(amount.mass()), text(amount.volume()));
    }

    private static String text(MassQuantity mass) {
        return Rounded.text(mass.value()) + " " + mass.unit().symbol();
    }

    private static String text(VolumeQuantity volume) {
        return Rounded.text(volume.value()) + " " + volume.unit().symbol();
    }
}

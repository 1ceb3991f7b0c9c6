package tunside.http.plan;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tunside.chemistry.Acids;
import tunside.http.answer.Checks;
import tunside.http.answer.Rounded;
import tunside.http.dosing.AcidDoseResponse.DilutionFirst;
import tunside.http.plan.MashPlanResponse.PlannedAddition;
import tunside.mash.plan.FirstPart;
import tunside.mash.plan.MashPlan;
import tunside.mash.plan.PlanAnswer;
import tunside.mash.plan.PlanSupply;

/** A plan in sentences. */
final class MashPlanWords {
    private static final double SMALL_MG_PER_L = 1;

    private MashPlanWords() {}

    /** What to do. */
    static String advice(PlanAnswer answer, List<PlannedAddition> additions, Optional<FirstPart> first) {
        String ph = ph(answer.best());
        List<String> sentences = new ArrayList<>();
        switch (answer.result()) {
            case NONE_NEEDED ->
                sentences.add("Add nothing: the mash should land at pH %s as it is, and the ions are as wanted."
                        .formatted(ph));
            case PLAN -> sentences.add("This plan should land at pH %s.".formatted(ph));
            case NEAREST_REACHABLE ->
                sentences.add(
                        additions.isEmpty()
                                ? "Not all that is wanted can be met, and nothing at hand brings it nearer: the mash should land"
                                        .concat(" at pH %s.".formatted(ph))
                                : "Not all that is wanted can be met. This comes nearest and should land at pH %s."
                                        .formatted(ph));
        }
        additions.forEach(addition -> sentences.add(sentence(addition)));
        first.filter(part -> part.amount() < answer.best().amountOf(part.supply()))
                .ifPresent(part -> sentences.add(first(part)));
        if (!answer.obstacles().isEmpty()) {
            sentences.add(Checks.of(answer.obstacles().get(0).limit()).message());
        }
        return String.join(" ", sentences);
    }

    private static String first(FirstPart part) {
        PlanSupply supply = part.supply();
        if (part.amount() == 0) {
            return "Of the %s add nothing before you have measured: the prediction is not sure enough."
                    .formatted(supply.name());
        }
        boolean liquid =
                supply instanceof PlanSupply.OfAcid acid && !acid.product().solid();
        return "Of the %s add only %s %s at first, measure a cooled sample, and ask for the rest."
                .formatted(supply.name(), shown(part.amount(), 4), liquid ? "mL" : "g");
    }

    private static String ph(MashPlan plan) {
        return String.format(Locale.ROOT, "%.2f", plan.prediction().ph());
    }

    private static String sentence(PlannedAddition addition) {
        return switch (addition.kind()) {
            case DILUTING_WATER ->
                "Take %s L of your liquor and %s L of diluting water."
                        .formatted(
                                Rounded.text(
                                        requireNonNull(addition.ownLiquor()).value()),
                                Rounded.text(requireNonNull(addition.volume()).value()));
            case ACIDULATED_MALT ->
                "Add %s kg of acidulated malt to the grist."
                        .formatted(Rounded.text(requireNonNull(addition.mass()).value()));
            case SALT, BASE ->
                "Stir in %s g of %s."
                        .formatted(Rounded.text(requireNonNull(addition.mass()).value()), addition.name());
            case ACID ->
                dilution(addition.diluteFirst())
                        + "Stir in %s of %s, %s %%w/w."
                                .formatted(
                                        addition.volume() == null
                                                ? Rounded.text(requireNonNull(addition.mass())
                                                                .value()) + " g"
                                                : Rounded.text(addition.volume().value()) + " mL",
                                        addition.name(),
                                        Rounded.text(requireNonNull(addition.strength())
                                                .value()));
        };
    }

    private static String dilution(@Nullable DilutionFirst dilution) {
        return dilution == null
                ? ""
                : "First pour %s g of the acid into %s g of cold water. "
                        .formatted(
                                Rounded.text(dilution.acid().value()),
                                Rounded.text(dilution.water().value()));
    }

    /** What an alternative does otherwise. */
    static String difference(MashPlan best, MashPlan other) {
        List<String> parts = new ArrayList<>();
        parts.add("%s instead of %s".formatted(names(other.setters()), names(best.setters())));
        parts.add(count(other.additions().size() - best.additions().size(), "addition"));
        parts.add(ph(other).equals(ph(best)) ? "the same pH" : "pH %s instead of %s".formatted(ph(other), ph(best)));
        String lactate = Acids.get("lactic").anion();
        double more = other.mgPerL(lactate) - best.mgPerL(lactate);
        if (Math.abs(more) >= SMALL_MG_PER_L) {
            parts.add("%s mg/L %s lactate".formatted(shown(Math.abs(more), 0), more > 0 ? "more" : "less"));
        }
        if (other.score().meetsAll() != best.score().meetsAll()) {
            parts.add(other.score().meetsAll() ? "meets all that is wanted" : "does not meet all that is wanted");
        }
        String sentence = String.join("; ", parts);
        return Character.toUpperCase(sentence.charAt(0)) + sentence.substring(1) + ".";
    }

    private static String names(List<PlanSupply> supplies) {
        return supplies.isEmpty()
                ? "no acid or base"
                : String.join(" and ", supplies.stream().map(PlanSupply::name).toList());
    }

    private static String count(int more, String what) {
        if (more == 0) {
            return "as many additions";
        }
        int many = Math.abs(more);
        return "%s %s%s %s".formatted(many, what, many == 1 ? "" : "s", more > 0 ? "more" : "fewer");
    }

    private static String shown(double value, int decimals) {
        return Rounded.text(Rounded.decimals(value, decimals));
    }
}

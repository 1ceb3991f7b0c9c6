package tunside.http.picture;

import java.util.ArrayList;
import java.util.List;
import tunside.finding.Outcome;
import tunside.http.answer.Basis;
import tunside.http.answer.Check;
import tunside.http.answer.SafetyAdvice;
import tunside.http.picture.Picture.Paragraph;

/** What stands below a picture: a picture travels without its answer, so what must not be missed goes along. */
final class Caption {
    private static final int MOST_CHECKS = 4;
    private static final String DILUTION_ORDER = "acid.into-water";

    private Caption() {}

    /** The checks that did not pass, worst first; the safety notes that matter most; the model. */
    static List<Paragraph> of(List<Check> checks, List<SafetyAdvice> safety, Basis basis) {
        List<Paragraph> caption = new ArrayList<>();
        List<Check> serious = new ArrayList<>();
        for (Outcome outcome : List.of(Outcome.STOP, Outcome.CAUTION)) {
            checks.stream().filter(check -> check.outcome() == outcome).forEach(serious::add);
        }
        for (Check check : serious.subList(0, Math.min(MOST_CHECKS, serious.size()))) {
            caption.add(
                    new Paragraph((check.outcome() == Outcome.STOP ? "STOP. " : "Caution. ") + check.message(), true));
        }
        if (serious.size() > MOST_CHECKS) {
            caption.add(new Paragraph(
                    "%s more checks say caution or stop: read them in the answer."
                            .formatted(serious.size() - MOST_CHECKS),
                    true));
        }
        for (int i = 0; i < safety.size(); i++) {
            SafetyAdvice note = safety.get(i);
            if (i == 0 || i == safety.size() - 1 || note.code().equals(DILUTION_ORDER)) {
                caption.add(new Paragraph("Safety. " + note.message(), false));
            }
        }
        caption.add(new Paragraph(
                "The answer as JSON holds all %s safety notes and %s checks. Tunside %s, model %s."
                        .formatted(safety.size(), checks.size(), basis.version(), basis.model()),
                false));
        return caption;
    }

    /** The caption in one paragraph. */
    static String inWords(List<Paragraph> caption) {
        return String.join(" ", caption.stream().map(Paragraph::text).toList());
    }
}

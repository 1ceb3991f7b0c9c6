package tunside.safety;

import java.util.List;

/**
 * One safety note.
 *
 * @param code as {@code safety-notes.csv} lists it
 * @param message what to do, and why
 * @param appliesTo a substance with its strength, or a step of the work
 * @param hazards hazard statement codes, where it is about a substance
 * @param source id of the publication
 */
public record SafetyNote(String code, String message, String appliesTo, List<String> hazards, String source) {
    public SafetyNote {
        hazards = List.copyOf(hazards);
    }
}

package tunside.water;

import java.util.List;
import tunside.finding.Finding;

/**
 * What one treatment did.
 *
 * @param kind in words: salt, acid, boiling, liming
 * @param subject what was added; empty for boiling
 * @param grams that were added
 * @param water after it
 * @param calciumCarbonateMolPerKg calcite that dropped, or of added chalk that stayed undissolved
 * @param findings about it
 */
public record TreatmentStep(
        String kind,
        String subject,
        double grams,
        Water water,
        double calciumCarbonateMolPerKg,
        List<Finding> findings) {
    public TreatmentStep {
        findings = List.copyOf(findings);
    }
}

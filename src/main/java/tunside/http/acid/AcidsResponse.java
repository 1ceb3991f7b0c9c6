package tunside.http.acid;

import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import tunside.chemistry.Acid;
import tunside.chemistry.Acids;
import tunside.http.answer.Answer;
import tunside.http.answer.Basis;
import tunside.http.answer.Check;
import tunside.http.answer.Checks;
import tunside.http.answer.Rounded;
import tunside.http.answer.Safety;
import tunside.http.answer.SafetyAdvice;
import tunside.quantity.Temperature;

/** The answer of {@code GET /v1/acids}. */
@Schema(description = "The acids in the frame of every answer.")
public record AcidsResponse(
        @Schema(description = "The acids.", maxItems = 50) List<AcidRow> result,

        @Schema(description = "The input checks that ran.", maxItems = 500)
        List<Check> checks,

        @Schema(description = "The safety notes that apply.", maxItems = 60)
        List<SafetyAdvice> safety,

        @Schema(description = "What the answer rests on.") Basis basis)
        implements Answer {

    /** One acid. */
    @Schema(description = "One acid.")
    public record AcidRow(
            @Schema(description = "As requests name it.", examples = "lactic", maxLength = 40)
            String acid,

            @Schema(description = "In words.", maxLength = 80)
            String name,

            @Schema(description = "Molar mass, g/mol.", minimum = "20", maximum = "400")
            double molarMassGPerMol,

            @Schema(description = "Protons of the formula, as eq/L counts them.", minimum = "1", maximum = "3")
            int protons,

            @Schema(
                    description = "Protons that a mole gives at pH 5.4 and 25 degC, activities left out.",
                    minimum = "0",
                    maximum = "3")
            double protonsAtPh54,

            @Schema(description = "Dissociation constants pK at 25 degC; none for a strong acid.", maxItems = 3)
            List<@DecimalMin("-10") @DecimalMax("20") Double> pKs,

            @Schema(description = "Its anion.", maxLength = 40)
            String anion,

            @Schema(description = "European food additive number.", examples = "E270", maxLength = 10)
            String eNumber,

            @Schema(description = "Source id.", maxLength = 60)
            String source) {}

    static AcidsResponse current() {
        return new AcidsResponse(
                Acids.all().values().stream().map(AcidsResponse::row).toList(),
                Checks.of(List.of()),
                Safety.general(),
                Basis.of("acids", List.of(), List.of("IUPAC-WEIGHTS", "ROBINSON-STOKES", "EU-ADDITIVES")));
    }

    private static AcidRow row(Acid acid) {
        Temperature room = new Temperature(25);
        List<Double> constants = acid.system().steps().stream()
                .map(step -> Rounded.decimals(step.pK(room), 2))
                .toList();
        return new AcidRow(
                acid.id(),
                acid.name(),
                acid.molarMassGPerMol(),
                acid.protons(),
                Rounded.decimals(-acid.system().meanCharge(5.4, room), 2),
                constants,
                acid.anion(),
                acid.eNumber(),
                acid.source());
    }
}

package tunside.http.salt;

import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import tunside.chemistry.Ion;
import tunside.chemistry.Salt;
import tunside.chemistry.Salts;
import tunside.http.answer.Answer;
import tunside.http.answer.Basis;
import tunside.http.answer.Check;
import tunside.http.answer.Checks;
import tunside.http.answer.Rounded;
import tunside.http.answer.Safety;
import tunside.http.answer.SafetyAdvice;

/** The answer of {@code GET /v1/salts}. */
@Schema(description = "The salts and bases in the frame of every answer.")
public record SaltsResponse(
        @Schema(description = "The salts and bases.", maxItems = 50)
        List<SaltRow> result,

        @Schema(description = "The input checks that ran.", maxItems = 500)
        List<Check> checks,

        @Schema(description = "The safety notes that apply.", maxItems = 60)
        List<SafetyAdvice> safety,

        @Schema(description = "What the answer rests on.") Basis basis)
        implements Answer {

    /** One salt or base. */
    @Schema(description = "One salt or base.")
    public record SaltRow(
            @Schema(description = "As requests name it.", examples = "gypsum", maxLength = 40)
            String salt,

            @Schema(description = "In words.", maxLength = 80)
            String name,

            @Schema(description = "Formula with crystal water.", maxLength = 40)
            String formula,

            @Schema(description = "Molar mass, g/mol.", minimum = "20", maximum = "400")
            double molarMassGPerMol,

            @Schema(description = "Ions of one gram.", maxItems = 8)
            List<SaltIon> ions,

            @Schema(description = "Alkalinity of one gram, mEq.", minimum = "0", maximum = "30")
            double alkalinityMeqPerG,

            @Schema(description = "How well it dissolves.", maxLength = 160)
            String solubility,

            @Schema(description = "Source id.", maxLength = 60)
            String source) {}

    /** One ion of a salt. */
    @Schema(description = "One ion of a salt.")
    public record SaltIon(
            @Schema(description = "Its symbol.", examples = "Ca", maxLength = 5)
            String ion,

            @Schema(description = "mg of it in one gram.", minimum = "0", maximum = "1000")
            double mgPerG) {}

    static SaltsResponse current() {
        return new SaltsResponse(
                Salts.all().values().stream().map(SaltsResponse::row).toList(),
                Checks.of(List.of()),
                Safety.general(),
                Basis.of("salts", List.of(), List.of("IUPAC-WEIGHTS", "SALT-SOLUBILITIES")));
    }

    private static SaltRow row(Salt salt) {
        return new SaltRow(
                salt.id(),
                salt.name(),
                salt.formula(),
                salt.molarMassGPerMol(),
                salt.ions().entrySet().stream()
                        .map(entry -> ion(salt, entry.getKey()))
                        .toList(),
                Rounded.decimals(salt.alkalinityMeqPerGram(), 3),
                salt.solubility(),
                salt.source());
    }

    private static SaltIon ion(Salt salt, Ion ion) {
        return new SaltIon(ion.symbol(), Rounded.decimals(1000 * salt.perGram().ion(ion) * ion.molarMassGPerMol(), 1));
    }
}

package tunside.http.dosing;

import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import tunside.http.answer.Basis;
import tunside.http.answer.Check;
import tunside.http.answer.SafetyAdvice;
import tunside.http.quantity.MassQuantity;
import tunside.http.quantity.StrengthQuantity;
import tunside.http.quantity.VolumeQuantity;

/** The answer of {@code POST /v1/acid-doses}. */
@Schema(description = "What to add now, in the frame of every answer.")
public record AcidDoseResponse(
        @Schema(description = "The dose.") AcidDose result,

        @Schema(description = "The input checks that ran.", maxItems = 500)
        List<Check> checks,

        @Schema(description = "The safety notes that apply.", maxItems = 60)
        List<SafetyAdvice> safety,

        @Schema(description = "What the answer rests on.") Basis basis) {

    /** The dose. */
    @Schema(description = "The dose; members that do not belong to the outcome are left out.")
    public record AcidDose(
            @Schema(
                    description =
                            "dose: add acid. none-needed: the pH is in the range. out-of-reach: this acid does not reach"
                                    + " it. raise-instead: the pH is below the range.")
            DoseResult outcome,

            @Schema(description = "In one sentence, what to do.", maxLength = 400)
            String advice,

            @Schema(description = "What is believed of the pH now, after every reading.")
            PhBelief now,

            @Schema(description = "The acid as it is dosed.")
            DosedAcid dosedAcid,

            @Schema(description = "For strong mineral acid: the dilution to make first.", nullable = true)
            DilutionFirst diluteFirst,

            @Schema(description = "All that it may take from now on.", nullable = true)
            TotalDose total,

            @Schema(description = "Add this now, stir, wait, measure.", nullable = true)
            Stage addNow,

            @Schema(description = "This and the later stages, if every reading comes as expected.", maxItems = 6)
            List<Stage> stages,

            @Schema(description = "What the history taught about the buffering.", nullable = true)
            LearntBuffering learnt,

            @Schema(description = "What the whole dose leaves in the liquor.", nullable = true)
            AnionAdded anion) {}

    /** A pH as believed. */
    @Schema(description = "A pH as believed: mean, standard uncertainty.")
    public record PhBelief(
            @Schema(description = "Mean.", minimum = "0", maximum = "14")
            double ph,

            @Schema(description = "Standard uncertainty.", minimum = "0", maximum = "5")
            double standardUncertainty) {}

    /** The acid that the amounts count. */
    @Schema(description = "The acid that the amounts count.")
    public record DosedAcid(
            @Schema(description = "Acid id.", maxLength = 40)
            String acid,

            @Schema(description = "Strength as it is dosed.")
            StrengthQuantity strength,

            @Schema(description = "Density at 20 degC in g/mL.", minimum = "0.9", maximum = "3")
            double densityGPerMl,

            @Schema(description = "Acid that acts, mmol per gram.", minimum = "0", maximum = "30")
            double actingMmolPerGram) {}

    /** The dilution to make before anything is dosed. */
    @Schema(
            description =
                    "A dilution to make first: enough for the whole dose. Acid into water, slowly, never water into acid.")
    public record DilutionFirst(
            @Schema(description = "Water to have ready.") MassQuantity water,

            @Schema(description = "Acid as bought, to pour into that water.")
            MassQuantity acid,

            @Schema(description = "The same by volume at 20 degC.")
            VolumeQuantity acidVolume,

            @Schema(description = "Volume of the diluted acid, cooled to 20 degC.")
            VolumeQuantity makes,

            @Schema(description = "Its strength.") StrengthQuantity strength) {}

    /** All acid from now on. */
    @Schema(description = "All acid from now on: the middle, and a 90 % interval of what it may take.")
    public record TotalDose(
            @Schema(description = "By volume at 20 degC; absent for a powder.", nullable = true)
            VolumeQuantity volume,

            @Schema(description = "By mass.") MassQuantity mass,
            @Schema(description = "5 % quantile, by mass.") MassQuantity low90,
            @Schema(description = "95 % quantile, by mass.") MassQuantity high90) {}

    /** One addition. */
    @Schema(description = "One addition, and the pH to expect after it.")
    public record Stage(
            @Schema(description = "By volume at 20 degC; absent for a powder.", nullable = true)
            VolumeQuantity volume,

            @Schema(description = "By mass.") MassQuantity mass,

            @Schema(description = "Expected pH afterwards.", minimum = "0", maximum = "14")
            double expectedPh,

            @Schema(description = "Lower end of its 90 % interval.", minimum = "-1", maximum = "15")
            double low90,

            @Schema(description = "Upper end.", minimum = "-1", maximum = "15")
            double high90,

            @Schema(description = "Probability of ending below the range.", minimum = "0", maximum = "1")
            double overshootProbability) {}

    /** What was learnt. */
    @Schema(
            description =
                    "The buffering (for a liquor: the alkalinity) against what was expected of it before any acid.")
    public record LearntBuffering(
            @Schema(description = "Factor on the expected one.", minimum = "0", maximum = "100")
            double factor,

            @Schema(description = "5 % quantile of the factor.", minimum = "0", maximum = "100")
            double low90,

            @Schema(description = "95 % quantile.", minimum = "0", maximum = "100")
            double high90,

            @Schema(
                    description = "Expected buffering of the whole mash, mEq per pH; absent for a liquor.",
                    nullable = true,
                    minimum = "0",
                    maximum = "1000000")
            Double expectedMeqPerPh) {}

    /** The anion that the acid brings. */
    @Schema(description = "The anion that the whole dose brings into the liquor, against what may be tasted.")
    public record AnionAdded(
            @Schema(description = "Which.", maxLength = 40) String anion,

            @Schema(description = "In mg/L of the liquor.", minimum = "0", maximum = "100000")
            double mgPerL,

            @Schema(
                    description = "Threshold or usual limit in mg/L, where one is known.",
                    nullable = true,
                    minimum = "0",
                    maximum = "100000")
            Double thresholdMgPerL) {}
}

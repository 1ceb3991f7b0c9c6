package tunside.http.calibration;

import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;
import tunside.electrode.Cause;
import tunside.electrode.Verdict;
import tunside.http.answer.Answer;
import tunside.http.answer.Basis;
import tunside.http.answer.Check;
import tunside.http.answer.SafetyAdvice;
import tunside.http.json.ContractNames;
import tunside.http.quantity.PotentialQuantity;
import tunside.http.quantity.TemperatureQuantity;

/** The answer of {@code POST /v1/calibration-evaluations}. */
@Schema(description = "Whether the electrode may be trusted, why, and what to do.")
public record CalibrationEvaluationResponse(
        @Schema(description = "The judgement.") CalibrationEvaluationResult result,

        @Schema(description = "The input checks that ran.", maxItems = 500)
        List<Check> checks,

        @Schema(description = "The safety notes that apply.", maxItems = 60)
        List<SafetyAdvice> safety,

        @Schema(description = "What the answer rests on.") Basis basis)
        implements Answer {
    @Override
    public String ending() {
        return ContractNames.of(result.verdict());
    }

    /** The judgement. */
    @Schema(description = "The judgement of an electrode.")
    public record CalibrationEvaluationResult(
            @Schema(
                    description =
                            "fit: use it. fit-with-care: use it with the reasons in mind. unfit: do not dose on its"
                                    + " readings.")
            Verdict verdict,

            @Schema(description = "The checks that keep the verdict from being better.", maxItems = 100)
            List<Check> reasons,

            @Schema(description = "Mean temperature of the buffers, for which line and slope hold.")
            TemperatureQuantity temperature,

            @Schema(
                    description = "The slope; for displayed pH relative to the meter's stored calibration, which then"
                            + " counts as ideal.")
            ElectrodeSlope slope,

            @Schema(description = "Potential at pH 7; for displayed pH relative to the meter's stored calibration.")
            PotentialQuantity offset,

            @Schema(description = "Standard uncertainty of the offset.")
            PotentialQuantity offsetUncertainty,

            @Schema(
                    description = "pH at 0 mV; absent where the line cannot be used.",
                    nullable = true,
                    minimum = "-1000",
                    maximum = "1000")
            @Nullable
            Double zeroPointPh,

            @Schema(
                    description = "Standard uncertainty of the zero point.",
                    nullable = true,
                    minimum = "0",
                    maximum = "1000")
            @Nullable
            Double zeroPointUncertainty,

            @Schema(description = "The fitted line.") CalibrationLineFit line,

            @Schema(description = "What each buffer is taken to be and how far it is off the line.", maxItems = 16)
            List<BufferResidual> readings,

            @Schema(description = "Slopes between neighbouring buffers, by rising pH.", maxItems = 15)
            List<SegmentSlopeRow> segments,

            @Schema(description = "What a reading at the expected pH is worth.")
            ExpectedReading expected,

            @Schema(description = "Weight of the picture that nothing is wrong, 0 to 1.", minimum = "0", maximum = "1")
            Double soundWeight,

            @Schema(
                    description =
                            "Suspected causes, each tried on the readings, the likeliest first; those with a weight of"
                                    + " 0.01 or more.",
                    maxItems = 20)
            List<SuspectedCauseRow> suspectedCauses,

            @Schema(description = "What to do next, the most urgent first.", maxItems = 20)
            List<NextStepRow> nextSteps,

            @Schema(description = "What these readings cannot tell.", maxItems = 10)
            List<String> unknown,

            @Schema(description = "Send this with later readings; absent where no line can be used.", nullable = true)
            @Nullable
            CalibrationDocument calibration) {}

    /** The slope. */
    @Schema(description = "The slope of the line and its share of the ideal one.")
    public record ElectrodeSlope(
            @Schema(
                    description = "Loss of potential per pH unit, mV; negative where the potential rises with the pH.",
                    minimum = "-1000",
                    maximum = "1000")
            Double mvPerPh,

            @Schema(description = "Its standard uncertainty.", minimum = "0", maximum = "1000")
            Double mvPerPhUncertainty,

            @Schema(description = "Ideal slope at the temperature, mV per pH.", minimum = "0", maximum = "100")
            Double idealMvPerPh,

            @Schema(description = "Slope as % of the ideal one.", minimum = "-2000", maximum = "2000")
            Double percentOfIdeal,

            @Schema(description = "Its standard uncertainty, %.", minimum = "0", maximum = "2000")
            Double percentUncertainty) {}

    /** The line. */
    @Schema(description = "The weighted straight line of potential against pH less 7, with its covariance.")
    public record CalibrationLineFit(
            @Schema(description = "Variance of the slope, (mV/pH)^2.", minimum = "0", maximum = "1e9")
            Double slopeVariance,

            @Schema(description = "Variance of the offset, mV^2.", minimum = "0", maximum = "1e9")
            Double offsetVariance,

            @Schema(description = "Covariance of both, mV^2 per pH.", minimum = "-1e9", maximum = "1e9")
            Double slopeOffsetCovariance,

            @Schema(description = "Sum of squared weighted residuals.", minimum = "0", maximum = "1e12")
            Double chiSquared,

            @Schema(
                    description = "What it may be by chance, 95 %; absent for two readings.",
                    nullable = true,
                    minimum = "0",
                    maximum = "100")
            @Nullable
            Double chiSquaredLimit,

            @Schema(description = "Readings less two.", minimum = "0", maximum = "14")
            Integer degreesOfFreedom,

            @Schema(description = "Whether the readings scatter no more than their uncertainties allow.")
            Boolean consistent) {}

    /** A reading against the line. */
    @Schema(description = "What a buffer is taken to be, and how far its reading is off the line.")
    public record BufferResidual(
            @Schema(description = "The buffer's id, or its stated pH.", maxLength = 60)
            String buffer,

            @Schema(description = "pH it is taken to have, water and age included.", minimum = "-1", maximum = "15")
            Double bufferPh,

            @Schema(description = "Standard uncertainty of that.", minimum = "0", maximum = "2")
            Double bufferUncertainty,

            @Schema(description = "Change of pH by the water used, included.", minimum = "-1", maximum = "1")
            Double changeByWater,

            @Schema(description = "Change of pH by age, included.", minimum = "-1", maximum = "1")
            Double changeByAge,

            @Schema(
                    description = "pH on the display; absent for potentials.",
                    nullable = true,
                    minimum = "-2",
                    maximum = "16")
            @Nullable
            Double displayed,

            @Schema(
                    description = "Displayed pH less that of the buffer; absent for potentials.",
                    nullable = true,
                    minimum = "-20",
                    maximum = "20")
            @Nullable
            Double displayError,

            @Schema(description = "Potential of the electrode, or behind the display.")
            PotentialQuantity potential,

            @Schema(description = "Potential less that of the line.")
            PotentialQuantity residual,

            @Schema(
                    description =
                            "What the line reads in this buffer less what the buffer is; absent where the line cannot"
                                    + " be used.",
                    nullable = true,
                    minimum = "-1000",
                    maximum = "1000")
            @Nullable
            Double errorPh) {}

    /** A segment. */
    @Schema(description = "The slope between two neighbouring buffers.")
    public record SegmentSlopeRow(
            @Schema(description = "Lower buffer.", minimum = "-1", maximum = "15")
            Double fromPh,

            @Schema(description = "Higher buffer.", minimum = "-1", maximum = "15")
            Double toPh,

            @Schema(description = "Slope, mV per pH.", minimum = "-10000", maximum = "10000")
            Double mvPerPh,

            @Schema(description = "Slope as % of the ideal one.", minimum = "-20000", maximum = "20000")
            Double percentOfIdeal,

            @Schema(description = "Its standard uncertainty, %.", minimum = "0", maximum = "20000")
            Double percentUncertainty,

            @Schema(description = "Whether it differs from the segment below by more than chance.")
            Boolean differsFromPrevious) {}

    /** A reading to come. */
    @Schema(description = "What a reading at the expected pH and the buffers' temperature is worth.")
    public record ExpectedReading(
            @Schema(description = "The expected pH.", minimum = "0", maximum = "14")
            Double ph,

            @Schema(description = "Whether buffers lie on both sides of it.")
            Boolean bracketed,

            @Schema(
                    description = "Standard uncertainty of a reading there; absent where the line cannot be used.",
                    nullable = true,
                    minimum = "0",
                    maximum = "1000")
            @Nullable
            Double standardUncertainty,

            @Schema(
                    description = "Calibration line and potential alone.",
                    nullable = true,
                    minimum = "0",
                    maximum = "1000")
            @Nullable
            Double fromLineAndPotential,

            @Schema(description = "From the temperature.", nullable = true, minimum = "0", maximum = "1000") @Nullable
            Double fromTemperature,

            @Schema(
                    description = "From the liquid junction between buffers and sample.",
                    nullable = true,
                    minimum = "0",
                    maximum = "1000")
            @Nullable
            Double fromLiquidJunction) {}

    /** A cause. */
    @Schema(description = "A cause that was tried on the readings.")
    public record SuspectedCauseRow(
            @Schema(description = "Which.") Cause cause,

            @Schema(
                    description =
                            "How likely it is among all causes and a sound electrode, 0 to 1; read the order, not the"
                                    + " figure.",
                    minimum = "0",
                    maximum = "1")
            Double weight,

            @Schema(
                    description =
                            "Natural logarithm of how much better it explains the readings than a sound electrode.",
                    minimum = "-1e9",
                    maximum = "1e9")
            Double improvement,

            @Schema(description = "In words.", maxLength = 300)
            String meaning,

            @Schema(
                    description = "What has to be assumed for it to explain the readings, in words; absent for a cause"
                            + " without a parameter.",
                    nullable = true,
                    maxLength = 100)
            @Nullable
            String parameter,

            @Schema(
                    description = "The value that explains the readings.",
                    nullable = true,
                    minimum = "-1000",
                    maximum = "1000")
            @Nullable
            Double value,

            @Schema(description = "Its standard deviation.", nullable = true, minimum = "0", maximum = "1000") @Nullable
            Double valueUncertainty,

            @Schema(description = "Unit of both.", nullable = true, maxLength = 20) @Nullable
            String unit,

            @Schema(description = "JSON Pointers of the readings it touches; empty for all.", maxItems = 16)
            List<String> readings,

            @Schema(description = "What to do about it.", maxLength = 400)
            String nextStep) {}

    /** A step. */
    @Schema(description = "Something to do.")
    public record NextStepRow(
            @Schema(description = "Which step.", examples = "third-buffer", maxLength = 40)
            String step,

            @Schema(description = "What to do.", maxLength = 400)
            String message,

            @Schema(description = "Id of the source.", maxLength = 60)
            String source) {}
}

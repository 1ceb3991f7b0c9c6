package tunside.http.reading;

import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;
import tunside.electrode.TemperatureCompensation;
import tunside.electrode.reading.DoubtCause;
import tunside.electrode.reading.ReadingVerdict;
import tunside.electrode.reading.Settling;
import tunside.http.answer.Answer;
import tunside.http.answer.Basis;
import tunside.http.answer.Check;
import tunside.http.answer.SafetyAdvice;
import tunside.http.json.ContractNames;
import tunside.http.quantity.TemperatureQuantity;
import tunside.http.quantity.TimeQuantity;

/** The answer of {@code POST /v1/ph-readings}. */
@Schema(description = "What a reading means, how sure it is, and what to do.")
public record PhReadingResponse(
        @Schema(description = "The judgement.") PhReadingResult result,

        @Schema(description = "The input checks that ran.", maxItems = 2100)
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
    @Schema(description = "The judgement of a reading.")
    public record PhReadingResult(
            @Schema(
                    description =
                            "in-range, above or below: with a probability of at least 0.9. cannot-tell: the reading"
                                    + " is not sure enough, or the electrode is not to be trusted.")
            ReadingVerdict verdict,

            @Schema(description = "What to do, in this order.", maxItems = 12)
            List<ReadingAdviceRow> advice,

            @Schema(description = "Whether the criterion of settling is met.")
            boolean settled,

            @Schema(description = "How the series settles.") ReadingSettling settling,

            @Schema(description = "pH of the sample at its own temperature, calibration and drift taken care of.")
            SamplePh atSampleTemperature,

            @Schema(description = "The same brought to 20 degC: the pH that brewers mean.")
            SamplePh at20,

            @Schema(description = "What makes the reading uncertain, the largest first.", maxItems = 12)
            List<DoubtShare> budget,

            @Schema(description = "What the meter's temperature compensation means for this reading.")
            ReadingCompensation compensation,

            @Schema(description = "The step from the sample's temperature to 20 degC.")
            SampleTemperatureEffect temperatureEffect,

            @Schema(
                    description = "The pH at the sample's temperature under the other assumption about where the lines"
                            + " of different temperatures cross, less that under the calibration's.",
                    examples = "0.004",
                    minimum = "-30",
                    maximum = "30")
            double isothermalDifference,

            @Schema(description = "Drift of the electrode; absent where no buffer was re-checked.", nullable = true)
            @Nullable
            ElectrodeDrift drift,

            @Schema(description = "The range that the verdict is about, and where the true pH lies.")
            RangeProbability range) {}

    /** One piece of advice. */
    @Schema(description = "One piece of advice.")
    public record ReadingAdviceRow(
            @Schema(description = "Its id.", examples = "wait", maxLength = 40)
            String advice,

            @Schema(description = "What to do.", examples = "The pH is in the range. Add nothing.", maxLength = 300)
            String message,

            @Schema(description = "An id of GET /v1/sources.", examples = "COMMON-PRACTICE", maxLength = 40)
            String source) {}

    /** How the series settles. */
    @Schema(
            description =
                    "How the series settles, all in pH at the temperature of the last reading, before drift is taken off.")
    public record ReadingSettling(
            @Schema(
                    description =
                            "settled: it meets the criterion. settling: a curve is found and it goes on. too-short:"
                                    + " too few readings or too short a time for a curve; the last reading is taken.")
            Settling.State state,

            @Schema(
                    description = "The value that it is heading for.",
                    examples = "5.46",
                    minimum = "-20",
                    maximum = "30")
            double headingFor,

            @Schema(
                    description = "Its standard uncertainty, from scatter and what may be missing.",
                    examples = "0.01",
                    minimum = "0",
                    maximum = "20")
            double standardUncertainty,

            @Schema(description = "Lower end of its 90 % interval.", examples = "5.44", minimum = "-60", maximum = "60")
            double low90,

            @Schema(description = "Upper end of its 90 % interval.", examples = "5.48", minimum = "-60", maximum = "60")
            double high90,

            @Schema(
                    description = "What is still to come after the last reading.",
                    examples = "-0.01",
                    minimum = "-20",
                    maximum = "20")
            double stillToCome,

            @Schema(
                    description = "Change in the time of the criterion before the last reading.",
                    examples = "-0.02",
                    minimum = "-30",
                    maximum = "30")
            double change,

            @Schema(description = "Time constant of the approach; absent where no curve is seen.", nullable = true)
            @Nullable
            TimeQuantity timeConstant,

            @Schema(
                    description = "How long to wait until the criterion is met; absent where nobody can say.",
                    nullable = true)
            @Nullable
            TimeQuantity timeLeft,

            @Schema(
                    description = "Every reading as pH at the temperature of the last, before drift is taken off.",
                    maxItems = 2000)
            List<CoursePoint> course,

            @Schema(description = "Readings left out, by index.", maxItems = 2000)
            List<@Min(0) @Max(1999) Integer> leftOut,

            @Schema(
                    description = "The criterion.",
                    examples = "no more than 0.01 pH in 30 s, and no more than that to come",
                    maxLength = 120)
            String criterion) {}

    /** A reading of the series. */
    @Schema(description = "A reading of the series, and what the curve of the approach says then.")
    public record CoursePoint(
            @Schema(description = "Seconds after the first reading.", examples = "30", minimum = "0", maximum = "1e9")
            double elapsedS,

            @Schema(description = "pH read.", examples = "5.47", minimum = "-20", maximum = "30")
            double ph,

            @Schema(
                    description = "What the curve says then; absent where no curve is seen.",
                    examples = "5.468",
                    nullable = true,
                    minimum = "-60",
                    maximum = "60")
            @Nullable
            Double curvePh) {}

    /** A pH with its uncertainty. */
    @Schema(description = "A pH with its uncertainty.")
    public record SamplePh(
            @Schema(description = "Temperature that it holds for.")
            TemperatureQuantity temperature,

            @Schema(description = "pH.", examples = "5.46", minimum = "-20", maximum = "30")
            double ph,

            @Schema(description = "Standard uncertainty.", examples = "0.03", minimum = "0", maximum = "20")
            double standardUncertainty,

            @Schema(description = "Lower end of the 90 % interval.", examples = "5.41", minimum = "-60", maximum = "60")
            double low90,

            @Schema(description = "Upper end of the 90 % interval.", examples = "5.51", minimum = "-60", maximum = "60")
            double high90) {}

    /** Compensation. */
    @Schema(description = "What the meter's temperature compensation means for this reading.")
    public record ReadingCompensation(
            @Schema(description = "Kind of compensation.") TemperatureCompensation kind,

            @Schema(description = "Temperature that the meter computed with.")
            TemperatureQuantity meterTemperature,

            @Schema(
                    description = "Slope that it computed with, mV per pH.",
                    examples = "59.159",
                    minimum = "0",
                    maximum = "100")
            double usedMvPerPh,

            @Schema(
                    description = "Ideal slope at the sample's temperature, mV per pH.",
                    examples = "58.564",
                    minimum = "0",
                    maximum = "100")
            double sampleMvPerPh,

            @Schema(
                    description = "How far the last display is off for that; not in the result any more.",
                    examples = "-0.02",
                    minimum = "-30",
                    maximum = "30")
            double effect,

            @Schema(description = "In words.", examples = "The meter computes with 25 degC always.", maxLength = 300)
            String meaning) {}

    /** The sample's own change. */
    @Schema(description = "The step from the sample's temperature to 20 degC.")
    public record SampleTemperatureEffect(
            @Schema(
                    description = "Fall of the pH per K of warming that was taken.",
                    examples = "0.0055",
                    minimum = "0",
                    maximum = "0.1")
            double fallPerK,

            @Schema(description = "Its standard uncertainty.", examples = "0.0013", minimum = "0", maximum = "0.1")
            double fallPerKUncertainty,

            @Schema(
                    description = "pH at 20 degC less pH at the sample's temperature.",
                    examples = "0.011",
                    minimum = "-5",
                    maximum = "5")
            double shift,

            @Schema(description = "Its standard uncertainty.", examples = "0.0026", minimum = "0", maximum = "5")
            double shiftUncertainty,

            @Schema(
                    description = "The shift by the smallest published figure; for mash and wort only.",
                    examples = "0.0065",
                    nullable = true,
                    minimum = "-5",
                    maximum = "5")
            @Nullable
            Double smallestPublished,

            @Schema(
                    description = "The shift by the largest published figure; for mash and wort only.",
                    examples = "0.0176",
                    nullable = true,
                    minimum = "-5",
                    maximum = "5")
            @Nullable
            Double largestPublished) {}

    /** One cause of uncertainty. */
    @Schema(description = "One cause of uncertainty.")
    public record DoubtShare(
            @Schema(
                    description = "settling: scatter and what may be missing. calibration: slope and offset. potential:"
                            + " repeatability of the meter. display: what its"
                            + " last digit rounds away. temperature: of the sample. liquid-junction: between sample"
                            + " and reference. isothermal-point: where lines of different temperatures cross. drift:"
                            + " since the calibration. uncalibrated: no or an unfit calibration. temperature-effect:"
                            + " bringing the pH to 20 degC.")
            DoubtCause cause,

            @Schema(
                    description = "Standard uncertainty that it brings at 20 degC, pH; the squares add up.",
                    examples = "0.012",
                    minimum = "0",
                    maximum = "20")
            double standardUncertainty,

            @Schema(
                    description = "Standard uncertainty that it brings at the sample's temperature, pH.",
                    examples = "0.012",
                    minimum = "0",
                    maximum = "20")
            double atSampleTemperature,

            @Schema(
                    description = "Its share of the variance at 20 degC.",
                    examples = "0.4",
                    minimum = "0",
                    maximum = "1")
            double varianceShare) {}

    /** Drift. */
    @Schema(description = "Drift of the electrode between calibration and re-check.")
    public record ElectrodeDrift(
            @Schema(
                    description = "Drift at the reading, taken off.",
                    examples = "0.02",
                    minimum = "-30",
                    maximum = "30")
            double ph,

            @Schema(description = "Its standard uncertainty.", examples = "0.01", minimum = "0", maximum = "30")
            double standardUncertainty,

            @Schema(
                    description = "Largest drift found in a re-check.",
                    examples = "0.03",
                    minimum = "-30",
                    maximum = "30")
            double largest) {}

    /** Range and probabilities. */
    @Schema(description = "The range wanted for a sample of 20 degC, and where the true pH lies.")
    public record RangeProbability(
            @Schema(
                    description = "Lower end; absent where it is open.",
                    examples = "5.2",
                    nullable = true,
                    minimum = "0",
                    maximum = "14")
            @Nullable
            Double lowPh,

            @Schema(
                    description = "Upper end; absent where it is open.",
                    examples = "5.5",
                    nullable = true,
                    minimum = "0",
                    maximum = "14")
            @Nullable
            Double highPh,

            @Schema(
                    description = "Probability that the true pH is in the range.",
                    examples = "0.93",
                    minimum = "0",
                    maximum = "1")
            double inRange,

            @Schema(description = "Probability that it lies below.", examples = "0.01", minimum = "0", maximum = "1")
            double below,

            @Schema(description = "Probability that it lies above.", examples = "0.06", minimum = "0", maximum = "1")
            double above) {}
}

package tunside.http.calibration;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import tunside.electrode.Buffer;
import tunside.electrode.BufferReading;
import tunside.electrode.BufferValue;
import tunside.electrode.CalibratedPh;
import tunside.electrode.CalibrationEvaluation;
import tunside.electrode.CalibrationLine;
import tunside.electrode.Cause;
import tunside.electrode.MeterReadout;
import tunside.electrode.StraightLine;
import tunside.electrode.SuspectedCause;
import tunside.http.answer.Basis;
import tunside.http.answer.Checks;
import tunside.http.answer.LastingList;
import tunside.http.answer.Rounded;
import tunside.http.answer.Safety;
import tunside.http.calibration.CalibrationEvaluationResponse.BufferResidual;
import tunside.http.calibration.CalibrationEvaluationResponse.CalibrationEvaluationResult;
import tunside.http.calibration.CalibrationEvaluationResponse.CalibrationLineFit;
import tunside.http.calibration.CalibrationEvaluationResponse.ElectrodeSlope;
import tunside.http.calibration.CalibrationEvaluationResponse.ExpectedReading;
import tunside.http.calibration.CalibrationEvaluationResponse.NextStepRow;
import tunside.http.calibration.CalibrationEvaluationResponse.SegmentSlopeRow;
import tunside.http.calibration.CalibrationEvaluationResponse.SuspectedCauseRow;
import tunside.http.quantity.PotentialQuantity;
import tunside.http.quantity.TemperatureQuantity;

/** Writes a judgement as the answer states it. */
final class CalibrationEvaluationAnswer {
    private static final double LEAST_WEIGHT = 0.01;
    private static final LastingList<String> ASSUMPTIONS = LastingList.of(List.of(
            "The potential is a straight line against the pH of the buffers, with uncertainty in both.",
            "Buffers at different temperatures are brought to their mean temperature: the slope follows the Nernst"
                    + " slope and the lines of all temperatures cross at pH 7.",
            "A buffer of the tables is off by 0.01 (one standard deviation) unless stated; the shift by water and by"
                    + " age comes from an ion model and common practice.",
            "The suspected causes are weighed with priors from common practice: read the order, not the figure.",
            "A mash or wort lies outside the dilute solutions that pH buffers are defined in: its pH is"
                    + " conventional."));

    private static final List<String> ASSUMPTIONS_FROM_MEMORY = ASSUMPTIONS.with(BuffersResponse.FROM_MEMORY);

    private CalibrationEvaluationAnswer() {}

    static CalibrationEvaluationResponse of(CalibrationEvaluation evaluation) {
        return new CalibrationEvaluationResponse(
                result(evaluation),
                Checks.of(evaluation.findings()),
                Safety.calibration(),
                Basis.of("calibration-line", assumptions(evaluation), sources(evaluation)));
    }

    private static List<String> assumptions(CalibrationEvaluation evaluation) {
        boolean fromMemory = evaluation.session().readings().stream()
                .anyMatch(reading ->
                        reading.cup().buffer().filter(Buffer::fromMemory).isPresent());
        return fromMemory ? ASSUMPTIONS_FROM_MEMORY : ASSUMPTIONS;
    }

    private static CalibrationEvaluationResult result(CalibrationEvaluation evaluation) {
        CalibrationLine line = evaluation.line();
        StraightLine.ReadBack zero = line.usable() ? line.zeroPoint() : null;
        return new CalibrationEvaluationResult(
                evaluation.verdict(),
                evaluation.reasons().stream().map(Checks::of).toList(),
                TemperatureQuantity.celsius(line.temperature().celsius(), 2),
                slope(line),
                PotentialQuantity.millivolts(line.offsetMv(), 2),
                PotentialQuantity.millivolts(line.offsetUncertaintyMv(), 2),
                zero == null ? null : Rounded.decimals(zero.value(), 3),
                zero == null ? null : Rounded.decimals(zero.standardUncertainty(), 3),
                fit(line),
                IntStream.range(0, line.x().size())
                        .mapToObj(i -> residual(evaluation, i))
                        .toList(),
                evaluation.segments().stream()
                        .map(segment -> new SegmentSlopeRow(
                                Rounded.decimals(segment.fromPh(), 3),
                                Rounded.decimals(segment.toPh(), 3),
                                Rounded.decimals(segment.slopeMvPerPh(), 3),
                                Rounded.decimals(segment.percent(), 2),
                                Rounded.decimals(segment.percentUncertainty(), 2),
                                segment.differsFromPrevious()))
                        .toList(),
                expected(evaluation),
                Rounded.decimals(evaluation.soundWeight(), 3),
                evaluation.causes().stream()
                        .filter(cause -> cause.cause() != Cause.SOUND && cause.weight() >= LEAST_WEIGHT)
                        .map(CalibrationEvaluationAnswer::cause)
                        .toList(),
                evaluation.nextSteps().stream()
                        .map(step -> new NextStepRow(step.id(), step.message(), step.source()))
                        .toList(),
                evaluation.unknowns(),
                evaluation.calibration().map(CalibrationDocument::of).orElse(null));
    }

    private static ElectrodeSlope slope(CalibrationLine line) {
        return new ElectrodeSlope(
                Rounded.decimals(line.slopeMvPerPh(), 3),
                Rounded.decimals(Math.sqrt(line.line().slopeVariance()), 3),
                Rounded.decimals(line.idealMvPerPh(), 3),
                Rounded.decimals(line.slopePercent(), 2),
                Rounded.decimals(line.slopePercentUncertainty(), 2));
    }

    private static CalibrationLineFit fit(CalibrationLine line) {
        int freedom = line.line().degreesOfFreedom();
        return new CalibrationLineFit(
                Rounded.significant(line.line().slopeVariance(), 6),
                Rounded.significant(line.line().interceptVariance(), 6),
                Rounded.significant(-line.line().covariance(), 6),
                Rounded.decimals(line.line().chiSquared(), 4),
                freedom == 0 ? null : Rounded.decimals(line.largestChiSquared(), 3),
                freedom,
                line.consistent());
    }

    private static BufferResidual residual(CalibrationEvaluation evaluation, int index) {
        BufferReading reading = evaluation.session().readings().get(index);
        BufferValue buffer = reading.buffer();
        CalibrationLine line = evaluation.line();
        boolean displayed = evaluation.session().readout() != MeterReadout.POTENTIAL;
        return new BufferResidual(
                reading.cup().label(),
                Rounded.decimals(buffer.ph(), 4),
                Rounded.decimals(buffer.standardUncertainty(), 4),
                Rounded.decimals(buffer.changeByWater(), 4),
                Rounded.decimals(buffer.changeByAge(), 4),
                displayed ? Rounded.decimals(evaluation.session().displayedPh(index), 3) : null,
                displayed ? Rounded.decimals(evaluation.session().displayErrorPh(index), 3) : null,
                PotentialQuantity.millivolts(reading.potential().millivolts(), 2),
                PotentialQuantity.millivolts(line.residualMv(index), 2),
                line.usable() ? Rounded.decimals(line.errorPh(index), 4) : null);
    }

    private static ExpectedReading expected(CalibrationEvaluation evaluation) {
        CalibratedPh read = evaluation.expected().orElse(null);
        return new ExpectedReading(
                evaluation.session().expectedPh(),
                evaluation.bracketed(),
                read == null ? null : Rounded.decimals(read.standardUncertainty(), 4),
                read == null ? null : Rounded.decimals(read.fromLineAndPotential(), 4),
                read == null ? null : Rounded.decimals(read.fromTemperature(), 4),
                read == null ? null : Rounded.decimals(read.fromLiquidJunction(), 4));
    }

    private static SuspectedCauseRow cause(SuspectedCause suspected) {
        boolean known = suspected.parameter().isPresent();
        return new SuspectedCauseRow(
                suspected.cause(),
                Rounded.decimals(suspected.weight(), 3),
                Rounded.decimals(suspected.improvement(), 2),
                suspected.cause().meaning(),
                known ? suspected.cause().parameter().orElse(null) : null,
                number(suspected.parameter()),
                number(suspected.parameterUncertainty()),
                known ? suspected.cause().unit().orElse(null) : null,
                suspected.readings().stream().map(i -> "/readings/" + i).toList(),
                suspected.cause().nextStep().message());
    }

    private static @Nullable Double number(OptionalDouble value) {
        return value.isPresent() ? Rounded.decimals(value.getAsDouble(), 2) : null;
    }

    private static List<String> sources(CalibrationEvaluation evaluation) {
        Set<String> sources = new LinkedHashSet<>(List.of("CODATA-2018", "ISO-28037-2010", "GUM-2008"));
        for (BufferReading reading : evaluation.session().readings()) {
            reading.cup().buffer().ifPresent(buffer -> sources.add(buffer.source()));
        }
        evaluation.findings().forEach(finding -> sources.add(Checks.source(finding)));
        evaluation.nextSteps().forEach(step -> sources.add(step.source()));
        sources.add("COMMON-PRACTICE");
        sources.add("DERIVED");
        return List.copyOf(sources);
    }
}

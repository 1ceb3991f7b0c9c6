package tunside.electrode;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import tunside.finding.Finding;
import tunside.finding.Outcome;

/**
 * What a calibration says about an electrode.
 *
 * @param session the readings
 * @param line through them
 * @param segments slopes between neighbouring buffers, by rising pH
 * @param causes every cause that was tried, the likeliest first; {@link Cause#SOUND} among them
 * @param expected what a reading at the expected pH and the line's temperature is worth; empty if the line is unusable
 * @param bracketed whether the buffers lie on both sides of the expected pH
 * @param findings every check, passed or not
 * @param verdict whether the electrode may be trusted with this calibration
 * @param nextSteps what to do, the most urgent first
 * @param unknowns what these readings cannot tell, in words
 */
public record CalibrationEvaluation(
        CalibrationSession session,
        CalibrationLine line,
        List<SegmentSlope> segments,
        List<SuspectedCause> causes,
        Optional<CalibratedPh> expected,
        boolean bracketed,
        List<Finding> findings,
        Verdict verdict,
        List<NextStep> nextSteps,
        List<String> unknowns) {
    public CalibrationEvaluation {
        segments = List.copyOf(segments);
        causes = List.copyOf(causes);
        findings = List.copyOf(findings);
        nextSteps = List.copyOf(nextSteps);
        unknowns = List.copyOf(unknowns);
    }

    /**
     * Judges a session.
     *
     * @throws IllegalArgumentException if the outer buffers are less than {@link CalibrationSession#leastSpanPh} apart
     */
    public static CalibrationEvaluation of(CalibrationSession session) {
        if (!(session.spanPh() >= CalibrationSession.leastSpanPh())) {
            throw new IllegalArgumentException("the buffers must be at least %s pH apart but are %s apart"
                    .formatted(CalibrationSession.leastSpanPh(), session.spanPh()));
        }
        CalibrationLine line = CalibrationLine.of(session);
        List<SegmentSlope> segments = SegmentSlope.of(session, line);
        List<SuspectedCause> causes = CauseRanking.of(session);
        Optional<CalibratedPh> expected = line.usable() ? Optional.of(expected(session, line)) : Optional.empty();
        List<Finding> findings = new CalibrationChecks(session, line, segments, causes, expected).findings();
        Verdict verdict = verdict(findings);
        return new CalibrationEvaluation(
                session,
                line,
                segments,
                causes,
                expected,
                brackets(session),
                findings,
                verdict,
                nextSteps(session, findings, causes, verdict),
                NextStep.unknowns(session.readout()));
    }

    /** The document for later readings; empty if no line can be used at all. */
    public Optional<Calibration> calibration() {
        return line.usable() ? Optional.of(line.calibration(session, verdict)) : Optional.empty();
    }

    /** The findings that keep the verdict from being better. */
    public List<Finding> reasons() {
        return findings.stream()
                .filter(finding -> finding.outcome() == Outcome.CAUTION || finding.outcome() == Outcome.STOP)
                .toList();
    }

    /** The weight of nothing being wrong. */
    public double soundWeight() {
        double weight = 0;
        for (SuspectedCause suspected : causes) {
            weight += suspected.cause() == Cause.SOUND ? suspected.weight() : 0;
        }
        return weight;
    }

    static boolean brackets(CalibrationSession session) {
        return session.expectedPh() >= session.lowestPh() && session.expectedPh() <= session.highestPh();
    }

    private static CalibratedPh expected(CalibrationSession session, CalibrationLine line) {
        Calibration calibration = line.calibration(session, Verdict.FIT);
        return calibration.read(
                calibration.potential(session.expectedPh(), line.temperature()),
                line.temperature(),
                session.uncertainty());
    }

    private static Verdict verdict(List<Finding> findings) {
        Verdict verdict = Verdict.FIT;
        for (Finding finding : findings) {
            verdict = verdict.or(
                    switch (finding.outcome()) {
                        case PASS, NOTE -> Verdict.FIT;
                        case CAUTION -> Verdict.FIT_WITH_CARE;
                        case STOP -> Verdict.UNFIT;
                    });
        }
        return verdict;
    }

    private static List<NextStep> nextSteps(
            CalibrationSession session, List<Finding> findings, List<SuspectedCause> causes, Verdict verdict) {
        Set<String> steps = new LinkedHashSet<>();
        boolean troubled = verdict != Verdict.FIT;
        for (SuspectedCause cause : causes) {
            if (cause.cause() != Cause.SOUND
                    && cause.weight() >= ElectrodeLimits.of(troubled ? "suspicion-worth-a-word" : "suspicion-strong")) {
                steps.add(cause.cause().nextStep().id());
            }
        }
        if (verdict == Verdict.UNFIT && steps.isEmpty()) {
            steps.add("repeat-fresh");
        }
        for (Finding finding : findings) {
            if (finding.outcome() != Outcome.PASS) {
                step(finding, session, verdict).ifPresent(steps::add);
            }
        }
        if (verdict != Verdict.UNFIT) {
            steps.add("use");
        }
        steps.add("storage");
        List<NextStep> all = new ArrayList<>();
        steps.forEach(step -> all.add(NextStep.of(step)));
        return all;
    }

    private static Optional<String> step(Finding finding, CalibrationSession session, Verdict verdict) {
        String meter = session.readout() == MeterReadout.AS_FOUND ? "adjust-meter" : "reset-meter";
        boolean stop = finding.outcome() == Outcome.STOP;
        return switch (finding.code()) {
            case "electrode.slope" ->
                stop && finding.observed().orElseThrow() < ElectrodeLimits.of("slope-recondition-low")
                        ? Optional.of("replace-if-stays")
                        : Optional.empty();
            case "electrode.offset" -> Optional.of("clean-reference");
            case "electrode.bracketing", "electrode.buffer-distance" -> Optional.of("bracket");
            case "electrode.independent-buffer" ->
                verdict == Verdict.UNFIT ? Optional.empty() : Optional.of("third-buffer");
            case "electrode.sensitivity", "electrode.sensitivity-high", "electrode.display-offset" ->
                Optional.of(meter);
            case "electrode.settling" -> Optional.of("wait-longer");
            case "electrode.compensation" -> Optional.of("set-temperature");
            case "electrode.temperature-spread" -> Optional.of("measure-temperature");
            case "electrode.buffer-water" -> Optional.of("weigh-water");
            case "electrode.agreement", "electrode.repeat", "electrode.buffer-age" -> Optional.of("repeat-fresh");
            case "electrode.display" -> Optional.of(meter);
            default -> Optional.empty();
        };
    }
}

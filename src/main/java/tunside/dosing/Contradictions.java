package tunside.dosing;

import java.util.ArrayList;
import java.util.List;
import tunside.finding.Finding;
import tunside.finding.Outcome;

/** Readings that the model cannot explain: acid went in and the pH rose, or it fell far too much or too little. */
public final class Contradictions {
    /** A fall this many times the expected one is a contradiction. */
    private static final double TIMES = 3;

    /** What is within this many standard deviations is no contradiction. */
    private static final double DEVIATIONS = 2;

    /** What is beyond this many standard deviations is one, whatever the proportion. */
    private static final double DEVIATIONS_ALONE = 4;

    private Contradictions() {}

    /** Holds each reading of a history against what the one before it and the acid between them let expect. */
    public static List<Finding> of(Belief first, List<DoseEvent> history) {
        List<Finding> findings = new ArrayList<>();
        Belief belief = first;
        double phBefore = first.ph();
        double acid = 0;
        for (int i = 0; i < history.size(); i++) {
            DoseEvent event = history.get(i);
            if (event instanceof DoseEvent.Added added) {
                acid += added.millimoles();
            } else if (event instanceof DoseEvent.Reading reading && acid > 0) {
                findings.add(judge(belief, reading, phBefore).under("/" + i));
                acid = 0;
            }
            belief = belief.after(event);
            if (event instanceof DoseEvent.Reading) {
                phBefore = belief.ph();
            }
        }
        return findings;
    }

    private static Finding judge(Belief expected, DoseEvent.Reading reading, double phBefore) {
        double expectedFall = phBefore - expected.ph();
        double fall = phBefore - reading.ph();
        double deviation = Math.hypot(expected.standardUncertainty(), reading.standardUncertainty());
        double beyond = fall - expectedFall;
        if (fall < 0 && -fall > DEVIATIONS * reading.standardUncertainty()) {
            return Finding.of("dose.reading-rose", Outcome.CAUTION, "", reading.ph(), expected.ph());
        }
        if (fall > TIMES * expectedFall && beyond > DEVIATIONS * deviation || beyond > DEVIATIONS_ALONE * deviation) {
            return Finding.of("dose.reading-fell-too-far", Outcome.CAUTION, "", reading.ph(), expected.ph());
        }
        if (fall < expectedFall / TIMES && -beyond > DEVIATIONS * deviation || -beyond > DEVIATIONS_ALONE * deviation) {
            return Finding.of("dose.reading-fell-too-little", Outcome.CAUTION, "", reading.ph(), expected.ph());
        }
        return Finding.of("dose.reading-as-expected", Outcome.PASS, "", reading.ph(), expected.ph());
    }
}

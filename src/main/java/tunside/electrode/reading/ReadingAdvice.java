package tunside.electrode.reading;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tunside.electrode.Verdict;
import tunside.finding.Finding;
import tunside.finding.Outcome;
import tunside.quantity.Temperature;
import tunside.reference.Row;
import tunside.reference.Table;

/**
 * What to do after a reading, from {@code reading-advice.csv}.
 *
 * @param id of the advice
 * @param message what to do
 * @param source id of its source
 */
public record ReadingAdvice(String id, String message, String source) {
    private static final Map<String, ReadingAdvice> ALL = load();

    static ReadingAdvice of(String id) {
        ReadingAdvice advice = ALL.get(id);
        if (advice == null) {
            throw new IllegalStateException("reading-advice.csv has no advice " + id);
        }
        return advice;
    }

    /** What keeps the reading from being good first, then what the verdict asks for. */
    static List<ReadingAdvice> of(
            SampleReading reading,
            Settling settling,
            Temperature temperature,
            Optional<Drift> drift,
            ReadingVerdict verdict,
            List<Finding> findings) {
        List<String> ids = new ArrayList<>();
        if (reading.calibration().isEmpty()) {
            ids.add("calibrate");
        } else if (reading.calibration().get().verdict() == Verdict.UNFIT) {
            ids.add("replace-electrode");
        }
        if (settling.state() != Settling.State.SETTLED) {
            ids.add(settling.state() == Settling.State.SETTLING ? "wait" : "watch");
        }
        if (temperature.celsius() > ReadingLimits.of("cool-enough")) {
            ids.add("cool");
        }
        if (found(findings, "reading.drift", Outcome.CAUTION)) {
            ids.add("recalibrate");
        }
        if (found(findings, "reading.bracket", Outcome.CAUTION)) {
            ids.add("bracket");
        }
        boolean stopped = findings.stream().anyMatch(finding -> finding.outcome() == Outcome.STOP);
        if (!stopped && settling.state() != Settling.State.SETTLING) {
            ids.add(
                    switch (verdict) {
                        case IN_RANGE -> "leave-it";
                        case ABOVE -> "lower";
                        case BELOW -> "raise";
                        case CANNOT_TELL -> "measure-again";
                    });
        }
        if (reading.calibration().isPresent() && drift.isEmpty()) {
            ids.add("recheck");
        }
        if (reading.liquid() != SampleLiquid.LIQUOR) {
            ids.add("discard");
        }
        return ids.stream().map(ReadingAdvice::of).toList();
    }

    private static boolean found(List<Finding> findings, String code, Outcome outcome) {
        return findings.stream().anyMatch(finding -> finding.code().equals(code) && finding.outcome() == outcome);
    }

    private static Map<String, ReadingAdvice> load() {
        Map<String, ReadingAdvice> all = new LinkedHashMap<>();
        for (Row row : Table.read("reading-advice.csv").rows()) {
            all.put(row.text("advice"), new ReadingAdvice(row.text("advice"), row.text("message"), row.source()));
        }
        return all;
    }
}

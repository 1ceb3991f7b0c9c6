package tunside.electrode;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import tunside.finding.Finding;
import tunside.finding.Outcome;

/** The checks of a calibration; limits in {@code electrode-limits.csv}, words in {@code checks-electrode.csv}. */
final class CalibrationChecks {
    private final CalibrationSession session;
    private final CalibrationLine line;
    private final List<SegmentSlope> segments;
    private final List<SuspectedCause> causes;
    private final Optional<CalibratedPh> expected;
    private final List<Finding> findings = new ArrayList<>();

    CalibrationChecks(
            CalibrationSession session,
            CalibrationLine line,
            List<SegmentSlope> segments,
            List<SuspectedCause> causes,
            Optional<CalibratedPh> expected) {
        this.session = session;
        this.line = line;
        this.segments = segments;
        this.causes = causes;
        this.expected = expected;
    }

    List<Finding> findings() {
        for (int i = 0; i < session.readings().size(); i++) {
            reading(i);
        }
        temperatureSpread();
        families();
        repeats();
        slope();
        offset();
        agreement();
        segments();
        bracketing();
        certainty();
        display();
        suspicion();
        return List.copyOf(findings);
    }

    private void reading(int index) {
        BufferReading reading = session.readings().get(index);
        String pointer = "/readings/" + index;
        double celsius = reading.temperature().celsius();
        double low = ElectrodeLimits.of("temperature-low");
        double high = ElectrodeLimits.of("temperature-high");
        add(
                "electrode.buffer-temperature",
                celsius >= low && celsius <= high,
                Outcome.CAUTION,
                pointer,
                celsius,
                celsius < low ? low : high);
        settling(reading, pointer);
        preparation(reading, pointer);
        if (session.readout() != MeterReadout.POTENTIAL) {
            double meter = session.compensation()
                    .meterTemperature(reading.temperature())
                    .celsius();
            add(
                    "electrode.compensation",
                    Math.abs(celsius - meter) <= ElectrodeLimits.of("compensation-tolerance"),
                    Outcome.NOTE,
                    pointer,
                    meter,
                    celsius);
        }
    }

    private void settling(BufferReading reading, String pointer) {
        if (reading.settlingTime().isEmpty()) {
            return;
        }
        double seconds = reading.settlingTime().get().seconds();
        double good = ElectrodeLimits.of("settling-good");
        Outcome outcome = seconds <= good
                ? Outcome.PASS
                : seconds <= ElectrodeLimits.of("settling-usable")
                        ? Outcome.NOTE
                        : seconds <= ElectrodeLimits.of("settling-too-long") ? Outcome.CAUTION : Outcome.STOP;
        findings.add(Finding.of("electrode.settling", outcome, pointer + "/settlingTime", seconds, good));
    }

    private void preparation(BufferReading reading, String pointer) {
        BufferCup cup = reading.cup();
        Preparation preparation = cup.preparation();
        String at = pointer + "/preparation";
        if (preparation.waterRatio().isPresent()) {
            double percent = 100 * preparation.waterRatio().getAsDouble();
            double tolerance = 100 * ElectrodeLimits.preparation("water-tolerance");
            add(
                    "electrode.buffer-water",
                    Math.abs(percent - 100) <= tolerance * (1 + 1e-9),
                    Outcome.CAUTION,
                    at,
                    percent,
                    100,
                    cup.label());
        }
        if (preparation.age().isPresent() && cup.substance().isPresent()) {
            BufferSubstance substance = cup.substance().get();
            double days = preparation.age().get().seconds() / 86_400;
            double life = BufferChange.shelfLifeDays(substance, preparation.state());
            add("electrode.buffer-age", days <= life, Outcome.CAUTION, at, days, life, cup.label());
        }
    }

    private void temperatureSpread() {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (BufferReading reading : session.readings()) {
            low = Math.min(low, reading.temperature().celsius());
            high = Math.max(high, reading.temperature().celsius());
        }
        double limit = ElectrodeLimits.of("temperature-spread");
        add("electrode.temperature-spread", high - low <= limit, Outcome.CAUTION, "/readings", high - low, limit);
    }

    private void families() {
        Set<BufferFamily> families = EnumSet.noneOf(BufferFamily.class);
        session.readings().forEach(r -> r.cup().buffer().ifPresent(buffer -> families.add(buffer.family())));
        if (!families.isEmpty()) {
            findings.add(Finding.of(
                    "electrode.buffer-family", families.size() == 1 ? Outcome.PASS : Outcome.NOTE, "/readings"));
        }
    }

    private void repeats() {
        Map<BufferCup, double[]> ranges = new LinkedHashMap<>();
        boolean repeated = false;
        for (int i = 0; i < session.readings().size(); i++) {
            double read =
                    line.potentialsMv().get(i) + line.slopeMvPerPh() * line.x().get(i);
            double[] range = ranges.get(session.readings().get(i).cup());
            if (range == null) {
                ranges.put(session.readings().get(i).cup(), new double[] {read, read});
            } else {
                repeated = true;
                range[0] = Math.min(range[0], read);
                range[1] = Math.max(range[1], read);
            }
        }
        if (repeated) {
            double largest = ranges.values().stream()
                            .mapToDouble(range -> range[1] - range[0])
                            .max()
                            .orElseThrow()
                    / line.idealMvPerPh();
            double limit = ElectrodeLimits.of("repeat-usable");
            add("electrode.repeat", largest <= limit, Outcome.CAUTION, "/readings", largest, limit);
        }
    }

    private void slope() {
        double percent = line.slopePercent();
        double same = ElectrodeLimits.of("slope-same-potential");
        if (percent <= -same) {
            findings.add(Finding.of("electrode.direction", Outcome.STOP, "/readings", percent, 100));
            return;
        }
        findings.add(Finding.of("electrode.direction", Outcome.PASS, "/readings"));
        if (percent < same) {
            findings.add(Finding.of("electrode.same-potential", Outcome.STOP, "/readings", percent, same));
            return;
        }
        findings.add(Finding.of("electrode.same-potential", Outcome.PASS, "/readings"));
        double good = ElectrodeLimits.of("slope-good-low");
        double high = ElectrodeLimits.of("slope-high");
        String code = session.readout() == MeterReadout.POTENTIAL ? "electrode.slope" : "electrode.sensitivity";
        if (percent > high) {
            findings.add(Finding.of(code + "-high", Outcome.STOP, "/readings", percent, high));
            return;
        }
        findings.add(Finding.of(code + "-high", Outcome.PASS, "/readings", percent, high));
        Outcome outcome = percent >= good
                ? Outcome.PASS
                : percent >= ElectrodeLimits.of("slope-usable-low") ? Outcome.CAUTION : Outcome.STOP;
        findings.add(Finding.of(code, outcome, "/readings", percent, good));
    }

    private void offset() {
        double offset = line.offsetMv();
        double good = ElectrodeLimits.of("offset-good");
        double usable = ElectrodeLimits.of("offset-usable");
        Outcome outcome =
                Math.abs(offset) <= good ? Outcome.PASS : Math.abs(offset) <= usable ? Outcome.CAUTION : Outcome.STOP;
        double limit = outcome == Outcome.STOP ? usable : good;
        findings.add(
                session.readout() == MeterReadout.POTENTIAL
                        ? Finding.of("electrode.offset", outcome, "/readings", offset, limit)
                        : Finding.of(
                                "electrode.display-offset",
                                outcome,
                                "/readings",
                                -offset / line.idealMvPerPh(),
                                limit / line.idealMvPerPh()));
    }

    private void agreement() {
        if (segments.size() < 2) {
            findings.add(Finding.of("electrode.independent-buffer", Outcome.NOTE, "/readings"));
            return;
        }
        findings.add(Finding.of("electrode.independent-buffer", Outcome.PASS, "/readings"));
        if (line.usable()) {
            double largest = line.largestErrorPh();
            double limit = ElectrodeLimits.of("residual-usable");
            Outcome outcome = largest > limit ? Outcome.STOP : line.consistent() ? Outcome.PASS : Outcome.CAUTION;
            findings.add(Finding.of("electrode.agreement", outcome, "/readings", largest, limit));
        }
    }

    private void segments() {
        for (int i = 1; i < segments.size(); i++) {
            SegmentSlope segment = segments.get(i);
            add(
                    "electrode.segment-slopes",
                    !segment.differsFromPrevious(),
                    Outcome.CAUTION,
                    "/readings",
                    segment.percent(),
                    segments.get(i - 1).percent());
        }
    }

    private void bracketing() {
        add(
                "electrode.bracketing",
                CalibrationEvaluation.brackets(session),
                Outcome.CAUTION,
                "/expectedPh",
                session.expectedPh(),
                session.expectedPh() < session.lowestPh() ? session.lowestPh() : session.highestPh());
        double limit = ElectrodeLimits.of("buffer-distance");
        add(
                "electrode.buffer-distance",
                session.spanPh() > limit,
                Outcome.CAUTION,
                "/readings",
                session.spanPh(),
                limit);
    }

    private void certainty() {
        if (expected.isPresent()) {
            double uncertainty = expected.get().standardUncertainty();
            double good = ElectrodeLimits.of("certainty-good");
            double usable = ElectrodeLimits.of("certainty-usable");
            Outcome outcome =
                    uncertainty <= good ? Outcome.PASS : uncertainty <= usable ? Outcome.NOTE : Outcome.CAUTION;
            findings.add(Finding.of(
                    "electrode.certainty", outcome, "/expectedPh", uncertainty, uncertainty <= usable ? good : usable));
        }
    }

    private void display() {
        if (session.readout() != MeterReadout.POTENTIAL) {
            boolean asFound = session.readout() == MeterReadout.AS_FOUND;
            double largest = 0;
            for (int i = 0; i < session.readings().size(); i++) {
                largest = Math.max(largest, Math.abs(session.displayErrorPh(i)));
            }
            double limit = ElectrodeLimits.of("residual-usable");
            add(
                    "electrode.display",
                    largest <= limit,
                    asFound ? Outcome.NOTE : Outcome.CAUTION,
                    "/readings",
                    largest,
                    limit);
            findings.add(Finding.of("electrode.display-only", asFound ? Outcome.NOTE : Outcome.CAUTION, "/readout"));
        }
    }

    private void suspicion() {
        SuspectedCause first = causes.stream()
                .filter(cause -> cause.cause() != Cause.SOUND)
                .findFirst()
                .orElseThrow();
        double weight = first.weight();
        Outcome outcome = weight < ElectrodeLimits.of("suspicion-worth-a-word")
                ? Outcome.PASS
                : weight < ElectrodeLimits.of("suspicion-strong")
                        ? Outcome.NOTE
                        : weight >= ElectrodeLimits.of("suspicion-stops")
                                        && first.cause().stops()
                                ? Outcome.STOP
                                : Outcome.CAUTION;
        findings.add(Finding.of(
                        "electrode.suspected-cause",
                        outcome,
                        "/readings",
                        weight,
                        ElectrodeLimits.of("suspicion-worth-a-word"))
                .about(first.cause().meaning()));
    }

    private void add(String code, boolean passed, Outcome otherwise, String pointer, double observed, double limit) {
        add(code, passed, otherwise, pointer, observed, limit, "");
    }

    private void add(
            String code,
            boolean passed,
            Outcome otherwise,
            String pointer,
            double observed,
            double limit,
            String subject) {
        findings.add(Finding.of(code, passed ? Outcome.PASS : otherwise, pointer, observed, limit)
                .about(subject));
    }
}

package tunside.electrode.reading;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import tunside.electrode.Calibration;
import tunside.electrode.Verdict;
import tunside.finding.Finding;
import tunside.finding.Outcome;

/** Checks of a series and of what it was read with. */
final class ReadingChecks {
    private static final double SECONDS_PER_HOUR = 3600;

    private ReadingChecks() {}

    static List<Finding> of(
            SampleReading reading,
            Calibration calibration,
            Settling settling,
            Optional<Drift> drift,
            double ph,
            CompensationEffect compensation,
            double uncertainty) {
        List<Finding> findings = new ArrayList<>();
        findings.add(calibration(reading));
        settling(reading, settling, findings);
        double celsius = reading.last().temperature().celsius();
        double hot = ReadingLimits.of("too-hot");
        boolean cool = celsius >= ReadingLimits.of("cool-least") && celsius <= ReadingLimits.of("cool-enough");
        findings.add(Finding.of(
                "reading.sample-temperature",
                celsius > hot ? Outcome.STOP : cool ? Outcome.PASS : Outcome.CAUTION,
                "/readings/%d/temperature".formatted(reading.points().size() - 1),
                celsius,
                hot));
        findings.add(compensation(reading, compensation));
        if (reading.calibration().isPresent()) {
            double apart = Math.abs(celsius - calibration.temperature().celsius());
            findings.add(Finding.of(
                    "reading.temperature-difference",
                    apart > ReadingLimits.of("temperature-difference") ? Outcome.NOTE : Outcome.PASS,
                    "/calibration/temperature",
                    apart,
                    ReadingLimits.of("temperature-difference")));
            findings.add(Finding.of(
                    "reading.bracket",
                    calibration.brackets(ph) ? Outcome.PASS : Outcome.CAUTION,
                    "/calibration",
                    rounded(ph),
                    ph < calibration.lowestPh() ? calibration.lowestPh() : calibration.highestPh()));
            drift(drift, findings);
        }
        if (reading.sinceCalibrationS().isPresent()) {
            double age = reading.sinceCalibrationS().getAsDouble() / SECONDS_PER_HOUR;
            double day = ReadingLimits.of("calibration-day") / SECONDS_PER_HOUR;
            findings.add(Finding.of(
                    "reading.calibration-age",
                    age > day ? Outcome.CAUTION : Outcome.PASS,
                    "/sinceCalibration",
                    age,
                    day));
        } else if (reading.calibration().isPresent()) {
            double assumed = ReadingLimits.of("unstated-age") / SECONDS_PER_HOUR;
            findings.add(Finding.of("reading.calibration-age", Outcome.NOTE, "/sinceCalibration", assumed, assumed));
        }
        SampleLiquid liquid = reading.liquid();
        boolean published = liquid == SampleLiquid.MASH || liquid == SampleLiquid.WORT;
        findings.add(Finding.of("reading.temperature-effect", published ? Outcome.PASS : Outcome.NOTE, "/liquid")
                .about(liquid.name().toLowerCase(Locale.ROOT)));
        double good = ReadingLimits.of("good-uncertainty");
        findings.add(Finding.of(
                "reading.certainty",
                uncertainty <= good ? Outcome.PASS : Outcome.CAUTION,
                "",
                rounded(uncertainty),
                good));
        findings.add(Finding.of(
                "reading.conventional",
                reading.liquid() == SampleLiquid.LIQUOR ? Outcome.PASS : Outcome.NOTE,
                "/liquid"));
        return findings;
    }

    /** To the digits that a message needs. */
    private static double rounded(double ph) {
        return Math.rint(ph * 1000) / 1000;
    }

    private static Finding calibration(SampleReading reading) {
        double off = ReadingLimits.of("uncalibrated");
        if (reading.calibration().isEmpty()) {
            return Finding.of("reading.calibration", Outcome.STOP, "", off, off)
                    .about("No calibration came with the readings.");
        }
        Verdict verdict = reading.calibration().get().verdict();
        if (verdict == Verdict.UNFIT) {
            return Finding.of("reading.calibration", Outcome.STOP, "/calibration/verdict", off, off)
                    .about("The calibration found the electrode unfit.");
        }
        return Finding.of(
                "reading.calibration", verdict == Verdict.FIT ? Outcome.PASS : Outcome.CAUTION, "/calibration/verdict");
    }

    private static void settling(SampleReading reading, Settling settling, List<Finding> findings) {
        int n = reading.points().size();
        if (settling.state() == Settling.State.TOO_SHORT) {
            findings.add(Finding.of(
                    "reading.series",
                    Outcome.NOTE,
                    "/readings",
                    rounded(settling.stillToComePh()),
                    ReadingLimits.of("fewest-readings")));
        } else {
            findings.add(
                    Finding.of("reading.series", Outcome.PASS, "/readings", n, ReadingLimits.of("fewest-readings")));
            findings.add(Finding.of(
                    "reading.settling",
                    settling.state() == Settling.State.SETTLED ? Outcome.PASS : Outcome.CAUTION,
                    "/readings",
                    rounded(settling.stillToComePh()),
                    reading.criterion().changePh()));
        }
        if (settling.outliers().isEmpty()) {
            findings.add(Finding.of("reading.outlier", Outcome.PASS, "/readings"));
        }
        for (Settling.Outlier outlier : settling.outliers()) {
            findings.add(Finding.of(
                    "reading.outlier",
                    Outcome.NOTE,
                    "/readings/" + outlier.index(),
                    rounded(outlier.distancePh()),
                    settling.noisePh()));
        }
    }

    private static Finding compensation(SampleReading reading, CompensationEffect effect) {
        double meter = effect.meterTemperature().celsius();
        return Finding.of(
                "reading.compensation",
                meter == reading.last().temperature().celsius() ? Outcome.PASS : Outcome.NOTE,
                reading.calibration().isPresent() ? "/calibration/meter" : "/meter",
                meter,
                reading.last().temperature().celsius());
    }

    private static void drift(Optional<Drift> drift, List<Finding> findings) {
        double usable = ReadingLimits.of("drift-usable");
        if (drift.isEmpty()) {
            findings.add(Finding.of("reading.drift", Outcome.NOTE, ""));
            return;
        }
        double largest = drift.get().largestPh();
        findings.add(Finding.of(
                "reading.drift",
                Math.abs(largest) > usable ? Outcome.CAUTION : Outcome.PASS,
                "/rechecks",
                rounded(largest),
                usable));
    }
}

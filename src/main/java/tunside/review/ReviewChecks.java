package tunside.review;

import java.util.ArrayList;
import java.util.List;
import tunside.finding.Finding;
import tunside.finding.Outcome;
import tunside.mash.MashPrediction;

/** Checks of a household's record. */
final class ReviewChecks {
    private static final int FEW_BREWS = 3;
    private static final int FEWEST_FOR_SCATTER = 5;
    private static final double USUAL_DEVIATIONS = 2;
    private static final double WIDE_SCATTER = 1.5;
    private static final double HARDLY_LEARNT = 0.8;

    private ReviewChecks() {}

    /** @param scatter of the counted brews' errors against their standard deviations */
    static List<Finding> of(
            List<ReviewedBrew> brews, LearntEstimate bias, LearntEstimate logBuffering, double scatter) {
        List<Finding> findings = new ArrayList<>();
        for (int j = 0; j < brews.size(); j++) {
            findings.add(brew(brews.get(j)).about(brews.get(j).brew().label()).under("/brews/" + j));
        }
        int counted = (int) brews.stream().filter(ReviewedBrew::counted).count();
        findings.add(Finding.of("review.brews", enough(counted), "/brews", counted, FEW_BREWS));
        findings.add(outliers(brews.size(), brews.size() - counted, brews));
        findings.add(bias(bias));
        findings.add(buffering(logBuffering));
        if (counted >= FEWEST_FOR_SCATTER) {
            findings.add(scatter(scatter));
        }
        return findings;
    }

    private static Outcome enough(int counted) {
        return counted == 0 ? Outcome.CAUTION : counted < FEW_BREWS ? Outcome.NOTE : Outcome.PASS;
    }

    private static Finding brew(ReviewedBrew brew) {
        return switch (brew.standing()) {
            case BEYOND_MODEL -> beyondModel(brew);
            case UNEXPLAINABLE -> Finding.of("review.unexplainable", Outcome.CAUTION, "");
            case COUNTED, FAR_FROM_OTHERS -> departure(brew);
        };
    }

    private static Finding beyondModel(ReviewedBrew brew) {
        List<Double> readings = brew.publishedReadings();
        int first = 0;
        while (MashPrediction.isWithinReach(readings.get(first))) {
            first++;
        }
        double ph = readings.get(first);
        return Finding.of(
                "review.beyond-model",
                Outcome.CAUTION,
                first == 0 ? "/mash" : dose(first),
                shown(ph, 10),
                MashPrediction.nearestWithinReach(ph));
    }

    private static String dose(int reading) {
        return "/doses/" + (reading - 1);
    }

    /** A first reading, or an answer to a dose, against what the others let expect; in standard deviations. */
    private static Finding departure(ReviewedBrew brew) {
        return Finding.of(
                brew.reading() == 0 ? "review.brew" : "review.brew-dose",
                Math.abs(brew.studentised()) > BrewReview.OUTLIER
                        ? Outcome.CAUTION
                        : brew.counted() ? Outcome.PASS : Outcome.NOTE,
                brew.reading() == 0 ? "" : dose(brew.reading()),
                shown(brew.studentised(), 10),
                BrewReview.OUTLIER);
    }

    /** As a sentence names it: no more digits than mean something. */
    private static double shown(double value, int perUnit) {
        return Math.rint(value * perUnit) / perUnit + 0.0;
    }

    private static Finding outliers(int brews, int setAside, List<ReviewedBrew> reviewed) {
        boolean left =
                reviewed.stream().anyMatch(brew -> brew.counted() && Math.abs(brew.studentised()) > BrewReview.OUTLIER);
        return Finding.of(
                "review.set-aside",
                left ? Outcome.CAUTION : setAside > 0 ? Outcome.NOTE : Outcome.PASS,
                "/brews",
                setAside,
                BrewReview.mostOutliers(brews));
    }

    private static Finding bias(LearntEstimate bias) {
        double usual = USUAL_DEVIATIONS * bias.published().standardUncertainty();
        double shift = bias.learnt().value() - bias.published().value();
        return Finding.of(
                "review.household-bias",
                Math.abs(shift) <= usual ? Outcome.PASS : Outcome.CAUTION,
                "/brews",
                shown(bias.learnt().value(), 100),
                shown(usual, 100));
    }

    private static Finding buffering(LearntEstimate logBuffering) {
        double before = logBuffering.published().standardUncertainty();
        double after = logBuffering.learnt().standardUncertainty();
        double factor = Math.exp(logBuffering.learnt().value());
        double farthest = Math.exp(USUAL_DEVIATIONS * before);
        if (after > HARDLY_LEARNT * before) {
            return Finding.of("review.buffering", Outcome.NOTE, "/brews", shown(factor, 100), shown(farthest, 100));
        }
        double shift = Math.abs(
                logBuffering.learnt().value() - logBuffering.published().value());
        return Finding.of(
                "review.buffering",
                shift <= USUAL_DEVIATIONS * before ? Outcome.PASS : Outcome.CAUTION,
                "/brews",
                shown(factor, 100),
                shown(farthest, 100));
    }

    /** Whether the counted brews scatter as their uncertainties say. */
    private static Finding scatter(double scatter) {
        return Finding.of(
                "review.scatter",
                scatter <= WIDE_SCATTER ? Outcome.PASS : Outcome.CAUTION,
                "/brews",
                shown(scatter, 100),
                WIDE_SCATTER);
    }
}

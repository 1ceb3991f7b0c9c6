package tunside.mash;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import tunside.chemistry.AcidProduct;
import tunside.chemistry.NeatAcidLimits;
import tunside.electrode.Verdict;
import tunside.finding.Finding;
import tunside.finding.Outcome;

/** Checks of a mash and of its prediction. Every check that ran is reported, passed or not. */
public final class MashChecks {
    private static final double LOWEST_USUAL_RATIO = 2;
    private static final double HIGHEST_USUAL_RATIO = 5;
    private static final double LOWEST_RATIO = 1.5;
    private static final double HIGHEST_RATIO = 8;
    private static final double HIGHEST_MEASURED_ALKALINITY = 5.3;
    private static final double HIGHEST_ALKALINITY = 8;
    private static final double USUAL_ACIDULATED_PERCENT = 5;
    private static final double MOST_ACIDULATED_PERCENT = 10;
    private static final double LOWEST_MODEL_PH = 5.0;
    private static final double HIGHEST_MODEL_PH = 6.2;
    private static final double SURE_HALF_WIDTH = 0.15;
    private static final double IMPLAUSIBLE_DEVIATIONS = 3;
    private static final double LOWEST_LACTIC_PERCENT = 2;
    private static final double HIGHEST_LACTIC_PERCENT = 4;
    private static final double ACIDITY_PH = 5.7;
    private static final int FEWEST_BREWS = 1;

    private MashChecks() {}

    /** Checks of one malt; the pointer is relative to it. */
    public static List<Finding> of(Malt malt) {
        List<Finding> findings = new ArrayList<>();
        findings.add(evidence(malt));
        if (malt.maltClass().followsColour() && !malt.measured().knowsAcidity()) {
            findings.add(colour(malt));
        }
        malt.measured().distilledWaterPh().ifPresent(ph -> findings.add(measuredPh(malt, ph)));
        malt.measured().buffering().ifPresent(curve -> findings.add(measuredBuffering(malt, curve)));
        if (malt.measured().distilledWaterPh().isPresent()
                && malt.measured().buffering().isPresent()
                && malt.measured().acidityToPh57MeqPerKg().isPresent()) {
            findings.add(acidityAgrees(malt));
        }
        malt.lacticAcidPercent().ifPresent(percent -> findings.add(lacticAcid(malt, percent.value())));
        return findings;
    }

    /** Whether the electrode that the mash will be measured with may be trusted; no prediction rests on it. */
    public static Finding calibration(Verdict verdict) {
        Outcome outcome = switch (verdict) {
            case FIT -> Outcome.PASS;
            case FIT_WITH_CARE -> Outcome.NOTE;
            case UNFIT -> Outcome.CAUTION;
        };
        return Finding.of("mash.calibration", outcome, "/calibration/verdict");
    }

    /** Checks of an acid that is poured into the mash as it is bought; the pointer is relative to the addition. */
    public static List<Finding> of(AcidProduct product) {
        OptionalDouble limit = NeatAcidLimits.percent(product.acid());
        if (limit.isEmpty()) {
            return List.of();
        }
        return List.of(Finding.of(
                        "mash.acid-neat",
                        NeatAcidLimits.reachedBy(product) ? Outcome.STOP : Outcome.PASS,
                        "/strength",
                        product.massPercent(),
                        limit.getAsDouble())
                .about(product.acid().name()));
    }

    /** Checks of what goes in; pointers are relative to the request: {@code /grist}, {@code /liquor} and so on. */
    public static List<Finding> of(Mash mash) {
        List<Finding> findings = new ArrayList<>();
        findings.add(ratio(mash));
        findings.add(alkalinity(mash));
        acidulated(mash, findings);
        chalk(mash, findings);
        findings.add(rest(mash));
        mash.conditions().millGapMm().ifPresent(gap -> findings.add(millGap(gap)));
        return findings;
    }

    /** The same, and checks of the prediction. */
    public static List<Finding> of(Mash mash, MashPrediction prediction) {
        List<Finding> findings = new ArrayList<>(of(mash));
        experience(mash, findings);
        findings.add(predictedRange(prediction));
        findings.add(modelReach(prediction));
        findings.add(certainty(prediction));
        return findings;
    }

    /** What the experience says, and how far it says it about each malt known by class. */
    private static void experience(Mash mash, List<Finding> findings) {
        Experience experience = mash.model().experience();
        if (experience.parameters().isEmpty()) {
            return;
        }
        boolean taught = experience.brews() > 0;
        findings.add(Finding.of(
                "mash.experience",
                taught ? Outcome.PASS : Outcome.NOTE,
                "/experience",
                experience.brews(),
                FEWEST_BREWS));
        mash.grist().parts().stream()
                .map(GristPart::malt)
                .filter(Malt::isKnownByClass)
                .map(malt -> experience(malt, experience))
                .distinct()
                .forEach(findings::add);
    }

    private static Finding experience(Malt malt, Experience experience) {
        String id = malt.maltClass().id();
        if (!experience.knows(malt.maltClass())) {
            return Finding.of("mash.experience-malt", Outcome.NOTE, "/experience")
                    .about(id);
        }
        boolean known = experience.indexOfProduct(malt) >= 0;
        return malt.product()
                .map(name -> Finding.of("mash.experience-product", known ? Outcome.PASS : Outcome.NOTE, "/experience")
                        .about(id + ", " + name))
                .orElseGet(() -> Finding.of(
                                known ? "mash.experience-same-product" : "mash.experience-unnamed",
                                Outcome.NOTE,
                                "/experience")
                        .about(id));
    }

    private static Finding evidence(Malt malt) {
        Outcome outcome = malt.measured().knowsAcidity()
                ? Outcome.PASS
                : malt.maltClass().measured() ? Outcome.NOTE : Outcome.CAUTION;
        return Finding.of("mash.malt-evidence", outcome, "").about(malt.label());
    }

    private static Finding colour(Malt malt) {
        MaltClass maltClass = malt.maltClass();
        if (malt.colour().isEmpty()) {
            return Finding.of("mash.malt-colour", Outcome.CAUTION, "").about(malt.label());
        }
        double ebc = malt.colour().get().ebc();
        boolean dark = ebc > maltClass.highestColour().ebc();
        double limit = (dark ? maltClass.highestColour() : maltClass.lowestColour()).ebc();
        Outcome outcome = maltClass.covers(malt.colour().get()) ? Outcome.PASS : Outcome.NOTE;
        return Finding.of("mash.malt-colour", outcome, "/colour", ebc, limit).about(malt.label());
    }

    private static Finding measuredPh(Malt malt, Estimate measured) {
        Estimate usual = malt.maltClass().distilledWaterPh(malt.colour());
        double limit = IMPLAUSIBLE_DEVIATIONS * Math.hypot(measured.standardUncertainty(), usual.standardUncertainty());
        boolean plausible = Math.abs(measured.value() - usual.value()) <= limit;
        return Finding.of(
                        "mash.malt-measured-ph",
                        plausible ? Outcome.PASS : Outcome.CAUTION,
                        "/measured/distilledWaterPh",
                        measured.value(),
                        usual.value())
                .about(malt.label());
    }

    private static Finding measuredBuffering(Malt malt, BufferCurve measured) {
        double usual = malt.maltClass().buffering().value();
        double factor = measured.bufferingMeqPerKgPh() / usual;
        boolean plausible = factor >= 0.5 && factor <= 2;
        return Finding.of(
                        "mash.malt-measured-buffering",
                        plausible ? Outcome.PASS : Outcome.CAUTION,
                        "/measured",
                        measured.bufferingMeqPerKgPh(),
                        usual)
                .about(malt.label());
    }

    private static Finding acidityAgrees(Malt malt) {
        MeasuredMalt measured = malt.measured();
        Estimate ph = measured.distilledWaterPh().orElseThrow();
        BufferCurve curve = measured.buffering().orElseThrow();
        Estimate acidity = measured.acidityToPh57MeqPerKg().orElseThrow();
        double expected = -curve.uptakeMeqPerKg(ACIDITY_PH - ph.value());
        double deviation = Math.hypot(
                acidity.standardUncertainty(),
                Math.hypot(
                        curve.relativeStandardUncertainty() * expected,
                        curve.bufferingMeqPerKgPh() * ph.standardUncertainty()));
        boolean agrees = Math.abs(acidity.value() - expected) <= IMPLAUSIBLE_DEVIATIONS * deviation;
        return Finding.of(
                        "mash.malt-acidity-agrees",
                        agrees ? Outcome.PASS : Outcome.CAUTION,
                        "/measured/acidityToPh57MeqPerKg",
                        acidity.value(),
                        expected)
                .about(malt.label());
    }

    private static Finding lacticAcid(Malt malt, double percent) {
        boolean usual = percent >= LOWEST_LACTIC_PERCENT && percent <= HIGHEST_LACTIC_PERCENT;
        double limit = percent < LOWEST_LACTIC_PERCENT ? LOWEST_LACTIC_PERCENT : HIGHEST_LACTIC_PERCENT;
        return Finding.of(
                        "mash.malt-lactic-acid",
                        usual ? Outcome.PASS : Outcome.CAUTION,
                        "/lacticAcidPercent",
                        percent,
                        limit)
                .about(malt.label());
    }

    private static Finding ratio(Mash mash) {
        double ratio = mash.liquorRatioLPerKg();
        return Finding.of(
                "mash.liquor-ratio",
                within(ratio, LOWEST_USUAL_RATIO, HIGHEST_USUAL_RATIO)
                        ? Outcome.PASS
                        : within(ratio, LOWEST_RATIO, HIGHEST_RATIO) ? Outcome.NOTE : Outcome.CAUTION,
                "/liquor/volume",
                ratio,
                ratio < LOWEST_USUAL_RATIO ? LOWEST_USUAL_RATIO : HIGHEST_USUAL_RATIO);
    }

    private static boolean within(double value, double low, double high) {
        return value >= low && value <= high;
    }

    private static Finding alkalinity(Mash mash) {
        double alkalinity = mash.liquor().alkalinityMeqPerL();
        return Finding.of(
                "mash.alkalinity",
                alkalinity <= HIGHEST_MEASURED_ALKALINITY
                        ? Outcome.PASS
                        : alkalinity <= HIGHEST_ALKALINITY ? Outcome.NOTE : Outcome.CAUTION,
                "/liquor",
                alkalinity,
                HIGHEST_MEASURED_ALKALINITY);
    }

    private static void acidulated(Mash mash, List<Finding> findings) {
        double kilograms = 0;
        for (GristPart part : mash.grist().parts()) {
            if (part.malt().maltClass().lacticAcidPercent().isPresent()) {
                kilograms += part.mass().kilograms();
            }
        }
        if (kilograms > 0) {
            double percent = 100 * kilograms / mash.grist().kilograms();
            findings.add(Finding.of(
                    "mash.acidulated-share",
                    percent <= USUAL_ACIDULATED_PERCENT
                            ? Outcome.PASS
                            : percent <= MOST_ACIDULATED_PERCENT ? Outcome.NOTE : Outcome.CAUTION,
                    "/grist",
                    percent,
                    USUAL_ACIDULATED_PERCENT));
        }
    }

    private static void chalk(Mash mash, List<Finding> findings) {
        double grams = 0;
        for (Addition addition : mash.additions()) {
            if (addition instanceof SaltAddition salt && salt.isChalk()) {
                grams += salt.mass().grams();
            }
        }
        if (grams > 0) {
            double mgPerL = 1000 * grams / mash.liquor().volume().litres();
            double limit = mash.model().chalkLimitMgPerL();
            findings.add(Finding.of(
                    "mash.chalk", mgPerL <= limit ? Outcome.NOTE : Outcome.CAUTION, "/additions", mgPerL, limit));
        }
    }

    private static Finding rest(Mash mash) {
        double settled = mash.model().restSettledMinutes();
        return mash.conditions()
                .rest()
                .map(time -> Finding.of(
                        "mash.rest-time",
                        time.minutes() >= settled ? Outcome.PASS : Outcome.CAUTION,
                        "/rest",
                        time.minutes(),
                        settled))
                .orElse(Finding.of("mash.rest-time", Outcome.NOTE, ""));
    }

    private static Finding millGap(double gap) {
        return Finding.of(
                "mash.mill-gap",
                gap <= MillGaps.widestMm() ? Outcome.PASS : Outcome.CAUTION,
                "/millGapMm",
                gap,
                MillGaps.widestMm());
    }

    private static Finding predictedRange(MashPrediction prediction) {
        PhRange range = PhRanges.acceptedMash();
        double low = range.lowPh().orElseThrow();
        double high = range.highPh().orElseThrow();
        return Finding.of(
                "mash.predicted-range",
                range.contains(prediction.ph()) ? Outcome.PASS : Outcome.CAUTION,
                "",
                prediction.ph(),
                prediction.ph() < low ? low : high);
    }

    private static Finding modelReach(MashPrediction prediction) {
        return Finding.of(
                "mash.model-reach",
                within(prediction.ph(), LOWEST_MODEL_PH, HIGHEST_MODEL_PH) ? Outcome.PASS : Outcome.CAUTION,
                "",
                prediction.ph(),
                prediction.ph() < LOWEST_MODEL_PH ? LOWEST_MODEL_PH : HIGHEST_MODEL_PH);
    }

    private static Finding certainty(MashPrediction prediction) {
        double halfWidth = prediction.high90() - prediction.ph();
        return Finding.of(
                "mash.certainty",
                halfWidth <= SURE_HALF_WIDTH ? Outcome.PASS : Outcome.NOTE,
                "",
                halfWidth,
                SURE_HALF_WIDTH);
    }
}

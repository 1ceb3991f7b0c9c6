package tunside.http.review;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tunside.chemistry.AcidProduct;
import tunside.chemistry.Salt;
import tunside.dosing.DoseChecks;
import tunside.dosing.PhReading;
import tunside.finding.Finding;
import tunside.finding.Outcome;
import tunside.http.answer.Basis;
import tunside.http.answer.Checks;
import tunside.http.answer.Rounded;
import tunside.http.answer.Safety;
import tunside.http.json.ContractNames;
import tunside.http.mash.AdditionMapper;
import tunside.http.mash.ExperienceDocument;
import tunside.http.mash.MashPredictionMapper;
import tunside.http.mash.MashPredictionResponse.PhInterval;
import tunside.http.problem.InvalidRequestException;
import tunside.http.problem.Place;
import tunside.http.review.BrewReviewResponse.AfterMoreBrews;
import tunside.http.review.BrewReviewResponse.BrewReviewResult;
import tunside.http.review.BrewReviewResponse.BrewVerdict;
import tunside.http.review.BrewReviewResponse.CountedErrors;
import tunside.http.review.BrewReviewResponse.LearntFactor;
import tunside.http.review.BrewReviewResponse.LearntPh;
import tunside.http.review.BrewReviewResponse.MaltLesson;
import tunside.http.review.BrewReviewResponse.NextPrediction;
import tunside.http.review.BrewReviewResponse.PredictionErrors;
import tunside.http.review.BrewReviewResponse.ReviewedPrediction;
import tunside.http.review.BrewReviewResponse.SlipSuspicion;
import tunside.mash.Estimate;
import tunside.mash.Mash;
import tunside.mash.MashChecks;
import tunside.mash.MashModel;
import tunside.quantity.Interval90;
import tunside.review.BrewReview;
import tunside.review.ErrorSummary;
import tunside.review.LearntEstimate;
import tunside.review.MeasuredBrew;
import tunside.review.Outlook;
import tunside.review.ReviewedBrew;
import tunside.review.SuspectedSlip;

/** Reads a record of brews and answers with what it teaches. */
public final class BrewReviewMapper {
    private static final double LEAST_LIKELIHOOD = 0.03;
    private static final int MOST_SLIPS = 4;
    private static final MashModel MODEL = MashModel.standard();
    private static final List<String> ASSUMPTIONS = List.of(
            "All brews are of one household: one meter, one mill, one way of working and of taking samples.",
            "A malt without a product name is taken to be one product of its class that the household keeps buying; where others"
                    + " of its class are named, and for caramel malts, it is another product each time. From brew to brew a"
                    + " product's own pH differs by %s.".formatted(Rounded.text(MODEL.maltPhBetweenBrews())),
            "Products of a class differ as its published malts do; what they have in common is as unsure as the published mean."
                    + " Of caramel malts, and of classes without published data, it is half of the scatter.",
            "The shifts are drawn towards the published values, with standard deviations of %s for the bias of all malts, %s"
                            .formatted(
                                    Rounded.text(MODEL.bias().standardUncertainty()),
                                    Rounded.text(MODEL.biasOfMaltTypes().standardUncertainty()))
                    + " more for malts known by class, %s for the logarithm of the buffering; offsets as malt classes scatter."
                            .formatted(Rounded.text(MODEL.bufferingScale().standardUncertainty())),
            "Masses, volumes, water, additions and the time of the sample err anew in each brew, as in a prediction.",
            "The most probable values are found on the whole balance; around them everything is linear and normal.",
            "A brew beyond 3 standard deviations from what all others let expect is set aside, up to a quarter of the brews; so is"
                    + " every brew that would land where no malt was ever titrated, or that no household could explain.",
            "How likely each slip is beside the others is a judgement; the value that it would need is computed.");
    private static final List<String> SOURCES = List.of(
            "TROESTER-2009", "HOSOM-2018", "KOLBACH-1953", "RODGERS-2000", "GUM-2008", "DERIVED", "COMMON-PRACTICE");

    private BrewReviewMapper() {}

    /** A record as read. */
    private record Reading(
            List<MeasuredBrew> brews, Set<AcidProduct> products, Set<Salt> salts, List<Finding> findings) {}

    static BrewReviewResponse answer(BrewReviewRequest request) {
        Reading reading = read(request);
        BrewReview review = BrewReview.of(reading.brews());
        List<Finding> findings = new ArrayList<>(reading.findings());
        findings.addAll(review.findings());
        return new BrewReviewResponse(
                toResult(review),
                Checks.of(findings),
                Safety.mash(List.copyOf(reading.products()), List.copyOf(reading.salts())),
                Basis.of("mash-brew-review", ASSUMPTIONS, SOURCES));
    }

    private static Reading read(BrewReviewRequest request) {
        Place root = Place.root();
        Place place = root.member("brews");
        Reading reading =
                new Reading(new ArrayList<>(), new LinkedHashSet<>(), new LinkedHashSet<>(), new ArrayList<>());
        for (int i = 0; i < request.brews().size(); i++) {
            brew(request.brews().get(i), i, place.item(i), reading);
        }
        int products = BrewReview.products(reading.brews());
        if (products > BrewReview.MOST_PRODUCTS) {
            place.fault(
                    "must name at most %s products of malt but names %s".formatted(BrewReview.MOST_PRODUCTS, products));
        }
        root.stopIfFaulty();
        return reading;
    }

    private static void brew(BrewRequest request, int index, Place place, Reading reading) {
        if (request.mash().experience() != null) {
            place.member("mash")
                    .member("experience")
                    .fault("must be left out: a brew is reviewed against published values");
        }
        Optional<MashPredictionMapper.Question> question = question(request, place.member("mash"));
        double uncertainty = orElse(request.phUncertainty(), DoseChecks.usualUncertainty());
        List<AdditionMapper.Additions> doses = new ArrayList<>();
        Place dosesPlace = place.member("doses");
        for (int k = 0; request.doses() != null && k < request.doses().size(); k++) {
            doses.add(AdditionMapper.toAddition(
                    requireNonNull(request.doses()).get(k).addition(),
                    dosesPlace.item(k).member("addition")));
        }
        if (request.mash().experience() != null
                || question.isEmpty()
                || doses.stream().anyMatch(dose -> dose.additions().isEmpty())) {
            return;
        }
        List<MeasuredBrew.Dose> read = new ArrayList<>();
        for (int k = 0; k < doses.size(); k++) {
            ReadDoseRequest dose = requireNonNull(request.doses()).get(k);
            read.add(new MeasuredBrew.Dose(
                    doses.get(k).additions().get(0),
                    new PhReading(dose.ph(), orElse(dose.phUncertainty(), uncertainty))));
            reading.products().addAll(doses.get(k).products());
            reading.salts().addAll(doses.get(k).salts());
        }
        Mash mash = question.get().mash();
        MeasuredBrew brew = dosesPlace.build(
                () -> new MeasuredBrew(
                        request.label() == null ? "brew %s".formatted(index + 1) : request.label(),
                        mash,
                        new PhReading(request.measuredPh(), uncertainty),
                        read),
                null);
        if (brew == null) {
            return;
        }
        reading.brews().add(brew);
        reading.products().addAll(question.get().products());
        reading.salts().addAll(question.get().salts());
        List<Finding> findings = new ArrayList<>(question.get().findings());
        doses.forEach(dose -> findings.addAll(dose.findings()));
        MashChecks.of(mash)
                .forEach(finding ->
                        findings.add(finding.under(place.member("mash").pointer())));
        findings(findings, place.pointer(), reading.findings());
    }

    /** The mash; empty after a fault, which is recorded, so that the faults of all brews are told at once. */
    private static Optional<MashPredictionMapper.Question> question(BrewRequest request, Place place) {
        try {
            return Optional.of(MashPredictionMapper.toQuestion(request.mash(), place));
        } catch (InvalidRequestException recorded) {
            return Optional.empty();
        }
    }

    /** Those that ask for caution, and one that says how many ran. */
    private static void findings(List<Finding> ofBrew, String pointer, List<Finding> all) {
        List<Finding> careful = ofBrew.stream()
                .filter(finding -> finding.outcome() == Outcome.CAUTION || finding.outcome() == Outcome.STOP)
                .toList();
        all.add(Finding.of(
                "review.brew-input",
                careful.isEmpty() ? Outcome.PASS : Outcome.CAUTION,
                pointer,
                ofBrew.size(),
                careful.size()));
        all.addAll(careful);
    }

    private static double orElse(@Nullable Double value, double fallback) {
        return value == null ? fallback : value;
    }

    private static BrewReviewResult toResult(BrewReview review) {
        return new BrewReviewResult(
                review.brews().size(),
                review.experience().brews(),
                toShift(review.householdBias()),
                toFactor(review.logBuffering()),
                review.malts().stream()
                        .map(malt -> new MaltLesson(
                                malt.maltClass().id(),
                                malt.product().orElse(null),
                                malt.brews(),
                                toShift(malt.offset()),
                                toShift(malt.together())))
                        .toList(),
                toLeaveOneOut(review),
                review.brews().stream().map(BrewReviewMapper::toVerdict).toList(),
                toOutlook(review.outlook()),
                ExperienceDocument.of(review.experience()));
    }

    private static BrewReviewResponse.LeaveOneOut toLeaveOneOut(BrewReview review) {
        int setAside = review.brews().size() - review.experience().brews();
        return new BrewReviewResponse.LeaveOneOut(
                toErrors(review.errors().before()),
                toErrors(review.errors().after()),
                setAside,
                setAside == 0
                        ? null
                        : review.errorsOfCounted()
                                .map(errors -> new CountedErrors(toErrors(errors.before()), toErrors(errors.after())))
                                .orElse(null));
    }

    private static LearntPh toShift(LearntEstimate estimate) {
        Estimate learnt = estimate.learnt();
        double half = Interval90.HALF_WIDTH * learnt.standardUncertainty();
        return new LearntPh(
                Rounded.decimals(learnt.value(), 3),
                Rounded.decimals(learnt.standardUncertainty(), 3),
                new PhInterval(Rounded.decimals(learnt.value() - half, 3), Rounded.decimals(learnt.value() + half, 3)),
                Rounded.decimals(estimate.published().standardUncertainty(), 3));
    }

    private static LearntFactor toFactor(LearntEstimate logarithm) {
        return new LearntFactor(
                Rounded.decimals(Math.exp(logarithm.learnt().value()), 2),
                Rounded.decimals(quantile(logarithm.learnt(), -1), 2),
                Rounded.decimals(quantile(logarithm.learnt(), 1), 2),
                Rounded.decimals(quantile(logarithm.published(), -1), 2),
                Rounded.decimals(quantile(logarithm.published(), 1), 2));
    }

    private static double quantile(Estimate logarithm, int side) {
        return Math.exp(logarithm.value() + side * Interval90.HALF_WIDTH * logarithm.standardUncertainty());
    }

    private static PredictionErrors toErrors(ErrorSummary errors) {
        return new PredictionErrors(
                Rounded.decimals(errors.medianAbsolute(), 3),
                Rounded.decimals(errors.rootMeanSquare(), 3),
                Rounded.decimals(errors.mean(), 3),
                Rounded.decimals(errors.within90(), 2));
    }

    private static BrewVerdict toVerdict(ReviewedBrew brew) {
        List<SlipSuspicion> suspected = brew.slips().stream()
                .filter(slip -> slip.weight() >= LEAST_LIKELIHOOD)
                .limit(MOST_SLIPS)
                .map(BrewReviewMapper::toSuspicion)
                .toList();
        return new BrewVerdict(
                brew.brew().label(),
                Rounded.decimals(brew.brew().first().ph(), 3),
                toPrediction(brew.published()),
                toPrediction(brew.fromOthers()),
                Rounded.decimals(brew.studentised(), 1),
                brew.reading(),
                brew.counted(),
                brew.counted() ? null : ContractNames.of(brew.standing()),
                Rounded.decimals(brew.bits(), 2),
                suspected.isEmpty() ? null : suspected);
    }

    private static ReviewedPrediction toPrediction(Estimate estimate) {
        return new ReviewedPrediction(
                Rounded.decimals(estimate.value(), 2), Rounded.decimals(estimate.standardUncertainty(), 3));
    }

    private static SlipSuspicion toSuspicion(SuspectedSlip slip) {
        double stated = shown(slip, slip.stated());
        double needed = shown(slip, slip.needed());
        return new SlipSuspicion(
                slip.slip().id(),
                slip.subject(),
                stated,
                needed,
                slip.slip().unit(),
                Rounded.decimals(slip.weight(), 2),
                slip.explains(),
                capitalised(slip.slip()
                        .message()
                        .replace("{subject}", slip.subject())
                        .replace("{stated}", Rounded.text(stated))
                        .replace("{needed}", Rounded.text(needed))
                        .replace("{times}", times(slip))));
    }

    private static String times(SuspectedSlip slip) {
        return slip.times().isPresent()
                ? Rounded.text(Rounded.significant(slip.times().getAsDouble(), 2))
                : "";
    }

    private static String capitalised(String text) {
        return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
    }

    private static double shown(SuspectedSlip slip, double value) {
        return slip.slip().unit().equals("pH") ? Rounded.decimals(value, 2) : Rounded.significant(value, 2);
    }

    private static NextPrediction toOutlook(Outlook outlook) {
        return new NextPrediction(
                Rounded.decimals(outlook.published(), 3),
                Rounded.decimals(outlook.now(), 3),
                Rounded.decimals(outlook.floor(), 3),
                number(outlook.brewsToHalve()),
                number(outlook.brewsToHalveTheLearnable()),
                outlook.steps().stream()
                        .map(step ->
                                new AfterMoreBrews(step.moreBrews(), Rounded.decimals(step.standardUncertainty(), 3)))
                        .toList());
    }

    private static @Nullable Integer number(OptionalInt value) {
        return value.isPresent() ? value.getAsInt() : null;
    }
}

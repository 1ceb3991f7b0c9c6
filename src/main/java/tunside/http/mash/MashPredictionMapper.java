package tunside.http.mash;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import tunside.chemistry.AcidProduct;
import tunside.chemistry.Salt;
import tunside.finding.Finding;
import tunside.http.answer.Basis;
import tunside.http.answer.Checks;
import tunside.http.answer.LastingList;
import tunside.http.answer.Rounded;
import tunside.http.answer.Safety;
import tunside.http.calibration.CalibrationDocument;
import tunside.http.mash.MashPredictionResponse.InputInfluence;
import tunside.http.mash.MashPredictionResponse.IonAmount;
import tunside.http.mash.MashPredictionResponse.LimitingInput;
import tunside.http.mash.MashPredictionResponse.MashPredictionResult;
import tunside.http.mash.MashPredictionResponse.PhCurve;
import tunside.http.mash.MashPredictionResponse.PhCurvePoint;
import tunside.http.mash.MashPredictionResponse.PhInterval;
import tunside.http.mash.MashPredictionResponse.ProtonContribution;
import tunside.http.mash.MashPredictionResponse.TitrationStep;
import tunside.http.problem.Place;
import tunside.http.problem.UnanswerableException;
import tunside.http.quantity.AlkalinityQuantity;
import tunside.http.quantity.MassQuantity;
import tunside.http.vary.Variations;
import tunside.http.vary.Varied;
import tunside.http.vary.VaryRequest;
import tunside.http.water.LiquorMapper;
import tunside.mash.Experience;
import tunside.mash.GristPart;
import tunside.mash.Liquor;
import tunside.mash.Mash;
import tunside.mash.MashChecks;
import tunside.mash.MashConditions;
import tunside.mash.MashModel;
import tunside.mash.MashPrediction;

/** Reads a mash and answers with its prediction. */
public final class MashPredictionMapper {
    private static final double LONGEST_REST_S = 86_400;
    private static final LastingList<String> ASSUMPTIONS = LastingList.of(List.of(
            "The pH is that of a sample cooled to 20 to 26 degC, not of the hot mash.",
            "One consistent parameter set: carbonate stays in the mash, buffering about 38 mEq/(kg pH), calcium counts"
                    + " 1/3.5 and magnesium 1/7. Another set explains the published mashes equally well and asks for 1.5"
                    + " times the acid; the spread is in the uncertainty.",
            "Dissociation constants are those of 25 degC without activities, as the set was fitted.",
            "Malts of equal description are one lot with one error. Different malts have an error each, and all that are"
                    + " known by class share one more, of pH and of buffering.",
            "The uncertainty is carried to first order through the balance; the interval takes a normal distribution.",
            "Where the request states no uncertainty: masses 1 %, liquor 2 %, acids and salts 3 %, alkalinity and"
                    + " hardness 5 %, pH of the water 0.1."));

    private static final List<String> ASSUMPTIONS_WITH_EXPERIENCE = ASSUMPTIONS.with(
            "The experience holds for the same meter, water, mill and way of working. A malt without a product name is"
                    + " taken to be the same product as in the brews, unless they name products of its class.");

    private MashPredictionMapper() {}

    /** A mash as read, with the findings about what it was read from. */
    public record Question(Mash mash, List<AcidProduct> products, List<Salt> salts, List<Finding> findings) {}

    static MashPredictionResponse answer(MashPredictionRequest request, Variations variations) {
        Question question = toQuestion(request, Place.root());
        MashPrediction prediction = withinReach(question);
        List<Finding> findings = new ArrayList<>(question.findings());
        findings.addAll(MashChecks.of(question.mash(), prediction));
        MashPredictionResult result = toResult(question.mash(), prediction);
        return new MashPredictionResponse(
                request.vary() == null ? result : result.withCurve(curve(request, request.vary(), variations)),
                Checks.of(findings),
                Safety.mash(question.products(), question.salts()),
                Basis.of(Experience.MODEL, assumptions(question.mash()), sources(question)));
    }

    private static MashPrediction withinReach(Question question) {
        MashPrediction prediction = MashPrediction.of(question.mash());
        if (!prediction.isWithinReach()) {
            throw new UnanswerableException(
                    "/additions",
                    "this mash would land at pH %s, where no malt was ever titrated; check units and amounts of the additions"
                            .formatted(Rounded.text(Rounded.decimals(prediction.ph(), 1))));
        }
        return prediction;
    }

    private static PhCurve curve(MashPredictionRequest request, VaryRequest vary, Variations variations) {
        List<Varied<MashPrediction>> varied =
                variations.answers(request, vary, step -> withinReach(toQuestion(step, Place.root())));
        return new PhCurve(
                vary.pointer(),
                Variations.unit(vary),
                varied.stream()
                        .map(step -> toPoint(step.value(), step.answer()))
                        .toList());
    }

    private static PhCurvePoint toPoint(double value, @Nullable MashPrediction prediction) {
        return prediction == null
                ? new PhCurvePoint(value, null, null, null)
                : new PhCurvePoint(
                        value,
                        Rounded.decimals(prediction.ph(), 3),
                        Rounded.decimals(prediction.standardUncertainty(), 3),
                        new PhInterval(
                                Rounded.decimals(prediction.low90(), 3), Rounded.decimals(prediction.high90(), 3)));
    }

    /** Reads the whole question; throws with all faults if there are any. */
    public static Question toQuestion(MashPredictionRequest request, Place place) {
        if (request.vary() != null && !place.pointer().isEmpty()) {
            place.member("vary").fault("belongs to a prediction alone; leave it out here");
        }
        List<GristPart> parts = GristMapper.toParts(request.grist(), place.member("grist"));
        LiquorMapper.Liquor liquor = LiquorMapper.toLiquor(request.liquor(), place.member("liquor"));
        AdditionMapper.Additions additions = AdditionMapper.toAdditions(request.additions(), place.member("additions"));
        MashConditions conditions = new MashConditions(
                request.millGapMm() == null ? OptionalDouble.empty() : OptionalDouble.of(request.millGapMm()),
                Optional.ofNullable(request.rest())
                        .map(rest -> rest.toTimeSpan(place.member("rest"), 0, LONGEST_REST_S)),
                Boolean.TRUE.equals(request.decoction()));
        Experience experience = ExperienceDocument.toExperience(request.experience(), place.member("experience"));
        CalibrationDocument.check(request.calibration(), place.member("calibration"));
        place.stopIfFaulty();
        Mash mash = place.member("additions")
                .build(
                        () -> new Mash(
                                GristMapper.toGrist(parts),
                                Liquor.of(liquor.volume(), liquor.water()),
                                additions.additions(),
                                conditions,
                                MashModel.standard().withExperience(experience)),
                        null);
        place.stopIfFaulty();
        List<Finding> findings = new ArrayList<>(GristMapper.findings(parts, place.member("grist")));
        findings.addAll(liquor.water().findings());
        findings.addAll(additions.findings());
        if (request.calibration() != null) {
            findings.add(MashChecks.calibration(request.calibration().verdict()).under(place.pointer()));
        }
        return new Question(
                mash,
                Stream.concat(liquor.products().stream(), additions.products().stream())
                        .toList(),
                Stream.concat(liquor.salts().stream(), additions.salts().stream())
                        .toList(),
                findings);
    }

    /** A prediction as an answer shows it. */
    public static MashPredictionResult toResult(Mash mash, MashPrediction prediction) {
        List<InputInfluence> influences = prediction.influences().stream()
                .map(MashPredictionMapper::toInfluence)
                .toList();
        return new MashPredictionResult(
                Rounded.decimals(prediction.ph(), 2),
                Rounded.decimals(prediction.standardUncertainty(), 3),
                new PhInterval(Rounded.decimals(prediction.low90(), 2), Rounded.decimals(prediction.high90(), 2)),
                toLimit(prediction.influences().get(0)),
                Rounded.significant(mash.liquorRatioLPerKg(), 3),
                MassQuantity.kilograms(mash.grist().kilograms(), 4),
                Rounded.significant(prediction.bufferingMeqPerPh(), 3),
                Rounded.significant(
                        prediction.bufferingMeqPerPh() / mash.grist().kilograms(), 3),
                AlkalinityQuantity.meqPerL(prediction.residualAlkalinityMeqPerL(), 2),
                AlkalinityQuantity.meqPerL(prediction.treatedResidualAlkalinityMeqPerL(), 2),
                prediction.contributions().stream()
                        .map(part ->
                                new ProtonContribution(part.kind(), part.subject(), Rounded.decimals(part.meq(), 2)))
                        .toList(),
                influences,
                prediction.titration().stream()
                        .map(point -> new TitrationStep(point.ph(), Rounded.decimals(point.acidMeq(), 1)))
                        .toList(),
                prediction.ions().stream()
                        .map(ion -> new IonAmount(ion.symbol(), Rounded.decimals(ion.mgPerL(), 1)))
                        .toList(),
                null);
    }

    private static LimitingInput toLimit(MashPrediction.Influence influence) {
        InputWords words = InputWords.of(influence.input().id());
        return new LimitingInput(
                influence.input().id(),
                influence.input().subject(),
                words.meaning(),
                words.advice(),
                Rounded.decimals(influence.varianceShare(), 2));
    }

    private static InputInfluence toInfluence(MashPrediction.Influence influence) {
        return new InputInfluence(
                influence.input().id(),
                influence.input().subject(),
                influence.input().unit(),
                Rounded.significant(influence.input().value(), 4),
                Rounded.significant(influence.input().standardUncertainty(), 3),
                Rounded.significant(influence.phPerUnit(), 3),
                Rounded.decimals(influence.phPerUncertainty(), 4),
                Rounded.decimals(influence.varianceShare(), 4));
    }

    /** What the prediction of a mash takes for granted. */
    public static List<String> assumptions(Mash mash) {
        return mash.model().experience().parameters().isEmpty() ? ASSUMPTIONS : ASSUMPTIONS_WITH_EXPERIENCE;
    }

    /** Ids of the publications behind a prediction. */
    public static List<String> sources(Question question) {
        Set<String> sources = new LinkedHashSet<>(List.of(
                "TROESTER-2009", "KOLBACH-1953", "DELANGE-2015", "HOSOM-2018", "PLUMMER-BUSENBERG-1982", "GUM-2008"));
        for (GristPart part : question.mash().grist().parts()) {
            sources.add(part.malt().maltClass().source());
        }
        if (!question.products().isEmpty()) {
            sources.add("ROBINSON-STOKES");
        }
        for (AcidProduct product : question.products()) {
            sources.add(product.densitySource());
        }
        if (question.products().stream().anyMatch(product -> product.directShare() < 1)) {
            sources.add("VU-2005");
        }
        sources.add("COMMON-PRACTICE");
        return List.copyOf(sources);
    }
}

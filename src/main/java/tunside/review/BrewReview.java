package tunside.review;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import tunside.finding.Finding;
import tunside.mash.Estimate;
import tunside.mash.Experience;
import tunside.mash.LearntParameter;
import tunside.mash.LearntQuantity;
import tunside.mash.MaltClasses;
import tunside.mash.MashModel;
import tunside.mash.MashPrediction;

/**
 * What a household's record teaches.
 *
 * @param experience for later predictions
 * @param householdBias of mashes of malts known by class: water, meter and way of working, pH
 * @param logBuffering natural logarithm of the factor on the buffering of malts known by class
 * @param malts classes and products that the record holds, in the order of the table and of their names
 * @param brews in the order given
 * @param errors of all brews, those set aside too
 * @param errorsOfCounted of the counted ones alone; empty where none is
 * @param outlook what more brews would bring
 * @param findings checks of the record; pointers are relative to it: {@code /brews/2}
 */
public record BrewReview(
        Experience experience,
        LearntEstimate householdBias,
        LearntEstimate logBuffering,
        List<LearntMalt> malts,
        List<ReviewedBrew> brews,
        LeaveOneOut errors,
        Optional<LeaveOneOut> errorsOfCounted,
        Outlook outlook,
        List<Finding> findings) {
    /** Most brews of a record. */
    public static final int MOST_BREWS = 200;

    /** Studentised residual from which a brew is set aside. */
    public static final double OUTLIER = 3;

    /** Most products of malt that a record may name. */
    public static final int MOST_PRODUCTS = 50;

    private static final double HIGHEST_PH = 14;
    private static final int MOST_REFITS = 4;
    private static final int QUARTER = 4;

    public BrewReview {
        malts = List.copyOf(malts);
        brews = List.copyOf(brews);
        findings = List.copyOf(findings);
    }

    /**
     * Reviews a record. A brew is set aside where the model lets expect a pH below 4 or above 7.5; where its readings lie more
     * than 3 standard deviations from what all others let expect, the farthest first, up to a quarter of the brews; and where
     * it could only be explained by a shift of more than 2 pH, more than a factor e² of the buffering, or a pH outside 0 to
     * 14. Cost: a few predictions with their slopes a reading.
     *
     * @param record 1 to 200 brews by one model without experience, which name at most 50 products of malt
     */
    public static BrewReview of(List<MeasuredBrew> record) {
        if (record.isEmpty() || record.size() > MOST_BREWS) {
            throw new IllegalArgumentException(
                    "a review needs 1 to %s brews but has %s".formatted(MOST_BREWS, record.size()));
        }
        MashModel model = record.get(0).mash().model();
        if (record.stream().anyMatch(brew -> !brew.mash().model().equals(model))) {
            throw new IllegalArgumentException("all brews of a record must be by the same model");
        }
        if (products(record) > MOST_PRODUCTS) {
            throw new IllegalArgumentException("a record may name at most %s products of malt but names %s"
                    .formatted(MOST_PRODUCTS, products(record)));
        }
        return new Work(record, model).review();
    }

    /** How many products of malts known by class a record names. */
    public static int products(List<MeasuredBrew> record) {
        return (int) record.stream()
                .flatMap(brew -> brew.maltsByClass().stream())
                .filter(malt -> malt.product().isPresent())
                .map(malt -> malt.maltClass().id() + malt.product().get())
                .distinct()
                .count();
    }

    /** How many brews may be set aside because they lie far from the others. */
    static int mostOutliers(int brews) {
        return Math.max(1, brews / QUARTER);
    }

    /** The steps of one review. */
    private static final class Work {
        private final List<MeasuredBrew> record;
        private final Experience prior;
        private final RealMatrix priorCovariance;
        private final RealVector priorMeans;
        private final List<BrewEquation> equations = new ArrayList<>();
        private final List<BrewEquation.Tangent> published = new ArrayList<>();
        private final List<Standing> standings = new ArrayList<>();

        Work(List<MeasuredBrew> record, MashModel model) {
            this.record = record;
            this.prior = Experience.prior(
                    model,
                    record.stream()
                            .flatMap(brew -> brew.maltsByClass().stream())
                            .toList());
            this.priorCovariance = new Array2DRowRealMatrix(prior.covarianceMatrix(), false);
            this.priorMeans = HouseholdFit.means(prior);
            for (MeasuredBrew brew : record) {
                BrewEquation equation = new BrewEquation(brew, prior);
                BrewEquation.Tangent start = equation.tangent(priorMeans, equation.ownCentre());
                equations.add(equation);
                published.add(start);
                standings.add(
                        Arrays.stream(start.expected()).allMatch(MashPrediction::isWithinReach)
                                ? Standing.COUNTED
                                : Standing.BEYOND_MODEL);
            }
        }

        private boolean counts(int j) {
            return standings.get(j) == Standing.COUNTED;
        }

        private List<Boolean> counted() {
            return standings.stream()
                    .map(standing -> standing == Standing.COUNTED)
                    .toList();
        }

        /** Whether a counted brew tells about a parameter. */
        private boolean isTold(LearntParameter parameter) {
            return !parameter.quantity().ofMalt() || brewsWith(parameter) > 0;
        }

        private int brewsWith(LearntParameter offset) {
            return (int) HouseholdFit.among(record, counted()).stream()
                    .filter(brew -> brew.maltsByClass().stream().anyMatch(offset::isOffsetOf))
                    .count();
        }

        BrewReview review() {
            HouseholdFit fit = fit();
            NormalBelief belief = fit.belief();
            List<ReviewedBrew> brews = new ArrayList<>();
            Errors errors = new Errors();
            Errors errorsOfCounted = new Errors();
            for (int j = 0; j < equations.size(); j++) {
                Departure apart = apart(fit, j);
                ReviewedBrew brew = brew(fit, j, apart);
                brews.add(brew);
                double noise = equations.get(j).readingVariance(0);
                errors.add(brew, apart, noise);
                if (counts(j)) {
                    errorsOfCounted.add(brew, apart, noise);
                }
            }
            LearntEstimate bias = sum(belief, ones(LearntQuantity.MODEL_BIAS, LearntQuantity.MALT_TYPES_BIAS));
            LearntEstimate buffering = sum(belief, ones(LearntQuantity.BUFFERING_SCALE));
            return new BrewReview(
                    experience(belief),
                    bias,
                    buffering,
                    malts(belief),
                    brews,
                    errors.summary(),
                    errorsOfCounted.isEmpty() ? Optional.empty() : Optional.of(errorsOfCounted.summary()),
                    outlook(fit),
                    ReviewChecks.of(brews, bias, buffering, errorsOfCounted.scatter()));
        }

        /** Fits, sets aside what the others do not explain, and fits again. */
        private HouseholdFit fit() {
            HouseholdFit fit = HouseholdFit.of(equations, counted(), prior);
            int rounds = 0;
            while ((rounds++ < MOST_REFITS && setFarAside(fit)) || setUnexplainableAside(fit)) {
                fit = HouseholdFit.of(equations, counted(), prior);
            }
            return fit;
        }

        private boolean setFarAside(HouseholdFit fit) {
            NormalBelief belief = fit.belief();
            boolean any = false;
            while (Collections.frequency(standings, Standing.FAR_FROM_OTHERS) < mostOutliers(record.size())) {
                int farthest = farthest(fit, belief, OUTLIER);
                if (farthest < 0) {
                    return any;
                }
                standings.set(farthest, Standing.FAR_FROM_OTHERS);
                any = true;
                belief = NormalBelief.of(priorCovariance, HouseholdFit.among(fit.observations(), counted()));
            }
            return any;
        }

        /** The counted brew that lies farthest from what the others let expect, beyond a distance; else -1. */
        private int farthest(HouseholdFit fit, NormalBelief belief, double beyond) {
            int farthest = -1;
            double distance = beyond;
            for (int j = 0; j < equations.size(); j++) {
                double candidate = counts(j)
                        ? Math.abs(belief.apart(fit.observations().get(j)).farthest())
                        : 0;
                if (candidate > distance) {
                    farthest = j;
                    distance = candidate;
                }
            }
            return farthest;
        }

        /**
         * Sets aside the brews whose pH the others let expect outside of all sense; where it is the household that would be,
         * the farthest brew of each four.
         */
        private boolean setUnexplainableAside(HouseholdFit fit) {
            boolean any = false;
            for (int j = 0; j < equations.size(); j++) {
                double expected =
                        equations.get(j).measured(0) - apart(fit, j).residual().getEntry(0);
                if (counts(j) && !(expected >= 0 && expected <= HIGHEST_PH)) {
                    standings.set(j, Standing.UNEXPLAINABLE);
                    any = true;
                }
            }
            if (any || priorMeans.add(fit.belief().shift()).getLInfNorm() <= LearntParameter.FARTHEST) {
                return any;
            }
            NormalBelief belief = fit.belief();
            int most = Math.max(1, Collections.frequency(standings, Standing.COUNTED) / QUARTER);
            for (int round = 0; round < most; round++) {
                standings.set(farthest(fit, belief, -1), Standing.UNEXPLAINABLE);
                belief = NormalBelief.of(priorCovariance, HouseholdFit.among(fit.observations(), counted()));
            }
            return true;
        }

        private Departure apart(HouseholdFit fit, int j) {
            LinearObservation observation = fit.observations().get(j);
            return counts(j) ? fit.belief().apart(observation) : fit.belief().ahead(observation);
        }

        private ReviewedBrew brew(HouseholdFit fit, int j, Departure apart) {
            BrewEquation equation = equations.get(j);
            LinearObservation observation = fit.observations().get(j);
            BrewEquation.Tangent start = published.get(j);
            double publishedVariance = equation.ownCovariance(start).getEntry(0, 0)
                    + NormalBelief.carried(new Array2DRowRealMatrix(start.toShared()), priorCovariance)
                            .getEntry(0, 0);
            double othersVariance = Math.max(0, apart.covariance().getEntry(0, 0) - equation.readingVariance(0));
            double[] studentised = apart.studentised();
            int reading = 0;
            for (int r = 1; r < studentised.length; r++) {
                reading = Math.abs(studentised[r]) > Math.abs(studentised[reading]) ? r : reading;
            }
            NormalBelief with = counts(j) ? fit.belief() : with(fit, j);
            return new ReviewedBrew(
                    record.get(j),
                    new Estimate(start.expected()[0], Math.sqrt(publishedVariance)),
                    Arrays.stream(start.expected()).boxed().toList(),
                    new Estimate(equation.measured(0) - apart.residual().getEntry(0), Math.sqrt(othersVariance)),
                    studentised[reading],
                    reading,
                    standings.get(j),
                    with.bits(observation),
                    Math.abs(studentised[reading]) > OUTLIER || standings.get(j) == Standing.FAR_FROM_OTHERS
                            ? SlipSearch.of(
                                    equation, priorMeans.add(fit.belief().shift()), apart)
                            : List.of());
        }

        private NormalBelief with(HouseholdFit fit, int j) {
            List<LinearObservation> more = new ArrayList<>(HouseholdFit.among(fit.observations(), counted()));
            more.add(fit.observations().get(j));
            return NormalBelief.of(priorCovariance, more);
        }

        /** Without the offsets that no counted brew told about: they stay as published. */
        private Experience experience(NormalBelief belief) {
            int[] told = IntStream.range(0, prior.parameters().size())
                    .filter(k -> isTold(prior.parameters().get(k)))
                    .toArray();
            List<LearntParameter> parameters = new ArrayList<>();
            List<List<Double>> covariance = new ArrayList<>();
            for (int k : told) {
                LearntParameter before = prior.parameters().get(k);
                parameters.add(before.at(before.mean() + belief.shift().getEntry(k)));
                covariance.add(Arrays.stream(told)
                        .mapToObj(l -> belief.covariance().getEntry(k, l))
                        .toList());
            }
            return new Experience(Collections.frequency(standings, Standing.COUNTED), parameters, covariance);
        }

        private RealVector ones(LearntQuantity... quantities) {
            RealVector ones = new ArrayRealVector(prior.parameters().size());
            for (LearntQuantity quantity : quantities) {
                ones.setEntry(prior.indexOf(quantity), 1);
            }
            return ones;
        }

        /** The sum of some parameters, before and after. */
        private LearntEstimate sum(NormalBelief belief, RealVector which) {
            return new LearntEstimate(
                    new Estimate(
                            which.dotProduct(priorMeans), Math.sqrt(which.dotProduct(priorCovariance.operate(which)))),
                    new Estimate(
                            which.dotProduct(priorMeans.add(belief.shift())),
                            Math.sqrt(which.dotProduct(belief.covariance().operate(which)))));
        }

        private List<LearntMalt> malts(NormalBelief belief) {
            List<LearntMalt> malts = new ArrayList<>();
            List<LearntParameter> parameters = prior.parameters();
            for (int k = 0; k < parameters.size(); k++) {
                LearntParameter parameter = parameters.get(k);
                if (parameter.quantity() == LearntQuantity.MALT_OFFSET) {
                    boolean oneProduct = k + 1 < parameters.size()
                            && parameters.get(k + 1).quantity() == LearntQuantity.PRODUCT_OFFSET
                            && parameters.get(k + 1).product().isEmpty();
                    malts.add(malt(belief, parameter, oneProduct ? new int[] {k, k + 1} : new int[] {k}));
                } else if (parameter.quantity() == LearntQuantity.PRODUCT_OFFSET
                        && !parameter.product().isEmpty()) {
                    int ofClass = prior.indexOf(MaltClasses.get(parameter.malt()));
                    malts.add(malt(belief, parameter, ofClass, k));
                }
            }
            return malts;
        }

        private LearntMalt malt(NormalBelief belief, LearntParameter parameter, int... summed) {
            RealVector offset = new ArrayRealVector(prior.parameters().size());
            for (int k : summed) {
                offset.setEntry(k, 1);
            }
            RealVector together = offset.add(ones(LearntQuantity.MODEL_BIAS, LearntQuantity.MALT_TYPES_BIAS));
            return new LearntMalt(
                    MaltClasses.get(parameter.malt()),
                    parameter.product().isEmpty() ? Optional.empty() : Optional.of(parameter.product()),
                    brewsWith(parameter),
                    sum(belief, offset),
                    sum(belief, together));
        }

        private Outlook outlook(HouseholdFit fit) {
            boolean none = !standings.contains(Standing.COUNTED);
            RealMatrix information =
                    new Array2DRowRealMatrix(priorCovariance.getRowDimension(), priorCovariance.getRowDimension());
            List<RealMatrix> slopes = new ArrayList<>();
            List<Double> own = new ArrayList<>();
            for (int j = 0; j < equations.size(); j++) {
                if (none || counts(j)) {
                    LinearObservation observation = fit.observations().get(j);
                    information = information.add(observation.information());
                    slopes.add(observation.slopes().getSubMatrix(0, 0, 0, priorCovariance.getRowDimension() - 1));
                    own.add(equations
                            .get(j)
                            .ownCovariance(fit.tangents().get(j))
                            .getEntry(0, 0));
                }
            }
            return Outlook.of(
                    fit.belief(), priorCovariance, slopes, own, information.scalarMultiply(1.0 / slopes.size()));
        }
    }

    /** Errors of the first readings, before and after, with their standard deviations. */
    private static final class Errors {
        private final List<Double> before = new ArrayList<>();
        private final List<Double> deviationsBefore = new ArrayList<>();
        private final List<Double> after = new ArrayList<>();
        private final List<Double> deviationsAfter = new ArrayList<>();

        void add(ReviewedBrew brew, Departure apart, double readingVariance) {
            before.add(brew.brew().first().ph() - brew.published().value());
            deviationsBefore.add(Math.hypot(brew.published().standardUncertainty(), Math.sqrt(readingVariance)));
            after.add(apart.residual().getEntry(0));
            deviationsAfter.add(Math.sqrt(apart.covariance().getEntry(0, 0)));
        }

        boolean isEmpty() {
            return before.isEmpty();
        }

        LeaveOneOut summary() {
            return new LeaveOneOut(ErrorSummary.of(before, deviationsBefore), ErrorSummary.of(after, deviationsAfter));
        }

        /** How much the errors scatter against their standard deviations: root mean square; 0 where there are none. */
        double scatter() {
            double sum = 0;
            for (int i = 0; i < after.size(); i++) {
                sum += Math.pow(after.get(i) / deviationsAfter.get(i), 2);
            }
            return after.isEmpty() ? 0 : Math.sqrt(sum / after.size());
        }
    }
}

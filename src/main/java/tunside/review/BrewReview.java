package tunside.review;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import tunside.finding.Finding;
import tunside.mash.Estimate;
import tunside.mash.Experience;
import tunside.mash.LearntParameter;
import tunside.mash.LearntQuantity;
import tunside.mash.MaltClass;
import tunside.mash.MaltClasses;
import tunside.mash.MashModel;

/**
 * What a household's record teaches.
 *
 * @param experience for later predictions
 * @param householdBias of mashes of malts known by class: water, meter and way of working, pH
 * @param logBuffering natural logarithm of the factor on the buffering of malts known by class
 * @param malts classes that the record holds, in the order of the table
 * @param brews in the order given
 * @param before errors of predictions from published values alone
 * @param after errors of predictions of each brew from all other counted brews
 * @param outlook what more brews would bring
 * @param findings checks of the record; pointers are relative to it: {@code /brews/2}
 */
public record BrewReview(
        Experience experience,
        LearntEstimate householdBias,
        LearntEstimate logBuffering,
        List<LearntMalt> malts,
        List<ReviewedBrew> brews,
        ErrorSummary before,
        ErrorSummary after,
        Outlook outlook,
        List<Finding> findings) {
    /** Most brews of a record. */
    public static final int MOST_BREWS = 200;

    /** Studentised residual from which a brew is set aside. */
    public static final double OUTLIER = 3;

    private static final double HIGHEST_PH = 14;
    private static final int MOST_REFITS = 4;

    public BrewReview {
        malts = List.copyOf(malts);
        brews = List.copyOf(brews);
        findings = List.copyOf(findings);
    }

    /**
     * Reviews a record. A brew whose readings lie more than 3 standard deviations from what all others let expect is set
     * aside, the farthest first, up to a quarter of the brews. Cost: a few predictions with their slopes a reading.
     *
     * @param record 1 to 200 brews by one model without experience
     * @throws UnexplainableRecord where a brew, or the record as a whole, could only be explained by what no mash can be
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
        return new Work(record, model).review();
    }

    /** How many brews may be set aside. */
    static int mostOutliers(int brews) {
        return Math.max(1, brews / 4);
    }

    /** The steps of one review. */
    private static final class Work {
        private final List<MeasuredBrew> record;
        private final Experience prior;
        private final RealMatrix priorCovariance;
        private final RealVector priorMeans;
        private final List<BrewEquation> equations = new ArrayList<>();
        private final List<Boolean> counted;

        Work(List<MeasuredBrew> record, MashModel model) {
            this.record = record;
            this.prior = Experience.prior(model, classes(record));
            this.priorCovariance = new Array2DRowRealMatrix(prior.covarianceMatrix(), false);
            this.priorMeans = HouseholdFit.means(prior);
            this.counted = new ArrayList<>(Collections.nCopies(record.size(), true));
            record.forEach(brew -> equations.add(new BrewEquation(brew, prior)));
        }

        /** Classes that the record can tell about, in the table's order, whatever the order of the brews. */
        private static List<String> classes(List<MeasuredBrew> record) {
            return MaltClasses.all().values().stream()
                    .filter(maltClass -> record.stream().anyMatch(brew -> holds(brew, maltClass)))
                    .map(MaltClass::id)
                    .toList();
        }

        private static boolean holds(MeasuredBrew brew, MaltClass maltClass) {
            return brew.mash().grist().parts().stream()
                    .anyMatch(part -> part.malt().isKnownByClass()
                            && part.malt().maltClass().equals(maltClass));
        }

        BrewReview review() {
            HouseholdFit fit = fit();
            NormalBelief belief = fit.belief();
            Experience experience = experience(belief);
            List<ReviewedBrew> brews = new ArrayList<>();
            List<Double> errorsBefore = new ArrayList<>();
            List<Double> deviationsBefore = new ArrayList<>();
            List<Double> errorsAfter = new ArrayList<>();
            List<Double> deviationsAfter = new ArrayList<>();
            for (int j = 0; j < equations.size(); j++) {
                Departure apart = apart(fit, j);
                ReviewedBrew brew = brew(fit, j, apart);
                double expectedPh = brew.fromOthers().value();
                if (!(expectedPh >= 0 && expectedPh <= HIGHEST_PH)) {
                    throw new UnexplainableRecord(j, expectedPh);
                }
                brews.add(brew);
                double noise = Math.sqrt(equations.get(j).readingVariance(0));
                errorsBefore.add(brew.brew().first().ph() - brew.published().value());
                deviationsBefore.add(Math.hypot(brew.published().standardUncertainty(), noise));
                errorsAfter.add(apart.residual().getEntry(0));
                deviationsAfter.add(Math.sqrt(apart.covariance().getEntry(0, 0)));
            }
            LearntEstimate bias = sum(belief, ones(LearntQuantity.MODEL_BIAS, LearntQuantity.MALT_TYPES_BIAS));
            LearntEstimate buffering = sum(belief, ones(LearntQuantity.BUFFERING_SCALE));
            return new BrewReview(
                    experience,
                    bias,
                    buffering,
                    malts(belief),
                    brews,
                    ErrorSummary.of(errorsBefore, deviationsBefore),
                    ErrorSummary.of(errorsAfter, deviationsAfter),
                    outlook(fit),
                    ReviewChecks.of(brews, bias, buffering, errorsAfter, deviationsAfter));
        }

        /** Fits, sets aside what the others do not explain, and fits again. */
        private HouseholdFit fit() {
            HouseholdFit fit = HouseholdFit.of(equations, counted, prior);
            for (int refit = 0; refit < MOST_REFITS && setAside(fit); refit++) {
                fit = HouseholdFit.of(equations, counted, prior);
            }
            return fit;
        }

        private boolean setAside(HouseholdFit fit) {
            NormalBelief belief = fit.belief();
            boolean any = false;
            while (Collections.frequency(counted, false) < mostOutliers(record.size())) {
                int farthest = -1;
                double distance = OUTLIER;
                for (int j = 0; j < equations.size(); j++) {
                    double candidate = counted.get(j)
                            ? Math.abs(belief.apart(fit.observations().get(j)).farthest())
                            : 0;
                    if (candidate > distance) {
                        farthest = j;
                        distance = candidate;
                    }
                }
                if (farthest < 0) {
                    return any;
                }
                counted.set(farthest, false);
                any = true;
                belief = NormalBelief.of(priorCovariance, HouseholdFit.among(fit.observations(), counted));
            }
            return any;
        }

        private Departure apart(HouseholdFit fit, int j) {
            LinearObservation observation = fit.observations().get(j);
            return counted.get(j)
                    ? fit.belief().apart(observation)
                    : fit.belief().ahead(observation);
        }

        private ReviewedBrew brew(HouseholdFit fit, int j, Departure apart) {
            BrewEquation equation = equations.get(j);
            LinearObservation observation = fit.observations().get(j);
            BrewEquation.Tangent start = equation.tangent(priorMeans, equation.ownCentre());
            double publishedVariance = equation.ownCovariance(start).getEntry(0, 0)
                    + NormalBelief.carried(new Array2DRowRealMatrix(start.toShared()), priorCovariance)
                            .getEntry(0, 0);
            double othersVariance = Math.max(0, apart.covariance().getEntry(0, 0) - equation.readingVariance(0));
            double[] studentised = apart.studentised();
            int reading = 0;
            for (int r = 1; r < studentised.length; r++) {
                reading = Math.abs(studentised[r]) > Math.abs(studentised[reading]) ? r : reading;
            }
            NormalBelief with = counted.get(j) ? fit.belief() : with(fit, j);
            return new ReviewedBrew(
                    record.get(j),
                    new Estimate(start.expected()[0], Math.sqrt(publishedVariance)),
                    new Estimate(equation.measured(0) - apart.residual().getEntry(0), Math.sqrt(othersVariance)),
                    studentised[reading],
                    reading,
                    counted.get(j),
                    with.bits(observation),
                    Math.abs(studentised[reading]) > OUTLIER
                            ? SlipSearch.of(
                                    equation, priorMeans.add(fit.belief().shift()), apart)
                            : List.of());
        }

        private NormalBelief with(HouseholdFit fit, int j) {
            List<LinearObservation> more = new ArrayList<>(HouseholdFit.among(fit.observations(), counted));
            more.add(fit.observations().get(j));
            return NormalBelief.of(priorCovariance, more);
        }

        private Experience experience(NormalBelief belief) {
            List<LearntParameter> parameters = new ArrayList<>();
            List<List<Double>> covariance = new ArrayList<>();
            for (int k = 0; k < prior.parameters().size(); k++) {
                LearntParameter before = prior.parameters().get(k);
                double mean = before.mean() + belief.shift().getEntry(k);
                if (!(Math.abs(mean) <= LearntParameter.FARTHEST)) {
                    throw new UnexplainableRecord(before.quantity().input(), mean);
                }
                parameters.add(new LearntParameter(before.quantity(), before.malt(), mean));
                List<Double> row = new ArrayList<>();
                for (int l = 0; l < prior.parameters().size(); l++) {
                    row.add(belief.covariance().getEntry(k, l));
                }
                covariance.add(row);
            }
            return new Experience(Collections.frequency(counted, true), parameters, covariance);
        }

        private RealVector ones(LearntQuantity... quantities) {
            RealVector ones = new ArrayRealVector(prior.parameters().size());
            for (LearntQuantity quantity : quantities) {
                ones.setEntry(prior.indexOf(quantity, ""), 1);
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
            for (LearntParameter parameter : prior.parameters()) {
                if (parameter.quantity() == LearntQuantity.MALT_OFFSET) {
                    MaltClass maltClass = MaltClasses.get(parameter.malt());
                    RealVector offset = new ArrayRealVector(prior.parameters().size());
                    offset.setEntry(prior.indexOf(LearntQuantity.MALT_OFFSET, parameter.malt()), 1);
                    RealVector together = offset.add(ones(LearntQuantity.MODEL_BIAS, LearntQuantity.MALT_TYPES_BIAS));
                    int brews = (int) HouseholdFit.among(record, counted).stream()
                            .filter(brew -> holds(brew, maltClass))
                            .count();
                    malts.add(new LearntMalt(maltClass, brews, sum(belief, offset), sum(belief, together)));
                }
            }
            return malts;
        }

        private Outlook outlook(HouseholdFit fit) {
            boolean none = !counted.contains(true);
            RealMatrix information =
                    new Array2DRowRealMatrix(priorCovariance.getRowDimension(), priorCovariance.getRowDimension());
            List<RealMatrix> slopes = new ArrayList<>();
            List<Double> own = new ArrayList<>();
            for (int j = 0; j < equations.size(); j++) {
                if (none || counted.get(j)) {
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
}

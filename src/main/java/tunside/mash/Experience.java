package tunside.mash;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.List;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.CholeskyDecomposition;

/**
 * What a household's own mashes have taught: the means of some parameters of the model and how sure they are together. It
 * belongs to one version of the model; what it does not hold stays as published.
 *
 * @param brews that it was learned from
 * @param parameters each once
 * @param covariance of the parameters, in their order: symmetric and positive definite, variances at most 1
 */
public record Experience(int brews, List<LearntParameter> parameters, List<List<Double>> covariance) {
    /** The model whose parameters it shifts. */
    public static final String MODEL = "mash-proton-balance";

    /** Version of that model's tables. Whoever changes a value or an uncertainty there raises it. */
    public static final String VERSION = "1";

    /** Nothing learned. */
    public static final Experience NONE = new Experience(0, List.of(), List.of());

    private static final double LARGEST_VARIANCE = 1;
    private static final double RELATIVE_ASYMMETRY = 1e-9;
    private static final double SMALLEST_PIVOT = 1e-12;

    public Experience {
        parameters = List.copyOf(parameters);
        covariance = covariance.stream().map(List::copyOf).toList();
        if (brews < 0) {
            throw new IllegalArgumentException("brews (%s) must not be negative".formatted(brews));
        }
        for (int i = 0; i < parameters.size(); i++) {
            for (int j = 0; j < i; j++) {
                if (parameters.get(i).isSameAs(parameters.get(j))) {
                    throw new IllegalArgumentException("parameter %s of '%s' stands twice"
                            .formatted(
                                    parameters.get(i).quantity().input(),
                                    parameters.get(i).malt()));
                }
            }
        }
        requireCovariance(parameters.size(), covariance);
    }

    private static void requireCovariance(int size, List<List<Double>> rows) {
        if (rows.size() != size || rows.stream().anyMatch(row -> row.size() != size)) {
            throw new IllegalArgumentException(
                    "covariance must have %s rows of %s values, one for each parameter".formatted(size, size));
        }
        if (size == 0) {
            return;
        }
        double[][] matrix = matrix(rows);
        for (int i = 0; i < size; i++) {
            if (!(matrix[i][i] > 0 && matrix[i][i] <= LARGEST_VARIANCE)) {
                throw new IllegalArgumentException("variance of parameter %s (%s) must be above 0 and at most %s"
                        .formatted(i, matrix[i][i], LARGEST_VARIANCE));
            }
        }
        try {
            new CholeskyDecomposition(new Array2DRowRealMatrix(matrix, false), RELATIVE_ASYMMETRY, SMALLEST_PIVOT);
        } catch (MathRuntimeException e) {
            throw new IllegalArgumentException("covariance must be symmetric and positive definite", e);
        }
    }

    /**
     * What is known before the first brew: the model's own values and uncertainties, independent of each other.
     *
     * @param malts ids of the malt classes whose lots may be learned about
     */
    public static Experience prior(MashModel model, Collection<String> malts) {
        List<LearntParameter> parameters = new ArrayList<>();
        List<Double> variances = new ArrayList<>();
        add(parameters, variances, LearntQuantity.MODEL_BIAS, "", model.bias());
        add(parameters, variances, LearntQuantity.MALT_TYPES_BIAS, "", model.biasOfMaltTypes());
        Estimate scale = model.bufferingScale();
        add(
                parameters,
                variances,
                LearntQuantity.BUFFERING_SCALE,
                "",
                new Estimate(Math.log(scale.value()), scale.standardUncertainty() / scale.value()));
        for (String malt : malts) {
            double spread = model.offsetUncertainty(MaltClasses.get(malt));
            add(parameters, variances, LearntQuantity.MALT_OFFSET, malt, new Estimate(0, spread));
        }
        List<List<Double>> covariance = new ArrayList<>();
        for (int i = 0; i < variances.size(); i++) {
            List<Double> row = new ArrayList<>(Collections.nCopies(variances.size(), 0.0));
            row.set(i, variances.get(i));
            covariance.add(row);
        }
        return new Experience(0, parameters, covariance);
    }

    private static void add(
            List<LearntParameter> parameters,
            List<Double> variances,
            LearntQuantity quantity,
            String malt,
            Estimate estimate) {
        parameters.add(new LearntParameter(quantity, malt, estimate.value()));
        variances.add(estimate.standardUncertainty() * estimate.standardUncertainty());
    }

    /** Place of a parameter, or -1. @param malt empty for a parameter of all malts */
    public int indexOf(LearntQuantity quantity, String malt) {
        for (int i = 0; i < parameters.size(); i++) {
            if (parameters.get(i).quantity() == quantity
                    && parameters.get(i).malt().equals(malt)) {
                return i;
            }
        }
        return -1;
    }

    /** Mean and standard uncertainty of the parameter at a place. */
    public Estimate estimate(int index) {
        return new Estimate(
                parameters.get(index).mean(), Math.sqrt(covariance.get(index).get(index)));
    }

    /** Whether it tells about the lots of a malt class. */
    public boolean knows(MaltClass maltClass) {
        return indexOf(LearntQuantity.MALT_OFFSET, maltClass.id()) >= 0;
    }

    private static double[][] matrix(List<List<Double>> rows) {
        return rows.stream()
                .map(row -> row.stream().mapToDouble(Double::doubleValue).toArray())
                .toArray(double[][]::new);
    }

    /** Covariance as an array of its own. */
    public double[][] covarianceMatrix() {
        return matrix(covariance);
    }
}

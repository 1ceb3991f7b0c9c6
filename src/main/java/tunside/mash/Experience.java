package tunside.mash;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.List;
import java.util.TreeSet;
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

    /** Version of that model's tables and parameters. Whoever changes a value, an uncertainty or a meaning raises it. */
    public static final String VERSION = "2";

    /** Nothing learned. */
    public static final Experience NONE = new Experience(0, List.of(), List.of());

    private static final String NO_NAME = "";
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
                                    parameters.get(i).subject()));
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
     * @param malts whose classes and products may be learned about, in any order. Malts without a name are one product of
     *     their class, unless another malt of the class has one; where the pH follows colour they are never one
     */
    public static Experience prior(MashModel model, Collection<Malt> malts) {
        List<LearntParameter> parameters = new ArrayList<>();
        List<Double> variances = new ArrayList<>();
        Estimate scale = model.bufferingScale();
        add(parameters, variances, LearntQuantity.MODEL_BIAS, model.bias());
        add(parameters, variances, LearntQuantity.MALT_TYPES_BIAS, model.biasOfMaltTypes());
        add(
                parameters,
                variances,
                LearntQuantity.BUFFERING_SCALE,
                new Estimate(Math.log(scale.value()), scale.standardUncertainty() / scale.value()));
        for (MaltClass maltClass : MaltClasses.all().values()) {
            List<Malt> ofClass = malts.stream()
                    .filter(malt -> malt.maltClass().equals(maltClass))
                    .toList();
            if (!ofClass.isEmpty()) {
                parameters.add(LearntParameter.of(LearntQuantity.MALT_OFFSET, maltClass.id(), 0));
                variances.add(MashModel.square(model.classOffsetUncertainty(maltClass)));
                for (String product : products(maltClass, ofClass)) {
                    parameters.add(new LearntParameter(LearntQuantity.PRODUCT_OFFSET, maltClass.id(), product, 0));
                    variances.add(MashModel.square(model.productOffsetUncertainty(maltClass)));
                }
            }
        }
        List<List<Double>> covariance = new ArrayList<>();
        for (int i = 0; i < variances.size(); i++) {
            List<Double> row = new ArrayList<>(Collections.nCopies(variances.size(), 0.0));
            row.set(i, variances.get(i));
            covariance.add(row);
        }
        return new Experience(0, parameters, covariance);
    }

    private static Collection<String> products(MaltClass maltClass, List<Malt> malts) {
        Collection<String> names = new TreeSet<>();
        malts.forEach(malt -> malt.product().ifPresent(names::add));
        return names.isEmpty() && !maltClass.followsColour() ? List.of(NO_NAME) : names;
    }

    private static void add(
            List<LearntParameter> parameters, List<Double> variances, LearntQuantity quantity, Estimate estimate) {
        parameters.add(LearntParameter.of(quantity, estimate.value()));
        variances.add(MashModel.square(estimate.standardUncertainty()));
    }

    /** Place of a parameter of all malts, or -1. */
    public int indexOf(LearntQuantity quantity) {
        return indexOf(quantity, "", NO_NAME);
    }

    private int indexOf(LearntQuantity quantity, String malt, String product) {
        for (int i = 0; i < parameters.size(); i++) {
            if (parameters.get(i).is(quantity, malt, product)) {
                return i;
            }
        }
        return -1;
    }

    /** Place of the offset of a malt class, or -1. */
    public int indexOf(MaltClass maltClass) {
        return indexOf(LearntQuantity.MALT_OFFSET, maltClass.id(), NO_NAME);
    }

    /**
     * Place of the offset of a malt's product, or -1 where it is none that the brews told about. A malt without a name is
     * taken for the one product without a name, where there is one.
     */
    public int indexOfProduct(Malt malt) {
        return indexOf(
                LearntQuantity.PRODUCT_OFFSET,
                malt.maltClass().id(),
                malt.product().orElse(NO_NAME));
    }

    /** Mean and standard uncertainty of the parameter at a place. */
    public Estimate estimate(int index) {
        return new Estimate(
                parameters.get(index).mean(), Math.sqrt(covariance.get(index).get(index)));
    }

    /** Whether it tells about a malt class. */
    public boolean knows(MaltClass maltClass) {
        return indexOf(maltClass) >= 0;
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

package tunside.review;

import java.util.List;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/**
 * A normal distribution of the parameters, from a prior and linear observations: the linear update of a hierarchical model
 * (RODGERS-2000). Exact; cost: one inversion of a matrix of the parameters.
 */
final class NormalBelief {
    private final RealMatrix information;
    private final RealMatrix covariance;
    private final RealVector shift;

    private NormalBelief(RealMatrix information, RealVector pull) {
        this.information = information;
        this.covariance = inverse(information);
        this.shift = covariance.operate(pull);
    }

    /**
     * After observations.
     *
     * @param priorCovariance positive definite
     */
    static NormalBelief of(RealMatrix priorCovariance, List<LinearObservation> observations) {
        RealMatrix information = inverse(priorCovariance);
        RealVector pull = MatrixUtils.createRealVector(new double[priorCovariance.getRowDimension()]);
        for (LinearObservation observation : observations) {
            information = information.add(observation.information());
            pull = pull.add(observation.pull());
        }
        return new NormalBelief(information, pull);
    }

    private static RealMatrix inverse(RealMatrix matrix) {
        RealMatrix inverse = new CholeskyDecomposition(symmetric(matrix), 1e-9, 0)
                .getSolver()
                .getInverse();
        return symmetric(inverse);
    }

    /** Rid of what rounding left between both halves. */
    private static RealMatrix symmetric(RealMatrix matrix) {
        return matrix.add(matrix.transpose()).scalarMultiply(0.5);
    }

    /** Means, counted from the prior means. */
    RealVector shift() {
        return shift;
    }

    RealMatrix covariance() {
        return covariance;
    }

    /** Covariance after this much more information. */
    RealMatrix covarianceAfter(RealMatrix more) {
        return inverse(information.add(more));
    }

    /** Covariance of the expected readings at uncertain parameters, without the noise. */
    static RealMatrix carried(RealMatrix slopes, RealMatrix covariance) {
        return symmetric(slopes.multiply(covariance).multiplyTransposed(slopes));
    }

    /** How far an observation that was not counted lies from what is expected of it. */
    Departure ahead(LinearObservation observation) {
        return new Departure(
                observation.residual(shift),
                symmetric(observation.noise().add(carried(observation.slopes(), covariance))));
    }

    /**
     * How far an observation that was counted lies from what all the others let expect: with {@code A} its expectation's
     * covariance and {@code R} its noise, the residual grows by {@code R (R - A)^-1} and its covariance is {@code R (R -
     * A)^-1 R}.
     */
    Departure apart(LinearObservation observation) {
        RealMatrix noise = observation.noise();
        RealMatrix left = symmetric(noise.subtract(carried(observation.slopes(), covariance)));
        RealMatrix grown = noise.multiply(inverse(left));
        return new Departure(grown.operate(observation.residual(shift)), symmetric(grown.multiply(noise)));
    }

    /** Information that a counted observation added to all the others, bits: half the logarithm of the ratio of volumes. */
    double bits(LinearObservation observation) {
        RealMatrix noise = observation.noise();
        RealMatrix left = symmetric(noise.subtract(carried(observation.slopes(), covariance)));
        double ratio = new CholeskyDecomposition(noise, 1e-9, 0).getDeterminant()
                / new CholeskyDecomposition(left, 1e-9, 0).getDeterminant();
        return 0.5 * Math.log(ratio) / Math.log(2);
    }
}

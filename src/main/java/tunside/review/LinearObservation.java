package tunside.review;

import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/**
 * Readings that are linear in the parameters: {@code departures = slopes * shift + noise}, with the shift counted from the
 * prior means.
 */
final class LinearObservation {
    private final RealMatrix slopes;
    private final RealVector departures;
    private final RealMatrix noise;
    private final RealMatrix weighted;

    /**
     * @param slopes of each reading to each parameter
     * @param departures of the readings from what the prior means let expect
     * @param noise covariance of the readings at known parameters, positive definite
     */
    LinearObservation(RealMatrix slopes, RealVector departures, RealMatrix noise) {
        this.slopes = slopes;
        this.departures = departures;
        this.noise = noise;
        this.weighted = new CholeskyDecomposition(noise, 1e-9, 0).getSolver().solve(slopes);
    }

    RealMatrix slopes() {
        return slopes;
    }

    RealMatrix noise() {
        return noise;
    }

    /** Information about the parameters: inverse of the covariance that it alone would leave. */
    RealMatrix information() {
        return slopes.transposeMultiply(weighted);
    }

    /** Information times the shift that it alone asks for. */
    RealVector pull() {
        return weighted.preMultiply(departures);
    }

    /** What is left of the departures at a shift. */
    RealVector residual(RealVector shift) {
        return departures.subtract(slopes.operate(shift));
    }
}

package tunside.review;

import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/**
 * How far the readings of a brew lie from what is expected of them.
 *
 * @param residual readings less expectation, pH
 * @param covariance of the residual where all is well
 */
record Departure(RealVector residual, RealMatrix covariance) {

    /**
     * Each reading given those before it, in standard deviations: independent of each other where all is well. The first is
     * about grist, liquor and meter, the later ones about the doses.
     */
    double[] studentised() {
        double[][] root = new CholeskyDecomposition(covariance, 1e-6, 0).getL().getData();
        double[] left = residual.toArray();
        for (int i = 0; i < left.length; i++) {
            for (int j = 0; j < i; j++) {
                left[i] -= root[i][j] * left[j];
            }
            left[i] /= root[i][i];
        }
        return left;
    }

    /** The farthest of the studentised residuals, with its sign. */
    double farthest() {
        double farthest = 0;
        for (double value : studentised()) {
            farthest = Math.abs(value) > Math.abs(farthest) ? value : farthest;
        }
        return farthest;
    }
}

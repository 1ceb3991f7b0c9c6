package tunside.review;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import tunside.mash.Experience;

/**
 * The most probable parameters of a household and of each brew, and the linear problem that touches the balance there.
 *
 * @param belief about the shared parameters
 * @param observations of every brew, counted or not, linear around the most probable values
 * @param tangents of every brew there
 */
record HouseholdFit(NormalBelief belief, List<LinearObservation> observations, List<BrewEquation.Tangent> tangents) {
    private static final int MOST_ITERATIONS = 25;
    private static final double CONVERGED = 1e-8;
    private static final double LONGEST_STEP = 0.5;

    /**
     * Gauss-Newton iteration on the joint posterior of shared and own values (RODGERS-2000), from the prior means; stops when
     * no shared parameter moves by more than 1e-8, or after 25 steps. Steps are shortened to 0.5 in any parameter. A brew that
     * is not counted is taken at its own central values. Cost: one prediction with its slopes a reading and step.
     */
    static HouseholdFit of(List<BrewEquation> equations, List<Boolean> counted, Experience prior) {
        RealMatrix priorCovariance = new Array2DRowRealMatrix(prior.covarianceMatrix(), false);
        RealVector means = means(prior);
        RealVector shift = new ArrayRealVector(means.getDimension());
        List<double[]> own = new ArrayList<>();
        equations.forEach(equation -> own.add(equation.ownCentre()));
        for (int iteration = 1; ; iteration++) {
            List<BrewEquation.Tangent> tangents = new ArrayList<>();
            List<LinearObservation> observations = new ArrayList<>();
            for (int j = 0; j < equations.size(); j++) {
                BrewEquation.Tangent tangent = equations.get(j).tangent(means.add(shift), own.get(j));
                tangents.add(tangent);
                observations.add(equations.get(j).observation(tangent, shift, own.get(j)));
            }
            NormalBelief belief = NormalBelief.of(priorCovariance, among(observations, counted));
            RealVector step = belief.shift().subtract(shift);
            if (step.getLInfNorm() <= CONVERGED || iteration == MOST_ITERATIONS) {
                return new HouseholdFit(belief, observations, tangents);
            }
            if (step.getLInfNorm() > LONGEST_STEP) {
                step = step.mapMultiply(LONGEST_STEP / step.getLInfNorm());
            }
            shift = shift.add(step);
            for (int j = 0; j < equations.size(); j++) {
                if (counted.get(j)) {
                    LinearObservation observation = observations.get(j);
                    RealVector pull = new CholeskyDecomposition(observation.noise(), 1e-9, 0)
                            .getSolver()
                            .solve(observation.residual(shift));
                    own.set(j, equations.get(j).ownValues(tangents.get(j), pull));
                }
            }
        }
    }

    /** Prior means of the parameters. */
    static RealVector means(Experience prior) {
        return new ArrayRealVector(prior.parameters().stream()
                .mapToDouble(parameter -> parameter.mean())
                .toArray());
    }

    /** The counted ones of a list. */
    static <T> List<T> among(List<T> all, List<Boolean> counted) {
        List<T> some = new ArrayList<>();
        for (int j = 0; j < all.size(); j++) {
            if (counted.get(j)) {
                some.add(all.get(j));
            }
        }
        return some;
    }
}

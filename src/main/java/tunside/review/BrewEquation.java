package tunside.review;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import tunside.mash.AcidAddition;
import tunside.mash.Addition;
import tunside.mash.Experience;
import tunside.mash.LearntParameter;
import tunside.mash.LearntQuantity;
import tunside.mash.PhFunction;
import tunside.mash.UncertainInput;

/**
 * The readings of a brew as functions of what all brews of a household share and of what is this brew's own. All readings
 * rest on the same mash: before a dose its amount is 0.
 */
final class BrewEquation {
    /** An amount is never taken for less than this share of what is written down. */
    private static final double LEAST_SHARE = 0.1;

    private final MeasuredBrew brew;
    private final PhFunction function;
    private final double[] centre;
    private final int[] shared;
    private final boolean[] logarithmic;
    private final int[] own;
    private final int[] doseOfInput;
    private final double[] measured;
    private final double[] readingVariance;

    /** @param prior parameters that the brews share, in their order */
    BrewEquation(MeasuredBrew brew, Experience prior) {
        this.brew = brew;
        this.function = PhFunction.of(brew.dosed().withModel(brew.mash().model().withExperience(prior)));
        this.centre = function.centre();
        List<UncertainInput> inputs = function.inputs();
        List<LearntParameter> parameters = prior.parameters();
        this.shared = new int[parameters.size()];
        this.logarithmic = new boolean[shared.length];
        boolean[] isShared = new boolean[centre.length];
        for (int k = 0; k < shared.length; k++) {
            shared[k] = place(inputs, parameters.get(k));
            logarithmic[k] = parameters.get(k).quantity() == LearntQuantity.BUFFERING_SCALE;
            if (shared[k] >= 0) {
                isShared[shared[k]] = true;
            }
        }
        List<Integer> rest = new ArrayList<>();
        for (int i = 0; i < centre.length; i++) {
            if (!isShared[i] && inputs.get(i).standardUncertainty() > 0) {
                rest.add(i);
            }
        }
        this.own = rest.stream().mapToInt(Integer::intValue).toArray();
        this.doseOfInput = doses(inputs);
        int readings = 1 + brew.doses().size();
        this.measured = new double[readings];
        this.readingVariance = new double[readings];
        for (int r = 0; r < readings; r++) {
            var reading = r == 0 ? brew.first() : brew.doses().get(r - 1).after();
            measured[r] = reading.ph();
            readingVariance[r] = reading.standardUncertainty() * reading.standardUncertainty();
        }
    }

    private static int place(List<UncertainInput> inputs, LearntParameter parameter) {
        for (int i = 0; i < inputs.size(); i++) {
            UncertainInput input = inputs.get(i);
            if (input.id().equals(parameter.quantity().input())
                    && input.subject().equals(parameter.subject())) {
                return i;
            }
        }
        return -1;
    }

    /** For each input the dose, counted from 1, whose amount it is; else 0. */
    private int[] doses(List<UncertainInput> inputs) {
        List<Addition> additions = brew.dosed().additions();
        int before = brew.mash().additions().size();
        List<Integer> acids = new ArrayList<>();
        List<Integer> salts = new ArrayList<>();
        for (int i = 0; i < additions.size(); i++) {
            (additions.get(i) instanceof AcidAddition ? acids : salts).add(Math.max(0, i + 1 - before));
        }
        int[] doses = new int[inputs.size()];
        int acid = 0;
        int salt = 0;
        for (int i = 0; i < doses.length; i++) {
            if (inputs.get(i).id().equals("acid-amount")) {
                doses[i] = acids.get(acid++);
            } else if (inputs.get(i).id().equals("salt-mass")) {
                doses[i] = salts.get(salt++);
            }
        }
        return doses;
    }

    MeasuredBrew brew() {
        return brew;
    }

    List<UncertainInput> inputs() {
        return function.inputs();
    }

    int readings() {
        return measured.length;
    }

    double measured(int reading) {
        return measured[reading];
    }

    double readingVariance(int reading) {
        return readingVariance[reading];
    }

    /** Inputs of the brew that are not shared, at their central values. */
    double[] ownCentre() {
        double[] values = new double[own.length];
        for (int i = 0; i < own.length; i++) {
            values[i] = centre[own[i]];
        }
        return values;
    }

    /**
     * Values of all inputs.
     *
     * @param parameters the shared ones
     * @param ownValues the brew's own
     */
    double[] values(RealVector parameters, double[] ownValues) {
        double[] values = centre.clone();
        for (int k = 0; k < shared.length; k++) {
            if (shared[k] >= 0) {
                double parameter = parameters.getEntry(k);
                values[shared[k]] = logarithmic[k] ? Math.exp(parameter) : parameter;
            }
        }
        for (int i = 0; i < own.length; i++) {
            values[own[i]] = ownValues[i];
        }
        return values;
    }

    /** The same before the doses that come after a reading. */
    private double[] at(double[] values, int reading) {
        double[] before = values.clone();
        for (int i = 0; i < before.length; i++) {
            if (doseOfInput[i] > reading) {
                before[i] = 0;
            }
        }
        return before;
    }

    /** Expected readings at values of all inputs. */
    double[] expected(double[] values) {
        double[] ph = new double[measured.length];
        for (int r = 0; r < ph.length; r++) {
            ph[r] = function.ph(at(values, r));
        }
        return ph;
    }

    /**
     * Expected readings and their slopes around a point.
     *
     * @param expected pH of each reading
     * @param toShared change of each reading per unit of each shared parameter
     * @param toOwn change of each reading per unit of each of the brew's own inputs
     */
    record Tangent(double[] expected, double[][] toShared, double[][] toOwn) {}

    Tangent tangent(RealVector parameters, double[] ownValues) {
        double[] values = values(parameters, ownValues);
        Tangent tangent = new Tangent(
                new double[measured.length],
                new double[measured.length][shared.length],
                new double[measured.length][own.length]);
        for (int r = 0; r < measured.length; r++) {
            PhFunction.Slopes slopes = function.at(at(values, r));
            tangent.expected[r] = slopes.ph();
            for (int k = 0; k < shared.length; k++) {
                if (shared[k] >= 0) {
                    tangent.toShared[r][k] = slopes.perUnit()[shared[k]] * (logarithmic[k] ? values[shared[k]] : 1);
                }
            }
            for (int i = 0; i < own.length; i++) {
                tangent.toOwn[r][i] = doseOfInput[own[i]] > r ? 0 : slopes.perUnit()[own[i]];
            }
        }
        return tangent;
    }

    /** Covariance of the readings' true pH at known shared parameters: what is the brew's own. */
    RealMatrix ownCovariance(Tangent tangent) {
        double[][] covariance = new double[measured.length][measured.length];
        for (int i = 0; i < own.length; i++) {
            double uncertainty = function.inputs().get(own[i]).standardUncertainty();
            for (int r = 0; r < measured.length; r++) {
                for (int s = 0; s < measured.length; s++) {
                    covariance[r][s] += uncertainty * uncertainty * tangent.toOwn[r][i] * tangent.toOwn[s][i];
                }
            }
        }
        return new Array2DRowRealMatrix(covariance, false);
    }

    /** The same with the noise of reading. */
    RealMatrix noise(Tangent tangent) {
        RealMatrix noise = ownCovariance(tangent);
        for (int r = 0; r < measured.length; r++) {
            noise.addToEntry(r, r, readingVariance[r]);
        }
        return noise;
    }

    /**
     * The linear problem that touches this equation at a point.
     *
     * @param shift of the shared parameters from the prior means, at the point
     */
    LinearObservation observation(Tangent tangent, RealVector shift, double[] ownValues) {
        RealMatrix toShared = new Array2DRowRealMatrix(tangent.toShared);
        RealVector departures = new ArrayRealVector(measured)
                .subtract(new ArrayRealVector(tangent.expected))
                .add(toShared.operate(shift));
        for (int r = 0; r < measured.length; r++) {
            for (int i = 0; i < own.length; i++) {
                departures.addToEntry(r, tangent.toOwn[r][i] * (ownValues[i] - centre[own[i]]));
            }
        }
        return new LinearObservation(toShared, departures, noise(tangent));
    }

    /**
     * Most probable values of the brew's own inputs; an amount keeps a tenth at least, whatever the readings say.
     *
     * @param pull the residual, weighted by the inverse of the noise
     */
    double[] ownValues(Tangent tangent, RealVector pull) {
        double[] values = ownCentre();
        for (int i = 0; i < own.length; i++) {
            UncertainInput input = function.inputs().get(own[i]);
            double variance = input.standardUncertainty() * input.standardUncertainty();
            double least = input.isAmount() ? LEAST_SHARE * values[i] : Double.NEGATIVE_INFINITY;
            for (int r = 0; r < measured.length; r++) {
                values[i] += variance * tangent.toOwn[r][i] * pull.getEntry(r);
            }
            values[i] = Math.max(least, values[i]);
        }
        return values;
    }
}

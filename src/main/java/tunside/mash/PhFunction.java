package tunside.mash;

import java.util.List;
import tunside.chemistry.ProtonBalance;

/** The pH of a mash as a function of the inputs that it rests on, at any values of theirs. */
public final class PhFunction {
    private final MashEquation equation;

    private PhFunction(MashEquation equation) {
        this.equation = equation;
    }

    /** Of a mash by its own model. */
    public static PhFunction of(Mash mash) {
        return new PhFunction(MashEquation.of(mash));
    }

    /**
     * A pH with its slopes.
     *
     * @param ph of the cooled sample
     * @param perUnit its change per unit of each input
     */
    public record Slopes(double ph, double[] perUnit) {}

    /** Every input in a fixed order; acids and salts in the order of the mash's additions. */
    public List<UncertainInput> inputs() {
        return equation.inputs();
    }

    /** Central values of the inputs. */
    public double[] centre() {
        return equation.centre();
    }

    /** pH at given values of the inputs; 0 or 14 where so much acid or base is in it that it would lie beyond. */
    public double ph(double[] values) {
        return equation.balance(values).solve();
    }

    /**
     * pH and slopes at given values of the inputs, by central differences over a fiftieth of a standard uncertainty; 0 for
     * an input that is sure. Cost: two sums an input, over the components that it is in.
     */
    public Slopes at(double[] values) {
        ProtonBalance balance = equation.balance(values);
        double ph = balance.solve();
        return new Slopes(ph, equation.phPerUnit(values, ph, balance.bufferingMeqPerPh(ph)));
    }

    /** pH at the central values, as sure as the inputs are. Cost: that of {@link #at}. */
    public Estimate estimate() {
        Slopes slopes = at(centre());
        double variance = 0;
        for (double part : equation.variances(slopes.perUnit)) {
            variance += part;
        }
        return new Estimate(slopes.ph, Math.sqrt(variance));
    }

    /** The malts' terms alone at the central values, with the lactic acid of an acidulated malt. */
    public ProtonBalance maltBalance() {
        return equation.balance(centre(), MashComponent::isMalt);
    }

    /** All other terms there: liquor, hardness, acids, salts and bases. */
    public ProtonBalance otherBalance() {
        return equation.balance(centre(), component -> !component.isMalt());
    }
}
